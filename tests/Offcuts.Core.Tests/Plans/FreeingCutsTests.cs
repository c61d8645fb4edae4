using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Plans;

/// <summary>A board of 100 in, kerf 1/8 in, keep length 12 in; all lengths invented.</summary>
public sealed class FreeingCutsTests
{
    private static readonly Piece Board = new() { Code = default, Material = MaterialReader.Read("2x4").Value, Length = In(100) };

    [Fact]
    public void A_clean_piece_needs_none() =>
        Of(Board, cuts: [(0, 60)], kept: [(60.125m, 39.875m)]).Should().BeEmpty();

    [Fact]
    public void A_cut_up_to_a_bad_end_is_sawn_free_of_it() =>
        Of(Board with { BadSpots = [Spot(90, 100)] }, cuts: [(0, 90)]).Should().Equal(In(90));

    [Fact]
    public void Scrap_stays_on_the_bad_end() =>
        Of(Board with { BadSpots = [Spot(90, 100)] }, cuts: [(0, 85)], scrap: [(85.125m, 4.875m)]).Should().BeEmpty();

    [Fact]
    public void A_kept_remainder_is_sawn_free_of_a_trimmed_end() =>
        Of(Board with { TrimRight = In(2) }, cuts: [(0, 60)], kept: [(60.125m, 37.875m)]).Should().Equal(In(98));

    [Fact]
    public void Out_of_the_middle_a_bad_spot_takes_two_cuts() =>
        Of(Board with { BadSpots = [Spot(40, 44)] }, cuts: [(0, 40), (44, 56)]).Should().Equal(In(40), In(44));

    [Fact]
    public void One_no_wider_than_the_saw_takes_one() =>
        Of(Board with { BadSpots = [Spot(40, 40.125m)] }, cuts: [(0, 40), (40.125m, 59.875m)]).Should().Equal(In(40));

    [Fact]
    public void A_span_left_alone_is_sawn_free_where_it_is_long_enough_to_keep() =>
        Of(Board with { BadSpots = [Spot(40, 44)] }, cuts: [(0, 40)], untouched: [(44, 100)]).Should().Equal(In(40), In(44));

    [Fact]
    public void A_span_too_short_to_keep_stays_on_the_bad_spot() =>
        Of(Board with { BadSpots = [Spot(80, 90)] }, cuts: [(0, 80)], untouched: [(90, 100)]).Should().Equal(In(80));

    [Fact]
    public void A_bad_spot_that_touches_a_trim_goes_with_it() =>
        Of(Board with { TrimLeft = In(2), BadSpots = [Spot(2, 5)] }, cuts: [(5, 95)]).Should().Equal(In(5));

    private static IReadOnlyList<Length> Of(
        Piece piece,
        (decimal Start, decimal Length)[] cuts,
        (decimal Start, decimal Length)[]? kept = null,
        (decimal Start, decimal Length)[]? scrap = null,
        (decimal Start, decimal End)[]? untouched = null) => FreeingCuts.Of(
        new PlannedPiece
        {
            Source = piece,
            Cuts = [.. cuts.Select(cut => new PlannedCut("walls", "brace", In(cut.Start), In(cut.Length), Use.Bracing))],
            Remainders =
            [
                .. (kept ?? []).Select(rest => new PlannedRemainder(In(rest.Start), In(rest.Length), Kept: true)),
                .. (scrap ?? []).Select(rest => new PlannedRemainder(In(rest.Start), In(rest.Length), Kept: false)),
            ],
            Untouched = [.. (untouched ?? []).Select(span => Spot(span.Start, span.End))],
            SawCuts = 0,
        },
        YardSettings.Usual);

    private static Span Spot(decimal start, decimal end) => new(In(start), In(end));

    private static Length In(decimal inches) => Length.Inches(inches);
}
