using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class PieceTests
{
    private static readonly Piece Board = new() { Code = default, Material = Of("2x4"), Length = Length.Inches(96) };

    private static Material Of(string name) => MaterialReader.Read(name).Value;

    private static Span Bad(int start, int end) => new(Length.Inches(start), Length.Inches(end));

    private static string Spans(Piece piece) => string.Join(" ", piece.Spans());

    [Fact]
    public void A_clean_piece_is_one_span() => Spans(Board).Should().Be("0\"..96\"");

    [Fact]
    public void Trims_come_off_both_ends() =>
        Spans(Board with { TrimLeft = Length.Inches(1), TrimRight = Length.Inches(2) }).Should().Be("1\"..94\"");

    [Fact]
    public void Bad_spots_part_a_piece() =>
        Spans(Board with { BadSpots = [Bad(30, 36), Bad(50, 52)] }).Should().Be("0\"..30\" 36\"..50\" 52\"..96\"");

    [Fact]
    public void A_bad_spot_at_an_end_leaves_no_empty_span() =>
        Spans(Board with { BadSpots = [Bad(0, 10), Bad(90, 96)] }).Should().Be("10\"..90\"");

    [Fact]
    public void Trims_inside_bad_spots_take_nothing_more() =>
        Spans(Board with { BadSpots = [Bad(0, 10), Bad(90, 96)], TrimLeft = Length.Inches(4), TrimRight = Length.Inches(3) }).Should().Be("10\"..90\"");

    [Fact]
    public void A_trim_beyond_a_bad_spot_swallows_it() =>
        Spans(Board with { BadSpots = [Bad(2, 5), Bad(92, 94)], TrimLeft = Length.Inches(6), TrimRight = Length.Inches(10) }).Should().Be("6\"..86\"");

    [Fact]
    public void A_trim_may_end_inside_a_bad_spot() =>
        Spans(Board with { BadSpots = [Bad(80, 90)], TrimRight = Length.Inches(10) }).Should().Be("0\"..80\"");

    [Fact]
    public void A_piece_that_is_bad_all_over_has_no_span() =>
        Spans(Board with { BadSpots = [Bad(1, 96)], TrimLeft = Length.Inches(1) }).Should().BeEmpty();

    /// <summary>A point inside a checked piece lies in a span exactly where no trim and no bad spot has it, and spans are in order and apart.</summary>
    [Fact]
    public void Spans_are_exactly_what_is_neither_trimmed_nor_bad() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[0, 20], Gen.Select(Gen.Int[0, 58], Gen.Int[1, 12]).Array[0, 5]).Sample((left, right, spots) =>
        {
            var piece = PieceRules.Check(Board with
            {
                Length = Length.Inches(70),
                TrimLeft = Length.Inches(left),
                TrimRight = Length.Inches(right),
                BadSpots = [.. spots.Select(spot => Bad(spot.Item1, Math.Min(70, spot.Item1 + spot.Item2)))],
            }).Value;
            var spans = piece.Spans();
            for (var i = 1; i < spans.Count; i++)
                if (spans[i].Start <= spans[i - 1].End) return false;

            for (var inch = 0; inch < 70; inch++)
            {
                var middle = Length.Inches(inch + 0.5m);
                var usable = inch >= left && inch < 70 - right && !spots.Any(spot => inch >= spot.Item1 && inch < spot.Item1 + spot.Item2);
                if (spans.Any(span => span.Start < middle && middle < span.End) != usable) return false;
            }

            return true;
        });

    [Fact]
    public void A_span_that_ends_before_it_starts_is_a_bug()
    {
        var making = () => Bad(5, 5);
        making.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void Bad_spots_are_put_in_order_and_joined_where_they_touch() =>
        string.Join(" ", PieceRules.Check(Board with { BadSpots = [Bad(50, 52), Bad(30, 36), Bad(36, 40), Bad(31, 33)] }).Value.BadSpots)
            .Should().Be("30\"..40\" 50\"..52\"");

    public static TheoryData<Piece, string> WrongPieces() => new()
    {
        { Board with { Length = Length.Zero }, "a piece has a length over 0" },
        { Board with { Material = MaterialReader.ReadCounted("panel tie").Value }, "panel tie is counted, not cut: give a number, not a length" },
        { Board with { Material = Of("plywood 3/4") }, "a sheet has two sides; write them like 96x48" },
        { Board with { Width = Length.Inches(4) }, "only a sheet has a second side" },
        { Board with { BadSpots = [Bad(90, 97)] }, "the bad spot ends at 97\", but the piece is only 96\" long" },
        { Board with { TrimLeft = Length.Inches(50), TrimRight = Length.Inches(46) }, "the end trims leave nothing of the piece" },
        { Board with { FirstLine = Length.Inches(2) }, "only foam has pattern lines" },
        { Board with { Material = Of("foam 2x12"), FirstLine = Length.Inches(97) }, "the first pattern line lies outside the piece" },
        { Board with { State = PieceState.Reserved }, "a reserved piece names its stage" },
        { Board with { Place = new string('a', 61) }, "the place has more than 60 characters" },
        { Board with { FromStage = new string('a', 61) }, "the stage has more than 60 characters" },
        { Board with { TreatedWith = new string('a', 61) }, "the treatment has more than 60 characters" },
        { Board with { Note = new string('a', 501) }, "the note has more than 500 characters" },
        { Board with { Place = "a\u001b[2J" }, "the place holds a control character; write plain text only" },
        { Board with { Note = "a\ud800" }, "the note holds a control character; write plain text only" },
    };

    [Theory]
    [MemberData(nameof(WrongPieces))]
    public void What_no_piece_can_be_is_refused(Piece piece, string sentence) =>
        PieceRules.Check(piece).Faults.Select(fault => fault.Sentence).Should().Equal(sentence);

    [Fact]
    public void Every_fault_of_a_piece_is_told() =>
        PieceRules.Check(Board with { Length = Length.Zero, Width = Length.Inches(1), State = PieceState.Reserved }).Faults.Should().HaveCount(3);

    [Fact]
    public void The_longest_texts_are_allowed() =>
        PieceRules.Check(Board with { Place = new string('é', 60), Note = new string('a', 500) }).Ok.Should().BeTrue();

    [Fact]
    public void A_bin_has_no_negative_count()
    {
        var tie = (Hardware)MaterialReader.ReadCounted("panel tie").Value;
        PieceRules.Check(new Bin(default, tie, 0)).Ok.Should().BeTrue();
        PieceRules.Check(new Bin(default, tie, -1)).Fault.Sentence.Should().Be("a count can't be negative");
        PieceRules.Check(new Bin(default, tie, 1, Place: "\u0007")).Fault.Sentence.Should().Be("the place holds a control character; write plain text only");
    }

    [Fact]
    public void A_draft_has_everything_a_piece_has_but_the_code()
    {
        var ofPiece = typeof(Piece).GetProperties().Where(property => property.CanWrite).Select(property => (property.Name, property.PropertyType));
        var ofDraft = typeof(PieceDraft).GetProperties().Where(property => property.CanWrite).Select(property => (property.Name, property.PropertyType));
        ofPiece.Where(property => property.Name != nameof(Piece.Code)).Should().BeEquivalentTo(ofDraft);
    }

    [Fact]
    public void A_draft_becomes_a_piece_with_nothing_lost()
    {
        var code = Code.Draw(new Random(7).Next);
        var draft = new PieceDraft
        {
            Material = Of("foam 2x12"),
            Length = Length.Inches(48),
            Width = Length.Inches(3),
            Condition = Condition.Poor,
            BadSpots = [Bad(1, 2)],
            TrimLeft = Length.Inches(1),
            TrimRight = Length.Inches(2),
            Treated = true,
            TreatedWith = "ACQ",
            Stamped = true,
            Nails = true,
            Concrete = true,
            Oiled = true,
            Place = "shed",
            FromStage = "footing",
            CutFrom = code,
            FirstLine = Length.Inches(4),
            Note = "split",
            State = PieceState.Reserved,
            ReservedFor = "wall",
        };
        var piece = draft.ToPiece(code);
        piece.Code.Should().Be(code);
        piece.Should().BeEquivalentTo(draft);
    }
}
