namespace Offcuts.Print.Tests;

/// <summary>The prints in <c>labels/samples</c> are what the program prints.</summary>
public sealed class SampleTests
{
    public static TheoryData<string> Layouts => [.. LabelLayout.Shipped.Select(layout => layout.Name)];

    [Theory]
    [MemberData(nameof(Layouts))]
    public void The_sample_labels_are_up_to_date(string name)
    {
        Golden.CompareSample($"{name}.pdf", LabelSheet.Pdf(LabelLayout.Find(name).Value, Labels(name), Invented.Day).Value);
    }

    [Fact]
    public void The_sample_ruler_page_is_up_to_date()
    {
        Golden.CompareSample("ruler.pdf", RulerPage.Pdf(LabelLayout.Find("letter-10").Value, Invented.Day));
    }

    private static IReadOnlyList<LabelContent> Labels(string layout) =>
        layout is "letter-10" or "a4-14" or "roll-4x2" or "roll-2x1" ? Invented.Labels : Invented.OtherLabels;

    [Fact]
    public void The_sample_cut_sheet_is_up_to_date()
    {
        Golden.CompareSample("cut-sheet.pdf", CutSheet.Pdf(Invented.Plan, Invented.Options));
    }

    [Fact]
    public void The_text_of_the_cut_sheet_is_as_it_was_looked_at()
    {
        Golden.Compare("cut-sheet.txt", CutSheet.Text(Invented.Plan, Invented.Options));
    }
}
