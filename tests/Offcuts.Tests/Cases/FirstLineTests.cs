using Offcuts.Tests.Commands;

namespace Offcuts.Tests.Cases;

/// <summary>What is cut from a panel leaves a rest whose first pattern line is known from then on.</summary>
public sealed class FirstLineTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    // Lines every 2 in. Of 48 in with a line at its marked end 30 in are laid; a saw takes its kerf from the rest, a knife nothing.
    [Theory]
    [InlineData("0", "1' 6\"", "0\"")]
    [InlineData("1/8", "1' 5-7/8\"", "1-7/8\"")]
    [InlineData("1/4", "1' 5-3/4\"", "1-3/4\"")]
    public void A_rest_comes_back_with_its_first_line_a_kerf_nearer(string kerf, string length, string line)
    {
        _yard.Must("settings", "kerf", "foam", kerf);
        _yard.Must("stage", "new", "walls");
        _yard.Must("add", "foam 2-1/2x12 48 line 0 x2 @pile");
        _yard.Must("wall", "import", "walls", _yard.FileOf("bench.txt", "wall bench\nsystem generic, invented\nheight 1'\ncore 6\"\nclosed no\nleg A: 2' 6\" end\n"));
        _yard.Must("wall", "fill", "bench", "--keep");

        _yard.Must("cut", "--all").Lines.Where(told => told.StartsWith("new ", StringComparison.Ordinal)).Should().HaveCount(2).And.OnlyContain(told => told.Contains($"foam 2-1/2x12 {length}, line {line} at pile"));

        for (var piece = 0; piece < 2; piece++)
            _yard.Must("show", YardCommandTests.Code(_yard, piece, "list")).Out.Should().Contain($"first pattern line {line} from the marked end");
    }
}
