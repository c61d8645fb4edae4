using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Walls;

/// <summary>What of a wall's pieces is sawn lengthwise. The wall, its panel of 12 in and the pieces are our own invention.</summary>
public sealed class CutToHeightTests
{
    private static readonly FoamPanel Panel = (FoamPanel)MaterialReader.Read("foam 2-1/2x12").Value;

    // A full course, and one of 3 in on it.
    private static readonly Run Row = new()
    {
        Name = "A outside",
        Leg = "A",
        Material = Panel,
        Lines = new PatternLines(Length.Zero, In(2), In(12)),
        Joints = JointRule.OnPattern,
        Stagger = Length.Zero,
        ShortestPiece = In(2),
        Reversible = false,
        Courses = [new Course(1, In(12), [new Span(Length.Zero, In(72))]), new Course(2, In(3), [new Span(Length.Zero, In(72))])],
    };

    // Of three panels of 48 in: one whole and 24 of the second below, 40 of the third and 24 and 8 of others above.
    private static readonly RunPlan Plan = new()
    {
        Stage = "walls",
        Tiers = new RunTiers([], Figure.Best(0), Figure.Best(0), Figure.Best(0), Figure.Best(0), Figure.Best(0)),
        Courses =
        [
            new LaidCourse("A outside", 1, [new LaidPiece(Length.Zero, In(48), 0, 0, Turned: false), new LaidPiece(In(48), In(72), 1, 0, Turned: false)], null),
            new LaidCourse("A outside", 2, [new LaidPiece(Length.Zero, In(40), 2, 0, Turned: false), new LaidPiece(In(40), In(64), 1, 1, Turned: true), new LaidPiece(In(64), In(72), 2, 1, Turned: false)], null),
        ],
        ExtraTies = [],
        Pieces = [New([0, 48]), New([0, 24], [24, 24]), New([0, 40], [40, 8])],
        Savings = new PlanSavings(Money.Zero, Money.Zero, AllNewProven: true, Unpriced: []),
        Unpriced = [],
    };

    // 12 - 3 = 9 in less the knife's 1/8 in. What is 8 in long is shorter than what is worth a label, 12 in.
    [Fact]
    public void Each_piece_of_a_low_course_is_sawn_to_its_height_and_what_is_long_enough_of_the_strip_is_kept()
    {
        var settings = YardSettings.Usual with { KerfElsewhere = In(0.125m), KeepElsewhere = In(12) };
        var pieces = CutToHeight.In(Plan, [Row], settings).Pieces;

        pieces[0].Cuts.Single().Rip.Should().BeNull();
        pieces[1].Cuts.Select(cut => cut.Rip?.Strip).Should().Equal(null, In(8.875m));
        pieces[1].Strips.Should().Equal(new KeptStrip(MaterialReader.Read("foam 2-1/2x8-7/8").Value, In(24), In(24)));
        pieces[2].Cuts.Select(cut => (cut.Rip!.Width, cut.Rip.KeptAs?.Name)).Should().Equal((In(3), "foam 2-1/2x8-7/8"), (In(3), null));
        pieces[2].MaterialOf(pieces[2].Cuts[0]).Should().Be(Panel, "new, it would be sawn from a whole panel too");
    }

    [Fact]
    public void A_strip_lower_than_the_panel_is_thick_is_scrap()
    {
        var low = Row with { Courses = [Row.Courses[0], Row.Courses[1] with { Height = In(10) }] };

        CutToHeight.In(Plan, [low], YardSettings.Usual with { KerfElsewhere = Length.Zero }).Pieces.SelectMany(piece => piece.Strips).Should().BeEmpty();
    }

    [Fact]
    public void A_wall_of_whole_courses_is_left_as_it_is() =>
        CutToHeight.In(Plan, [Row with { Courses = [Row.Courses[0], Row.Courses[1] with { Height = In(12) }] }], YardSettings.Usual).Should().BeSameAs(Plan);

