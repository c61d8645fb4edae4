using Offcuts.Commands;

namespace Offcuts.Tests.Commands;

/// <summary>Columns hold whatever is in a yard, also in one that somebody altered by hand.</summary>
public sealed class TablesTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void A_cell_that_is_longer_than_any_of_ours_is_cut()
    {
        var told = new StringWriter();

        Tables.Write(_yard.World(told, TextWriter.Null), ["Code", "Material"], [["K7F 3MXX", new string('[', 200_000)], ["N4P X7AW", new string('n', 1000)]]);

        told.ToString().Count(letter => letter == '[').Should().Be(1000);
        told.ToString().Count(letter => letter == 'n').Should().Be(1000);
        told.ToString().Count(letter => letter == '…').Should().Be(1);
    }
}
