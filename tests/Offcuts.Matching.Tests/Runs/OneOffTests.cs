using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using static Offcuts.Matching.Tests.Runs.RunScene;

namespace Offcuts.Matching.Tests.Runs;

public class OneOffTests
{
    private static readonly PriceBook Prices = new([Panel()]);
    private static readonly YardSettings Knife = YardSettings.Usual with { KerfElsewhere = Length.Zero };

    // Worth of a length l: 1800 x (l/48)^2. 30 in: 703 cents; left of it 10 in, scrap: 703 given up. 40 in: 1250 - 18 in kept (253): 22 in for 997.
    [Fact]
    public void The_piece_that_loses_least_comes_first()
    {
        var found = Find(new OneOffNeed(Foam, In(20)), Offcut(1, 40), Offcut(2, 30), Offcut(3, 19));
        found.Select(one => one.Piece.Length).Should().Equal(In(30), In(40));
        found[0].GivenUp.Should().Be(new Money(703));
    }

    // Lines at 1.5, 3.5, .. 23.5 of 24 in. A piece of 9.5 in with its right end on a line: 0 .. 9.5 from the left; 14.5 in are left, their first line at 0.
    [Fact]
    public void An_end_on_the_pattern_is_found_on_the_pattern()
    {
        var one = Find(new OneOffNeed(Foam, In(9.5m)) { RightOnPattern = true, Interval = In(2), Reversible = false }, Offcut(1, 24, 1.5m)).Single();
        one.Start.Should().Be(Length.Zero);
        one.Remainders.Should().Equal(new OneOffRemainder(In(9.5m), In(14.5m), true, Length.Zero));
    }

    // Only its left end is on the pattern (0, 2, .. 20 of 21.5 in): it is turned, and taken whole.
    [Fact]
    public void It_is_turned_where_that_fits_and_may_be()
    {
        var need = new OneOffNeed(Foam, In(21.5m)) { RightOnPattern = true, Interval = In(2) };
        Find(need, Offcut(1, 21.5m)).Single().Turned.Should().BeTrue();
        Find(need with { Reversible = false }, Offcut(1, 21.5m)).Should().BeEmpty();
    }

    // Lines at 0, 2, .. 16 of 17.5 in, both ends on lines, 14 in: at 0 the saw goes once and 3.375 in are left, at 2 twice. All that is left is scrap
    // either way, and so is what the saw takes.
    [Fact]
    public void Of_ways_that_leave_scrap_alone_the_one_with_fewer_saw_cuts_is_taken()
    {
        var need = new OneOffNeed(Foam, In(14)) { LeftOnPattern = true, RightOnPattern = true, Interval = In(2) };
        var one = OneOffSearch.Find(need, [Offcut(1, 17.5m)], Prices, YardSettings.Usual).Value.Single();
        (one.Start, one.SawCuts, one.Lost).Should().Be((Length.Zero, 1, In(3.5m)));
    }

    // 19-1/2 in, its right end on a line. Of 48 in stay 28-1/2, of 21-1/2 nothing that is kept: 2 in are lost of it and none of the other. Worth by the
    // square of the length, in parts of a whole panel's: 48^2 - 28.5^2 = 1491.75 against 21.5^2 = 462.25.
    [Fact]
    public void Without_a_price_a_near_fit_comes_before_a_whole_panel_as_with_one()
    {
        var need = new OneOffNeed(Foam, In(19.5m)) { RightOnPattern = true, Interval = In(2), Reversible = false };
        foreach (var prices in (PriceBook[])[PriceBook.Empty, Prices])
            OneOffSearch.Find(need, [Offcut(1, 48), Offcut(2, 21.5m, 1.5m)], prices, Knife).Value.Select(one => one.Piece.Length).Should().Equal(In(21.5m), In(48));
        OneOffSearch.Find(need, [Offcut(1, 48), Offcut(2, 21.5m, 1.5m)], PriceBook.Empty, Knife).Value.Should().OnlyContain(one => one.GivenUp == Money.Zero, "what has no price is not told in money");
    }

    [Fact]
    public void What_is_reserved_or_too_poor_or_of_unknown_lines_is_passed_over()
    {
        var need = new OneOffNeed(Foam, In(20)) { LeftOnPattern = true, Interval = In(2) };
        Find(need, Offcut(1, 24, null), Offcut(2, 24) with { Condition = Condition.Poor }, Offcut(3, 24) with { State = PieceState.Reserved, ReservedFor = "roof" }).Should().BeEmpty();
    }

    [Fact]
    public void Boards_are_found_too() =>
        OneOffSearch.Find(new OneOffNeed(Scene.Stud, In(30)), [Scene.Board("8'")], PriceBook.Empty, YardSettings.Usual).Value
            .Single().Remainders.Single().Length.Should().Be(In(96 - 30 - 0.125m));

    [Fact]
    public void Two_ends_on_lines_are_whole_intervals_apart() =>
        OneOffSearch.Find(new OneOffNeed(Foam, In(21)) { LeftOnPattern = true, RightOnPattern = true, Interval = In(2) }, [], Prices, Knife)
            .Fault.Sentence.Should().Be("a piece of 21\" has no two ends on lines every 2\"");

    private static IReadOnlyList<OneOffCandidate> Find(OneOffNeed need, params Piece[] pieces) => OneOffSearch.Find(need, pieces, Prices, Knife).Value;
}
