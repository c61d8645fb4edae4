using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

public sealed class CautionsTests
{
    /// <summary>Each row of the table of cautions with the source it was read in.</summary>
    public static TheoryData<Caution, string> Sources => new()
    {
        { Cautions.PuttingAway, "29 CFR 1926.250(b)(8), 1926.25(a)" },
        { Cautions.GradeMark, "IRC R502.1, R602.1, R802.1; IRC 2012 R104.9.1" },
        { Cautions.LostGrade, "USDA Forest Products Laboratory, Fort Ord deconstruction study" },
        { Cautions.FormsAndBraces, "29 CFR 1926.703(a)(1), (b)" },
        { Cautions.Stripping, "29 CFR 1926.703(e); US Army FM 5-428 par. 5-86" },
        { Cautions.BarEnds, "29 CFR 1926.701(b)" },
        { Cautions.WallsBlowOut, "29 CFR 1926.703(a)(1); that walls blow out: common practice" },
        { Cautions.FreshConcrete, "common practice" },
        { Cautions.Ripping, "29 CFR 1910.213(c)(1)-(3); standing aside, push stick, short wood and nails: common practice" },
        { Cautions.TreatedWood, "EPA consumer information sheet on treated wood" },
        { Cautions.WoodOnConcrete, "IRC R317.1" },
        { Cautions.Foam, "IRC R608.4, R316.4; sun, oil and heat: common practice" },
        { Cautions.FormOil, "common practice" },
        { Cautions.ConcreteDust, "29 CFR 1926.1153" },
        // From memory, sure.
        { Cautions.TieDown, "49 CFR 393.106(d), 393.110, 393.87 (for commercial vehicles); where the weight lies and plates: common practice" },
    };

    [Theory]
    [MemberData(nameof(Sources))]
    public void A_caution_names_its_source(Caution caution, string source)
    {
        caution.Source.Should().Be(source);
        caution.ToString().Should().Be($"{caution.Text} [{source}]");
        Cautions.All.Should().Contain(caution);
    }

    [Fact]
    public void No_caution_stands_twice_and_all_defer_to_code_and_practice()
    {
        Cautions.All.Should().HaveCount(16).And.OnlyHaveUniqueItems(caution => caution.Topic);
        Cautions.Closing.Should().Be("Local code and licensed practice decide.");
    }

    [Fact]
    public void The_figures_of_the_rules_are_told()
    {
        // 29 CFR 1926.250(b)(8): lumber handled by hand is not stacked over 16 ft.
        Cautions.PuttingAway.Text.Should().Contain("16 ft");
    }

    [Theory]
    [InlineData(Use.Structural, "reclaimed lumber under load", "grade lost to wear")]
    [InlineData(Use.Bracing, "grade lost to wear", "forms and braces")]
    [InlineData(Use.Nonstructural)]
    [InlineData(Use.Rough)]
    public void Reclaimed_lumber_under_load_or_in_bracing_is_always_told(Use use, params string[] topics)
    {
        Topics(PlanOf(FromYard("2x10", Cut("joist", use)))).Should().Equal(topics);
    }

    [Fact]
    public void New_lumber_under_load_needs_no_caution()
    {
        Topics(PlanOf(Bought("2x10", treated: false, Cut("joist", Use.Structural)))).Should().BeEmpty();
    }

    [Fact]
    public void The_cuts_that_call_for_a_caution_are_named_with_their_stage()
    {
        Cautions.ForPlan(PlanOf(FromYard("2x10", Cut("joist", Use.Structural), Cut("joist", Use.Structural), Cut("stake", Use.Rough))))
            .Single(applied => applied.Caution == Cautions.GradeMark).Because
            .Should().Be("reclaimed lumber goes to structural use: joist (floor)");
    }

    [Fact]
    public void Nails_concrete_oil_and_treatment_are_told_by_code()
    {
        var piece = FromYard("2x4", Cut("stake", Use.Rough));
        var plan = PlanOf(piece with { Source = piece.Source! with { Nails = true, Concrete = true, Oiled = true, Treated = true } });

        Cautions.ForPlan(plan).Select(applied => applied.Because).Should().Equal(
            "nails are still in C99 MFXY", "concrete clings to C99 MFXY", "form oil was on C99 MFXY", "these are treated: C99 MFXY");
        Cautions.ForPlan(plan, code => "board 7")[0].Because.Should().Be("nails are still in board 7");
    }