    // The notch runs from 30 to 50 in. Of 0..40 that is the last 10; of 40..64, which lies turned, 40..50 is what is farthest from its marked end: 14 to 24.
    [Fact]
    public void A_part_over_an_opening_is_measured_from_the_marked_end_of_a_turned_piece_too()
    {
        var notch = new Notch("A", 2, "hatch", new Span(In(30), In(50)), Length.Zero, In(1));

        // Of 3 in of course 1 in stays and the knife takes 1/8; it takes another 1/8 where it comes down inside the piece.
        var settings = YardSettings.Usual with { KerfElsewhere = In(0.125m) };
        CutToHeight.Parts(Plan, [Row], [notch, notch with { Leg = "B" }], settings).Should().Equal(
            new NotchedPart(1, 1, In(14), In(24), notch) { OutLength = In(9.875m), OutHeight = In(1.875m) },
            new NotchedPart(2, 0, In(30), In(40), notch) { OutLength = In(9.875m), OutHeight = In(1.875m) });
    }

    // A window from 58 to 72 in, sill at 6: of course 1 the piece from 48 to 72 has 6 in under it, and what is sawn out there is 14 in long less the
    // knife on one side, and 12 - 6 in high less the knife below.
    [Fact]
    public void What_is_sawn_out_under_an_opening_is_kept_where_it_is_worth_a_label()
    {
        var notch = new Notch("A", 1, "window", new Span(In(58), In(72)), In(6), Length.Zero);
        var settings = YardSettings.Usual with { KerfElsewhere = In(0.125m), KeepElsewhere = In(12) };
        var whole = Row with { Courses = [Row.Courses[0], Row.Courses[1] with { Height = In(12) }] };
        var plan = CutToHeight.In(Plan, [whole], settings, [notch]);

        plan.Pieces[1].Strips.Should().Equal(new KeptStrip(MaterialReader.Read("foam 2-1/2x5-7/8").Value, In(10), In(13.875m)));
        plan.Pieces[1].Cuts.Should().OnlyContain(cut => cut.Rip == null, "beside the window it keeps its height");
        CutToHeight.Parts(plan, [whole], [notch], settings).Single().KeptAs!.Name.Should().Be("foam 2-1/2x5-7/8");
        CutToHeight.In(plan, [whole], settings, [notch]).Pieces[1].Strips.Should().Equal(plan.Pieces[1].Strips, "said once is said");
        CutToHeight.In(Plan, [whole], settings, [notch with { Where = new Span(In(62), In(72)) }]).Pieces[1].Strips.Should().BeEmpty("9-7/8 in is shorter than what is worth a label");
        CutToHeight.In(Plan, [whole], settings, [notch with { Below = In(10) }]).Pieces[1].Strips.Should().BeEmpty("it is lower than the panel is thick");
    }

    // Cut at two times: what is sawn out belongs to the cut it lies in.
    [Fact]
    public void What_is_sawn_out_goes_with_the_cut_that_it_is_sawn_out_of()
    {
        var notch = new Notch("A", 1, "window", new Span(In(58), In(72)), In(6), Length.Zero);
        var settings = YardSettings.Usual with { KerfElsewhere = Length.Zero, KeepElsewhere = In(12) };
        var piece = CutToHeight.In(Plan, [Row with { Courses = [Row.Courses[0], Row.Courses[1] with { Height = In(12) }] }], settings, [notch]).Pieces[1];

        PartlyCut.Of(piece, [0], [1], Length.Zero, In(12)).Made.StripsLeft.Should().HaveCount(1);
        PartlyCut.Of(piece, [1], [0], Length.Zero, In(12)).Made.StripsLeft.Should().BeEmpty();
    }

    private static Length In(decimal inches) => Length.Inches(inches);

    private static PlannedPiece New(params decimal[][] cuts) => new()
    {
        Bought = new StorePrice { Material = Panel, Length = In(48), Price = new Money(1500) },
        Cuts = [.. cuts.Select(cut => new PlannedCut("walls", "A outside", In(cut[0]), In(cut[1]), Use.Nonstructural))],
        Remainders = [],
        SawCuts = 1,
    };
}
