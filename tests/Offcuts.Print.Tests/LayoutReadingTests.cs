using Offcuts.Core.Measures;

namespace Offcuts.Print.Tests;

/// <summary>
/// Every layout's print at 100 to 300 dpi, straight, turned by 7, 45 and 90 degrees, sharp, out of focus, and with 15 % of the symbol
/// washed out, is read by a reader that did not write it. With the folder <c>OFFCUTS_PICTURES</c> set the same pictures are written
/// there for a second reader, named after what they say.
/// </summary>
public sealed class LayoutReadingTests
{
    private static readonly double[] Turns = [0, 7, 45, 90];

    private static string? Folder => Environment.GetEnvironmentVariable("OFFCUTS_PICTURES");

    public static TheoryData<string, int> Prints
    {
        get
        {
            var prints = new TheoryData<string, int>();
            foreach (var layout in LabelLayout.Shipped)
                foreach (var dpi in (int[])[100, 150, 200, 300]) prints.Add(layout.Name, dpi);
            return prints;
        }
    }

    [Theory]
    [MemberData(nameof(Prints))]
    public void Each_layout_reads_at_each_resolution_turned_blurred_and_washed_out(string name, int dpi)
    {
        var layout = LabelLayout.Find(name).Value;
        var label = LabelContent.Of(Invented.Waler, Invented.Day, LengthUnit.Inch);
        var print = OfLabel(layout, label, dpi);
        var module = (double)layout.Module.InInches * dpi;

        // Out of focus by a third of a module at most: three boxes that reach so far spread by the root of reach x (reach + 1); one alone of
        // one pixel each way by 0.82.
        var reach = (int)((Math.Sqrt(1 + 4 * module * module / 9) - 1) / 2);
        var variants = new Dictionary<string, Picture>
        {
            ["sharp"] = print,
            ["blurred"] = reach > 0 ? print.Blurred(reach, times: 3) : print.Blurred(1, times: 1),
            ["washed"] = Washed(layout, label, dpi),
        };
        var missed = new List<string>();
        foreach (var (kind, picture) in variants)
            foreach (var turn in Turns)
            {
                var seen = turn == 0 ? picture : picture.Turned(turn);
                if (Folder is { } folder) File.WriteAllBytes(Path.Combine(folder, $"{name}_{dpi}dpi_{kind}_{turn}__{label.Code.QrText.Replace(':', '-')}.pgm"), seen.Pgm());
                // Where a module is many pixels wide the reader's own window is smaller than one, so the picture is looked at in half its size too.
                if (seen.Read() != label.Code.QrText && seen.Halved().Read() != label.Code.QrText) missed.Add($"| ZXing | {name} | {dpi} | {kind} | {turn} |");
            }

        missed.Should().Equal(Explained(name, dpi), "each miss stands in labels/README.md with its reason, and nothing else does");
    }

    private static IEnumerable<string> Explained(string name, int dpi, [System.Runtime.CompilerServices.CallerFilePath] string source = "") =>
        File.ReadLines(Path.Combine(Path.GetDirectoryName(source)!, "..", "..", "labels", "README.md"))
            .Where(line => line.StartsWith($"| ZXing | {name} | {dpi} | ", StringComparison.Ordinal))
            .Select(line => string.Join('|', line.Split('|').Take(6)) + "|");

    // 15 % of the symbol without its ink: 9.45 columns of the 7 rows between the finder patterns of the left side, where a drop runs down.
    // Of the text that takes 4 of the 26 code words, and level Q puts 6 right.
    private static Picture Washed(LabelLayout layout, LabelContent label, int dpi)
    {
        var picture = OfLabel(layout, label, dpi);
        var (x, y) = LabelSetting.QrCorner(layout);
        var module = (double)layout.Module.InInches * dpi;
        picture.Lighten((double)x.InInches * dpi + QrSymbol.QuietZone * module, (double)y.InInches * dpi + (QrSymbol.QuietZone + 7) * module, 0.15 * 21 * 21 / 7 * module, 7 * module);
        return picture;
    }

    // The label alone, as on a roll, so that a page of others costs no time.
    private static Picture OfLabel(LabelLayout layout, LabelContent label, int dpi)
    {
        var alone = layout with { PageWidth = layout.LabelWidth, PageHeight = layout.LabelHeight, Columns = 1, Rows = 1, Left = Length.Zero, Top = Length.Zero };
        return Picture.OfPage(LabelSheet.Pdf(alone, [label], Invented.Day).Value, 1, dpi);
    }
}
