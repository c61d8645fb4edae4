using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using static Offcuts.Matching.Tests.Scene;

namespace Offcuts.Matching.Tests;

/// <summary>A good plan that rips is spoilt in one way at a time; the checker must see each. The yard is invented.</summary>
public sealed class RipCheckTests
{
    private static readonly Material Wide = MaterialReader.Read("2x8").Value;
    private static readonly Material TwoBySix = MaterialReader.Read("2x6").Value;
    private static readonly MatchRequest Request = Scene.Request(
        [Board("48\"", 1) with { Material = Wide, Stamped = true }],
        [Cut("48\"") with { Rip = true }],
        Price("8'", 400),
        Price("8'", 700) with { Material = TwoBySix });

    private static readonly Problem Yard = Problem.Create(Request).Value;
    private static readonly Plan Good = Matcher.Match(Yard, MatchLimits.None);

    private static Plan With(Func<PlannedRip, PlannedRip?> change) => With(cut => cut with { Rip = change(cut.Rip!) });

    private static Plan With(Func<PlannedCut, PlannedCut> change) =>
        Good with { Pieces = [Good.Pieces[0] with { Cuts = [change(Good.Pieces[0].Cuts[0])] }] };

    // 7-1/4 - 3-1/2 - 1/8 = 3-5/8 in (PS 20-20 Table 3, dry).
    [Fact]
    public void The_good_plan_has_no_fault()
    {
        PlanChecker.Faults(Yard, Good).Should().BeEmpty();
        Good.Pieces.Single().Cuts.Single().Rip.Should().Be(new PlannedRip(Stud, L("3 1/2\""), L("3 5/8\""), Stud));
    }

    public static TheoryData<string, string> Spoilt => new()
    {
        { "not ripped at all", "do not fit what was asked" },
        { "into another material", "do not fit what was asked" },
        { "into something wider", "can't be ripped out of" },
        { "another width", "is not 12\" wide" },
        { "another strip", "a strip of 12\" is said" },
        { "a kept strip as scrap", "the strip is not kept as scrap" },
        { "kept as something else", "the strip is not kept as 2x6" },
        { "a rip too few", "rips: 0 is said, 1 is found" },
        { "no tier of rips", "rips are a tier where a cut may be ripped" },
        { "a bound of rips above", "a bound of 2 is above the value 1" },
        { "a saw cut too few", "1 saw cuts are said, 2 are needed" },
        { "a new board ripped", "is bought to be ripped" },
        { "ripped out of its own material", "do not fit what was asked" },
    };

    [Theory]
    [MemberData(nameof(Spoilt))]
    public void Every_spoilt_plan_is_found_out(string how, string fault)
    {
        var plan = how switch
        {
            "not ripped at all" => With((PlannedRip _) => null),
            "into another material" => With(rip => rip with { Into = TwoBySix, Width = L("5 1/2\""), Strip = L("1 5/8\""), KeptAs = null }),
            "into something wider" => With(rip => rip with { Into = MaterialReader.Read("2x10").Value }),
            "another width" => With(rip => rip with { Width = L("12\"") }),
            "another strip" => With(rip => rip with { Strip = L("12\"") }),
            "a kept strip as scrap" => With(rip => rip with { KeptAs = null }),
            "kept as something else" => With(rip => rip with { KeptAs = TwoBySix }),
            "a rip too few" => Good with { Tiers = Good.Tiers with { Rips = Figure.Best(0) } },
            "no tier of rips" => Good with { Tiers = Good.Tiers with { Rips = null } },
            "a bound of rips above" => Good with { Tiers = Good.Tiers with { Rips = new Figure(1, 2) } },
            "a saw cut too few" => Good with { Pieces = [Good.Pieces[0] with { SawCuts = 1 }] },
            "a new board ripped" => Good with { Pieces = [Good.Pieces[0] with { Source = null, Bought = Price("4'", 1) with { Material = Wide } }] },
            "ripped out of its own material" => Good with { Pieces = [Good.Pieces[0] with { Source = Good.Pieces[0].Source! with { Material = Stud } }] },
            _ => throw new ArgumentException("no such way", nameof(how)),
        };

        PlanChecker.Faults(Yard, plan).Should().Contain(one => one.Contains(fault, StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_cut_does_not_allow_is_found_out()
    {
        IReadOnlyList<string> Faults(Func<RequiredCut, RequiredCut> change)
        {
            var cut = change(Request.Stages[0].Cuts[0]);
            var plan = With(planned => planned with { Use = cut.Use });
            return PlanChecker.Faults(Problem.Create(Request with { Stages = [Request.Stages[0] with { Cuts = [cut] }] }).Value, plan);
        }

        Faults(cut => cut).Should().BeEmpty();
        Faults(cut => cut with { Rip = false }).Should().Contain("the cuts cut of wall do not fit what was asked");
        Faults(cut => cut with { Use = Use.Structural }).Should().Contain("the cuts cut of wall do not fit what was asked", "the stamp does not count");
    }

    [Fact]
    public void One_cut_that_may_be_ripped_makes_rips_a_tier_of_the_whole_plan()
    {
        var problem = Problem.Create(Request with { Pieces = [.. Request.Pieces, Board("24\"", 2)], Stages = [.. Request.Stages, new Stage("roof", null, [Cut("20\"", stage: "roof", name: "nailer")], [])] }).Value;
        var plan = Matcher.Match(problem, MatchLimits.None);

        plan.Tiers.Rips.Should().Be(Figure.Best(1));
        PlanChecker.Faults(problem, plan).Should().BeEmpty();
        PlanChecker.Faults(problem, plan with { Tiers = plan.Tiers with { Rips = null } }).Should().Contain("rips are a tier where a cut may be ripped, and only there");
    }
}
