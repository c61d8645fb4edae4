namespace Offcuts.Tests.Commands;

/// <summary>A bin of hardware has a code like a piece, and commands for pieces say so when they meet it.</summary>
public sealed class BinCodeTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly string _bin;

    public BinCodeTests()
    {
        _yard.Must("add", "panel tie x140 @shed", "--new");
        _bin = _yard.Must("list").Lines[1][..8];
        _yard.Must("add", "2x4 8'");
        _yard.Must("stage", "new", "walls");
        _yard.Must("stage", "need", "walls", "block: 2x4 30 x2");
        _yard.Must("plan", "--save");
    }

    public void Dispose() => _yard.Dispose();

    [Theory]
    [InlineData("mark", "used", "BIN")]
    [InlineData("reserve", "walls", "BIN")]
    [InlineData("free", "BIN")]
    [InlineData("cut", "1", "--piece", "BIN")]
    [InlineData("plan", "--pin", "BIN for block")]
    [InlineData("plan", "--spare", "BIN")]
    public void Where_a_piece_is_meant_the_code_of_a_bin_is_called_so(params string[] command)
    {
        var told = _yard.Run([.. command.Select(word => word.Replace("BIN", _bin))]);

        told.Status.Should().Be(2);
        told.Error.Should().Be($"{_bin} is a bin of panel tie, not a piece; a bin is changed by itself: offcuts change \"{_bin}\" --qty COUNT\n");
    }

    [Fact]
    public void A_bin_among_pieces_is_changed_by_itself()
    {
        var piece = _yard.Must("list", "--material", "2x4").Lines[1][..8];

        _yard.Run("change", _bin, piece, "--place", "barn").Error.Should().Contain("a bin is changed by itself");
        _yard.Must("change", _bin, "--qty", "128").Out.Should().Be("Counted 128 of panel tie\n");
    }

    [Fact]
    public void A_bin_may_be_empty_and_its_count_says_what_it_may_be()
    {
        _yard.Must("change", _bin, "--qty", "0").Out.Should().Be("Counted 0 of panel tie\n");

        var told = _yard.Run("change", _bin, "--qty=-1");

        told.Status.Should().Be(2);
        told.Error.Should().Be("a bin holds a whole number from 0 to 100000\n");
    }
}
