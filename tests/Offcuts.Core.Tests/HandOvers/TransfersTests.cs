using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.HandOvers;

/// <summary>The names of hand-overs and their receipts.</summary>
public sealed class TransfersTests
{
    [Fact]
    public void A_receipt_follows_from_the_name_alone_and_is_read_back_however_it_is_typed()
    {
        var random = new Random(1);
        var name = Transfers.Draw(random.Next);

        Transfers.IsName(name).Should().BeTrue();
        var receipt = Transfers.Receipt(name);
        Transfers.Receipt(name).Should().Be(receipt);
        receipt.Should().MatchRegex($"^R-[{Code.Alphabet}]{{3}}-[{Code.Alphabet}]{{4}}$");
        Transfers.ReadReceipt(" " + receipt.ToLowerInvariant().Replace("-", " ")).Value.Should().Be(receipt);
        Transfers.ReadReceipt(receipt.Replace("-", "")).Value.Should().Be(receipt);
    }

    [Fact]
    public void Names_that_differ_have_receipts_that_differ()
    {
        var random = new Random(2);

        Enumerable.Range(0, 2000).Select(_ => Transfers.Receipt(Transfers.Draw(random.Next))).Should().OnlyHaveUniqueItems();
    }

    [Theory]
    [InlineData("")]
    [InlineData("R")]
    [InlineData("K7F 3MXX")]
    [InlineData("R-K7F-3MXY")]
    [InlineData("R-K7F")]
    public void What_is_no_receipt_says_how_one_is_written(string typed) =>
        Transfers.ReadReceipt(typed).Fault.Sentence.Should().Be("a receipt is written like R-K7F-3MXX; type it as the other side's program shows it");
}
