using Offcuts.Core.Measures;

namespace Offcuts.Print.Tests;

/// <summary>Printed labels, turned into pictures at 150 dpi, are read by an independent reader.</summary>
public sealed class LabelReadingTests
{
    private const double Dpi = 150;

    private static readonly double[] Angles = [0, 90, 180, 12, 37];

    public static TheoryData<string> Layouts => [.. LabelLayout.Shipped.Select(layout => layout.Name)];

    [Theory]
    [MemberData(nameof(Layouts))]
    public void The_first_label_reads_upright_turned_and_blurred(string name)
    {
        var layout = LabelLayout.Find(name).Value;
        var pdf = LabelSheet.Pdf(layout, [LabelContent.Of(Invented.Waler, Invented.Day, LengthUnit.Inch)], Invented.Day).Value;

        Reads(LabelPicture(pdf, layout, 0), "OFFCUTS:C99MFXY");
    }

    [Theory]
    [MemberData(nameof(Layouts))]
    public void The_last_label_of_a_sheet_reads_upright_turned_and_blurred(string name)
    {
        var layout = LabelLayout.Find(name).Value;
        var pdf = LabelSheet.Pdf(layout, [LabelContent.Of(Invented.Crowded, Invented.Day, LengthUnit.Inch)], Invented.Day, startAt: layout.PerPage).Value;

        Reads(LabelPicture(pdf, layout, layout.PerPage - 1), "OFFCUTS:T9F3VRJ");
    }

    [Theory]
    [MemberData(nameof(Layouts))]
    public void A_blank_label_reads(string name)
    {
        var layout = LabelLayout.Find(name).Value;
        var pdf = LabelSheet.Pdf(layout, [LabelContent.Blank(Invented.Code("43HTX4K"))], Invented.Day).Value;

        LabelPicture(pdf, layout, 0).Read().Should().Be("OFFCUTS:43HTX4K");
    }

    [Theory]
    [InlineData("letter-10")]
    [InlineData("a4-14")]
    public void All_labels_of_a_sheet_read_from_one_picture(string name)
    {
        var layout = LabelLayout.Find(name).Value;
        var pdf = LabelSheet.Pdf(layout, Invented.Labels, Invented.Day).Value;

        Picture.OfPage(pdf, 1, Dpi).ReadAll().Should().BeEquivalentTo(Invented.Labels.Select(label => label.Code.QrText));
    }

    private static void Reads(Picture label, string text)
    {
        foreach (var angle in Angles)
        {
            var turned = label.Turned(angle);
            turned.Read().Should().Be(text, $"it is turned by {angle} degrees");
            turned.Blurred(1, times: 3).Read().Should().Be(text, $"it is turned by {angle} degrees and blurred three times over 3 pixels");
        }
    }

    private static Picture LabelPicture(byte[] pdf, LabelLayout layout, int place)
    {
        var at = layout.PlaceOf(place);
        return Picture.OfPage(pdf, 1, Dpi).Crop(Pixels(at.X), Pixels(at.Y), Pixels(at.Width), Pixels(at.Height));
    }

    private static double Pixels(Length length) => (double)length.InInches * Dpi;
}