    [Fact]
    public void Treated_wood_that_is_bought_is_told_too()
    {
        Cautions.ForPlan(PlanOf(Bought("2x6", treated: true, Cut("step", Use.Rough)))).Single()
            .Should().Be(new AppliedCaution(Cautions.TreatedWood, "these are treated: new 2x6"));
    }

    [Theory]
    [InlineData("foam 2-1/2x12", "foam")]
    [InlineData("#4", "rebar standing up")]
    public void Foam_and_bars_have_theirs(string material, string topic)
    {
        Topics(PlanOf(FromYard(material, Cut("part", Use.Nonstructural)))).Should().Equal(topic);
    }

    [Theory]
    [InlineData("sill plate", true)]
    [InlineData("Mudsills", true)]
    [InlineData("sleeper-2", true)]
    [InlineData("window stool", false)]
    [InlineData("platen", false)]
    public void Untreated_wood_whose_name_speaks_of_the_ground_is_told(string cut, bool told)
    {
        Topics(PlanOf(FromYard("2x4", Cut(cut, Use.Nonstructural)))).Contains("wood on concrete").Should().Be(told);
        var treated = FromYard("2x4", Cut(cut, Use.Nonstructural));
        Topics(PlanOf(treated with { Source = treated.Source! with { Treated = true } })).Should().NotContain("wood on concrete");
    }

    [Fact]
    public void A_board_that_is_ripped_is_told_and_a_panel_is_not()
    {
        PlannedCut Rip(string material) => Cut("strip", Use.Rough) with { Rip = new PlannedRip(MaterialReader.Read(material).Value, Length.Inches(3), Length.Inches(1), null) };

        Cautions.ForPlan(PlanOf(FromYard("2x6", Rip("2x4")))).Single().Should().Be(new AppliedCaution(Cautions.Ripping, "these are ripped: C99 MFXY"));
        Topics(PlanOf(FromYard("foam 2x16", Rip("foam 2x12")))).Should().Equal("foam");
    }

    [Fact]
    public void Many_names_are_counted_after_the_sixth()
    {
        var cuts = Enumerable.Range(1, 8).Select(i => Cut($"joist {i}", Use.Structural)).ToArray();

        Cautions.ForPlan(PlanOf(FromYard("2x10", cuts)))[0].Because
            .Should().EndWith("joist 5 (floor), joist 6 (floor) and 2 more");
    }

    [Fact]
    public void Pieces_in_hand_have_the_cautions_of_what_they_are()
    {
        var pieces = new[]
        {
            FromYard("2x4").Source! with { Nails = true, Oiled = true },
            FromYard("foam 2x12").Source! with { Code = default },
        };

        Cautions.ForPieces(pieces).Should().Equal(
            new AppliedCaution(Cautions.Nails, "nails are still in C99 MFXY"),
            new AppliedCaution(Cautions.FormOil, "form oil was on C99 MFXY"),
            new AppliedCaution(Cautions.Foam, "these are foam: foam 2x12"));
        Cautions.ForPieces([FromYard("2x4").Source!]).Should().BeEmpty();
    }

    [Fact]
    public void Stripping_a_form_has_its_own()
    {
        Cautions.WhenStripping.Should().Equal(Cautions.Stripping, Cautions.PuttingAway, Cautions.ConcreteDust);
    }

    private static IEnumerable<string> Topics(Plan plan) => Cautions.ForPlan(plan).Select(applied => applied.Caution.Topic);

    private static PlannedCut Cut(string name, Use use) => new("floor", name, Length.Zero, Length.Feet(1), use);

    private static PlannedPiece FromYard(string material, params PlannedCut[] cuts) => new()
    {
        Source = new Piece { Code = Code.Parse("C99MFXY").Value, Material = MaterialReader.Read(material).Value, Length = Length.Feet(20), Stamped = true },
        Cuts = cuts,
        Remainders = [],
        SawCuts = cuts.Length,
    };

    private static PlannedPiece Bought(string material, bool treated, params PlannedCut[] cuts) => new()
    {
        Bought = new StorePrice { Material = MaterialReader.Read(material).Value, Length = Length.Feet(20), Treated = treated, Price = new Money(100) },
        Cuts = cuts,
        Remainders = [],
        SawCuts = cuts.Length,
    };

    private static Plan PlanOf(params PlannedPiece[] pieces) => new()
    {
        Stages = ["floor"],
        Tiers = new Tiers(Figure.Best(0), [Figure.Best(0)], Figure.Best(0), Figure.Best(0), 0),
        Pieces = pieces,
        Hardware = [],
        Unfilled = [],
        Savings = new PlanSavings(Money.Zero, Money.Zero, AllNewProven: true, []),
        Unpriced = [],
    };
}
