using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The cuts file, read. All rows are invented.</summary>
public sealed class CutsFileTests
{
    private static Result<IReadOnlyList<Stage>> Read(string text) => CutsFile.ReadText(text, "cuts.csv");

    private static string[] FaultsOf(string text) => [.. Read(text).Faults.Select(fault => fault.ToString())];

    [Fact]
    public void Stages_come_in_the_order_of_their_first_rows()
    {
        Read("stage,cut,material,length,qty\nwalls,stud,2x4,92-5/8 in,10\nfloor,joist,2x8,10',4\nwalls,plate,2x4,8',3\n")
            .Value.Select(stage => $"{stage.Name}: {string.Join(", ", stage.Cuts.Select(cut => cut.Name))}")
            .Should().Equal("walls: stud, plate", "floor: joist");
    }

    [Fact]
    public void A_cut_that_says_no_more_is_nonstructural_of_one_length_and_takes_either_treatment()
    {
        var cut = Read("stage,cut,material,length,qty\nwalls,stud,2x4,92-5/8 in,10\n").Value.Single().Cuts.Single();
        cut.Should().BeEquivalentTo(new RequiredCut
        {
            Stage = "walls",
            Name = "stud",
            Material = cut.Material,
            Shortest = Length.Inches(92.625m),
            Longest = Length.Inches(92.625m),
            Count = 10,
            Use = Use.Nonstructural,
            Treated = TreatedWish.Any,
        });
        cut.Material.Name.Should().Be("2x4");
    }

    [Fact]
    public void Every_column_of_the_definition_is_read()
    {
        var stage = Read(
            "qty,treated,use,longest,length,material,cut,stage,date,rip\n"
            + "6,yes,Bracing,30 in,24 in,2x4,kicker,pour,2026-06-01,Yes\n"
            + "40,,,,,hex bolt 1/2,anchors,pour,,no\n").Value.Single();

        stage.Date.Should().Be(new DateOnly(2026, 6, 1));
        var cut = stage.Cuts.Single();
        (cut.Shortest, cut.Longest, cut.Count, cut.Use, cut.Treated, cut.Rip).Should().Be((Length.Inches(24), Length.Inches(30), 6, Use.Bracing, TreatedWish.Yes, true));
        var need = stage.Hardware.Single();
        (need.Stage, need.Name, need.Hardware.Name, need.Count).Should().Be(("pour", "anchors", "hex bolt 1/2", 40));
    }

    [Fact]
    public void Bare_numbers_take_the_unit_of_their_header()
    {
        var cut = Read("stage,cut,material,length_mm,longest_in,qty\nwalls,stud,2x4,2000,80,1\n").Value.Single().Cuts.Single();
        (cut.Shortest, cut.Longest).Should().Be((Length.Millimetres(2000), Length.Inches(80)));
    }

    [Theory]
    [InlineData("walls,stud,2x4,0,10,,,", "length: a length of 0 is nothing to build with")]
    [InlineData("walls,stud,2x4,,10,,,", "length: a length is missing here; write it like 7' 8-5/8\", 92.5\" or 2400 mm")]
    [InlineData("walls,stud,2x4,8',0,,,", "qty: a count is a whole number from 1 to 100000")]
    [InlineData("walls,stud,2x4,8',100001,,,", "qty: a count is a whole number from 1 to 100000")]
    [InlineData("walls,stud,2x4,8',,,,", "qty: this must not be empty")]
    [InlineData("walls,stud,2x4,8',2,7',,", "longest: the longest that will do is shorter than the cut")]
    [InlineData("walls,stud,2x4,8',2,,shelf,", "use: \"shelf\" is no use; write structural, nonstructural, bracing or rough")]
    [InlineData("walls,stud,2x4,8',2,,,perhaps", "treated: \"perhaps\" is not yes, no or any")]
    [InlineData("walls,skin,plywood 3/4,8',2,,,", "material: sheets are catalogued but not matched yet")]
    [InlineData("walls,bolts,hex bolt,,2,8',,", "longest: hardware has no length")]
    [InlineData("walls,bolts,hex bolt,,2,,,yes", "treated: hardware is not sorted by treatment; leave it empty")]
    [InlineData(",stud,2x4,8',2,,,", "stage: this must not be empty")]
    [InlineData("walls,,2x4,8',2,,,", "cut: this must not be empty")]
    public void A_faulty_cell_is_named_with_line_column_and_reason(string row, string fault)
    {
        FaultsOf($"stage,cut,material,length,qty,longest,use,treated\n{row}\n").Should().Equal($"cuts.csv:2: {fault}");
    }

    [Theory]
    [InlineData("walls,stud,2x4,8',2,perhaps", "rip: \"perhaps\" is neither yes nor no")]
    [InlineData("walls,bar,#4,8',2,yes", "rip: #4 is never ripped: only lumber under 5 in thick and foam are")]
    [InlineData("walls,post,6x6,8',2,yes", "rip: 6x6 is never ripped: only lumber under 5 in thick and foam are")]
    [InlineData("walls,bolts,hex bolt,,2,yes", "rip: hex bolt is never ripped: only lumber under 5 in thick and foam are")]
    public void What_is_never_ripped_can_not_be_asked_to_be(string row, string fault)
    {
        FaultsOf($"stage,cut,material,length,qty,rip\n{row}\n").Should().Equal($"cuts.csv:2: {fault}");
    }

    [Fact]
    public void A_cut_longer_than_anything_is_a_cut_all_the_same()
    {
        Read("stage,cut,material,length,qty\nwalls,mast,2x4,900',1\n").Value.Single().Cuts.Single().Shortest.Should().Be(Length.Feet(900));
    }

    [Fact]
    public void One_stage_has_one_date()
    {
        FaultsOf("stage,cut,material,length,qty,date\na,x,2x4,8',1,2026-06-01\na,y,2x4,8',1,\na,z,2x4,8',1,2026-06-02\nb,z,2x4,8',1,June\n").Should().Equal(
            "cuts.csv:4: date: line 2 gives the same stage another date",
            "cuts.csv:5: date: a date is written year-month-day, like 2026-05-31");
    }

    [Fact]
    public void Missing_columns_are_all_named()
    {
        FaultsOf("stage,material,use\n").Should().Equal(
            "cuts.csv:1: cut: this column is missing",
            "cuts.csv:1: length: this column is missing",
            "cuts.csv:1: qty: this column is missing");
    }

    [Fact]
    public void A_name_stands_once_among_the_needs_of_a_stage()
    {
        FaultsOf("stage,cut,material,length,qty\nwalls,stud,2x4,8',1\nfloor,stud,2x4,8',1\nwalls,stud,2x4,9',2\nwalls,stud,bolt,,4\n").Should().Equal(
            "cuts.csv:4: cut: walls has a need named stud in line 2 already; give this one another name, or add its count there",
            "cuts.csv:5: cut: walls has a need named stud in line 2 already; give this one another name, or add its count there");
    }
}
