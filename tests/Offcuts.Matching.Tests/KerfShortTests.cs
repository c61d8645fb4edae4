using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>Where only the saw is in the way of one more cut: 4 ft are wanted, 48 in less a little are left. The kerf is 1/8 in, the default.</summary>
public sealed class KerfShortTests
{
    private static readonly RequiredCut Wanted = Cut("48\"", 2);

    // The first cut taken from the front of the piece, and what is left behind it as one stretch, up to where it ends.
    private static PlannedPiece Sawn(Piece piece, string end) => new()
    {
        Source = piece,
        Cuts = [new PlannedCut("wall", "cut", Length.Zero, L("48\""), Use.Nonstructural)],
        Remainders = [new PlannedRemainder(L("48 1/8\""), L(end).LessAtMost(L("48 1/8\"")), true)],
        SawCuts = 1,
    };

    private static (Code, Length)? Missing(params PlannedPiece[] planned)
    {
        var problem = Problem.Create(Request(planned.Select(piece => piece.Source).OfType<Piece>(), [Wanted])).Value;
        return KerfShort.Missing(problem, Wanted, planned) is var (piece, missing) ? (piece.Code, missing) : null;
    }

    [Fact]
    public void What_lacks_least_is_told_wherever_it_stands()
    {
        var (eighth, sixteenth) = (Sawn(Board("96\"", 1), "96\""), Sawn(Board("96 1/16\"", 2), "96 1/16\""));

        Missing(eighth, sixteenth).Should().Be((CodeOf(2), L("1/16\"")));
        Missing(sixteenth, eighth).Should().Be((CodeOf(2), L("1/16\"")));
        Missing(eighth, Sawn(Board("96\"", 3), "96\"")).Should().Be((CodeOf(1), L("1/8\"")), "of two alike the first");
    }

    [Fact]
    public void What_lacks_more_than_a_saw_cut_or_nothing_is_not_told()
    {
        Missing(Sawn(Board("95 15/16\"", 1), "95 15/16\"")).Should().BeNull("3/16 in is more than the saw takes");
        Missing(Sawn(Board("96 1/8\"", 1), "96 1/8\"")).Should().BeNull("48 in are left, which is enough");
        Missing(Sawn(Board("97\"", 1), "97\"")).Should().BeNull();
    }

    [Fact]
    public void Only_what_is_left_at_the_far_end_counts_where_the_trim_begins()
    {
        Missing(Sawn(Board("110\"", 1) with { BadSpots = [new Core.Yard.Span(L("96\""), L("100\""))] }, "96\"")).Should().BeNull("a bad spot ends it, not the saw");
        Missing(Sawn(Board("97\"", 1) with { TrimRight = L("1\"") }, "96\"")).Should().Be((CodeOf(1), L("1/8\"")));
        Missing(Sawn(Board("96\"", 1), "96\"") with { Remainders = [] }).Should().BeNull("nothing is left");
    }

    [Fact]
    public void A_piece_that_may_not_serve_the_cut_is_not_told()
    {
        Missing(Sawn(Board("96\"", 1) with { Condition = Condition.Poor }, "96\"")).Should().BeNull();
        Missing(Sawn(Board("96\"", 1) with { Material = MaterialReader.Read("2x8").Value }, "96\"")).Should().BeNull();
        Missing(Sawn(Board("96\"", 1), "96\"") with { Source = null, Bought = Price("8'", 500) }).Should().BeNull("of the store's boards another is taken instead");
    }

    // The wider board may be ripped for the cut, but what it lacks is told of boards of the cut's own material alone.
    [Fact]
    public void A_wider_piece_that_is_ripped_is_not_told()
    {
        var (wide, cut) = (Board("96\"", 1) with { Material = MaterialReader.Read("2x8").Value }, Wanted with { Rip = true });
        var problem = Problem.Create(Request([wide], [cut])).Value;

        KerfShort.Missing(problem, cut, [Sawn(wide, "96\"")]).Should().BeNull();
    }
}
