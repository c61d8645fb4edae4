using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print.Tests.HandOvers;

/// <summary>The hand-over list on paper. Everything on it is invented.</summary>
public sealed class HandListPdfTests
{
    private static readonly Bed Trailer = new("utility trailer", Length.Feet(10), 1_200_000, null);

    private static readonly ListedThing Board = new(Code.Parse("K7F3MXX").Value, "2x10", "9' 6\"", "fair, nails in", "north rack", 31_200, "lumber dressed, spruce-pine-fir at 19 % moisture");

    private static readonly ListedThing Ties = new(Code.Parse("N4PX7AW").Value, "40 panel tie", "", "", "shed", 4_000, "weighed, as you said");

    private static readonly ListedThing Pole = new(Code.Parse("K7F3MXX").Value, "pole Höß", "16'", "sound", "", null, "");

    private static readonly HandList List = new(
        "Hand-over 3 to Ann",
        ["3  2026-06-01  lent until 2026-09-30 to Ann: 2 things worth $12.50, 35.2 lb; not confirmed yet"],
        [Board, Ties, Pole],
        new LoadLists([new LoadList(Trailer, [Board, Ties], [new AppliedCaution(Cautions.TieDown, "a load is driven"), new AppliedCaution(Cautions.Nails, "nails are still in K7F 3MXX")])], [(Pole, "longer than any bed takes")], Figure.Best(1), [Board.WeightFrom, Ties.WeightFrom]),
        []);

    private static byte[] Pdf => HandListPdf.Write(List, LengthUnit.Inch, new DateOnly(2026, 6, 1));

    [Fact]
    public void The_list_is_as_it_was_looked_at_and_kept() =>
        Golden.Compare("hand-list.txt", string.Join("\f\n", PrintedPage.Of(Pdf).Select(page => page.Text)) + "\n");

    [Fact]
    public void Nothing_overlaps_and_nothing_leaves_the_page_and_the_same_list_gives_the_same_bytes()
    {
        Pdf.Should().Equal(Pdf);
        foreach (var page in PrintedPage.Of(Pdf))
        {
            page.Lines.Should().OnlyContain(line => line.Left > 30 && line.Right < page.Width - 30 && line.Bottom < page.Height - 30);
            for (var i = 0; i < page.Lines.Count; i++)
                for (var j = i + 1; j < page.Lines.Count; j++) page.Lines[i].Overlaps(page.Lines[j]).Should().BeFalse($"{page.Lines[i].Text} / {page.Lines[j].Text}");
        }
    }

    [Fact]
    public void A_long_list_goes_on_on_more_pages_with_every_code_on_it()
    {
        var random = new Random(3);
        ListedThing[] things = [.. Enumerable.Range(0, 150).Select(_ => Board with { Code = Code.Draw(random.Next) })];

        var pages = PrintedPage.Of(HandListPdf.Write(List with { Things = things, Loads = null }, LengthUnit.Millimetre, new DateOnly(2026, 6, 1)));

        pages.Should().HaveCountGreaterThan(1);
        pages[0].Width.Should().BeApproximately(595.3, 0.1, "A4 where the unit is the millimetre");
        var text = string.Join("\n", pages.Select(page => page.Text));
        pages.Where(page => page.Lines.Any(line => line.Text == "[ ]")).Should().HaveCountGreaterThan(1).And.OnlyContain(page => page.Lines.Any(line => line.Text == "lies at"), "each page says its columns");
        things.Should().OnlyContain(thing => text.Contains(thing.Code.ToString()));
    }
}
