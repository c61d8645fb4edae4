using CsCheck;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests;

public sealed class PieceBarTests
{
    [Fact]
    public void Stretches_name_trim_span_bad_spot_cut_kerf_and_scrap_in_order()
    {
        var bar = PieceBar.Of(Invented.Plan.Pieces[0]);

        // 11' 4" = 136 in: trim 1/2, untouched to 30, bad to 36, 48, kerf 1/8, 48, kerf 1/8, scrap 3-3/4.
        bar.Stretches.Select(stretch => (stretch.Kind, stretch.Start.InInches, stretch.Length.InInches)).Should().Equal(
            (StretchKind.Trim, 0m, 0.5m),
            (StretchKind.Untouched, 0.5m, 29.5m),
            (StretchKind.Bad, 30m, 6m),
            (StretchKind.Cut, 36m, 48m),
            (StretchKind.Kerf, 84m, 0.125m),
            (StretchKind.Cut, 84.125m, 48m),
            (StretchKind.Kerf, 132.125m, 0.125m),
            (StretchKind.Scrap, 132.25m, 3.75m));
    }

    [Fact]
    public void A_bar_in_text_is_to_scale()
    {
        // 136 in on 68 characters: 2 in each. The trim of 1/2 in is under half a character; the saw takes one from its neighbour.
        PieceBar.Of(Invented.Plan.Pieces[0]).ToText(68).Should().Be(
            "[" + new string('-', 15) + "xxx" + new string('A', 23) + "|" + new string('B', 23) + "|" + ".." + "]");
    }

    [Fact]
    public void A_short_cut_still_shows()
    {
        var piece = new PlannedPiece
        {
            Source = Invented.Bar,
            Cuts = [Cut(0, 120), Cut(120, 0.5m), Cut(120.5m, 100)],
            Remainders = [],
            SawCuts = 3,
        };

        PieceBar.Of(piece).ToText(20).Should().Contain("A").And.Contain("B").And.Contain("C");
    }

    [Fact]
    public void Letters_run_to_fifty_without_x_which_marks_bad_spots()
    {
        var letters = Enumerable.Range(0, 50).Select(PieceBar.Letter).ToArray();

        letters.Should().OnlyHaveUniqueItems().And.NotContain('x').And.NotContain('X');
        PieceBar.Letter(50).Should().Be('A');
    }

    [Fact]
    public void The_legend_fits_the_sheet_and_names_every_sign()
    {
        PieceBar.Legend.Length.Should().BeLessThan(78);
        PieceBar.Legend.Should().ContainAll("A B C cuts", "| saw", "= keep", ". scrap", "- left as it is", "x bad", "/ trim");
    }

    [Fact]
    public void Stretches_of_any_piece_join_without_gap_or_overlap()
    {
        var piece = Gen.Select(Gen.Int[1, 30].Array[1, 8], Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 2]).Select((lengths, trimLeft, trimRight, kerf) =>
        {
            var at = Length.Inches(trimLeft);
            var cuts = new List<PlannedCut>();
            foreach (var length in lengths)
            {
                cuts.Add(new PlannedCut("stage", "cut", at, Length.Inches(length), Use.Rough));
                at += Length.Inches(length) + Length.Inches(kerf / 8m);
            }

            var source = Invented.Bar with
            {
                Length = at + Length.Inches(10 + trimRight),
                TrimLeft = Length.Inches(trimLeft),
                TrimRight = Length.Inches(trimRight),
                BadSpots = [new Span(at + Length.Inches(2), at + Length.Inches(4))],
            };
            return new PlannedPiece { Source = source, Cuts = cuts, Remainders = [new PlannedRemainder(at, Length.Inches(2), Kept: false)], SawCuts = cuts.Count };
        });

        piece.Sample(each =>
        {
            var bar = PieceBar.Of(each);

            var at = Length.Zero;
            foreach (var stretch in bar.Stretches)
            {
                stretch.Start.Should().Be(at);
                stretch.Length.Should().NotBe(Length.Zero);
                at = stretch.End;
            }

            at.Should().Be(each.Length);
            bar.Stretches.Count(stretch => stretch.Kind == StretchKind.Cut).Should().Be(each.Cuts.Count);
            bar.ToText(40).Should().HaveLength(42);
        });
    }

    private static PlannedCut Cut(decimal start, decimal length) => new("stage", "cut", Length.Inches(start), Length.Inches(length), Use.Rough);
}
