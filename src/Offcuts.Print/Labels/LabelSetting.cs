using System.Text.RegularExpressions;
using Offcuts.Core.Measures;

namespace Offcuts.Print;

/// <summary>One line of a label at its place, in points from the label's top left corner.</summary>
/// <param name="Text">The line.</param>
/// <param name="X">Left edge.</param>
/// <param name="Baseline">Its baseline.</param>
/// <param name="Size">Size of its letters.</param>
/// <param name="Bold">Whether they are bold.</param>
internal sealed record SetLine(string Text, double X, double Baseline, double Size, bool Bold);

/// <summary>A line to write on.</summary>
/// <param name="Caption">What to write there.</param>
/// <param name="X">Left end.</param>
/// <param name="Y">Height.</param>
/// <param name="Width">How long.</param>
internal sealed record WriteLine(string Caption, double X, double Y, double Width);

/// <summary>
/// Sets a label's words in the place that the QR symbol leaves. The code is as wide as the place; all else shrinks together
/// until it fits, down to <see cref="Least"/>; then details, date and place go, in this order. Marks and treatment never go.
/// </summary>
internal sealed partial class LabelSetting
{
    /// <summary>The smallest letters on a label, in points. Our own choice.</summary>
    public const double Least = 6;

    /// <summary>The smallest letters of the small print: captions and the foot of a sheet.</summary>
    public const double LeastSmall = 5;

    // Capitals and figures of the code stand without descenders, so its line is lower than others.
    private const double CodeAscent = 0.76;
    private const double CodeHeight = 0.98;

    // A hand in a glove writes on lines 7 mm apart.
    private const double Apart = 7 * 72 / 25.4;

    private readonly int _counts;
    private readonly string _code;
    private readonly LabelContent _content;
    private readonly double _left;
    private readonly double _top;
    private readonly double _width;
    private readonly double _height;

    private LabelSetting(LabelLayout layout, string code, LabelContent content)
    {
        (_code, _content) = (code, content);
        var inset = PaperFile.Points(layout.Inset);
        var side = PaperFile.Points(layout.QrSide);
        var (width, height) = (PaperFile.Points(layout.LabelWidth), PaperFile.Points(layout.LabelHeight));

        // A few letters (J, K) reach beyond where they are set; half a module on each side keeps them in their place.
        var clear = PaperFile.Points(layout.Module) / 2;
        var pin = PaperFile.Points(layout.Pin);
        (_left, _top) = layout.TextBeside ? (pin + inset + side + clear, inset) : (inset + clear, pin + inset + side);
        (_width, _height) = (width - inset - clear - _left, height - inset - _top);
        if (layout.WritesCount && content.IsCounted) _counts = Math.Clamp((int)(_height * 0.5 / Apart), 1, 4);
        Set();
    }

    public List<SetLine> Lines { get; } = [];

    public List<WriteLine> WriteLines { get; } = [];

    /// <summary>True where everything that may not be left out has its place; a layout without room for that is never read.</summary>
    public bool Fits { get; private set; } = true;

    public static LabelSetting Of(LabelLayout layout, LabelContent content) => new(layout, content.Code.ToString(), content);

    /// <summary>True where the label holds its code, material, length, and every mark at once. J is the narrowest letter of a code, so that one stands highest.</summary>
    public static bool HoldsEveryMark(LabelLayout layout) => LabelContent.Fullest.All(content =>
    {
        var setting = new LabelSetting(layout, "JJJ JJJJ", content);
        var text = string.Join(' ', setting.Lines.Select(line => line.Text));
        return setting.Fits && content.Marks.Append(content.Measure).All(mark => text.Contains(mark));
    });

    /// <summary>Where the symbol's quiet zone begins, from the label's top left corner: in the middle of the side it does not share.</summary>
    public static (Length X, Length Y) QrCorner(LabelLayout layout)
    {
        var spare = (layout.TextBeside ? layout.LabelHeight : layout.LabelWidth) - layout.QrSide;
        var middle = Length.FromUnits(spare.Units / 2);
        return layout.TextBeside ? (layout.Pin + layout.Inset, middle) : (middle, layout.Pin + layout.Inset);
    }

    private void Set()
    {
        var code = TextBlock.Fit([_code], "", bold: true, Math.Min(0.25 * _height, 40), Least, _width, 1);
        var below = _top + code.Size * CodeHeight;
        Lines.Add(new SetLine(code.Lines[0], _left, _top + code.Size * CodeAscent, code.Size, Bold: true));
        if (_content.IsBlank) SetWriteLines(below);
        else SetWords(below, _top + _height - below - _counts * Apart);
        for (var i = 1; i <= _counts; i++)
        {
            var y = _top + _height - LeastSmall * Lettering.LineHeight - (_counts - i) * Apart;
            WriteLines.Add(new WriteLine("count", _left, y, _width * 0.45));
            WriteLines.Add(new WriteLine("day", _left + _width * 0.55, y, _width * 0.45));
        }
    }

    private void SetWords(double top, double room)
    {
        var (upper, lower) = Blocks(room);
        var y = top;
        var spare = room - upper.Sum(block => block.Height) - lower.Sum(block => block.Height);
        Fits = spare >= 0;
        var gap = Math.Clamp(spare / Math.Max(1, upper.Count + lower.Count), 0, 0.04 * _height);
        foreach (var block in upper)
        {
            y += gap;
            Add(block, ref y);
        }

        y = top + room - lower.Sum(block => block.Height);
        foreach (var block in lower) Add(block, ref y);
    }

    // Everything shrinks together first; only when the smallest letters don't help does a field go.
    private (List<TextBlock> Upper, List<TextBlock> Lower) Blocks(double room)
    {
        for (var dropped = 0; ; dropped++)
        {
            for (var share = 1.0; share > 0.3; share -= 0.05)
            {
                var above = Shown([.. What(share), MarkLines(share), TreatmentLine(share), dropped < 1 ? DetailLines(share) : null]);
                var below = Shown([dropped < 3 ? PlaceLines(share) : null, dropped < 2 ? DateLine(share) : null]);
                if (above.Concat(below).Sum(block => block.Height) <= room || (dropped == 3 && share < 0.4)) return (above, below);
            }
        }
    }

    private static List<TextBlock> Shown(IEnumerable<TextBlock?> blocks) =>
        [.. blocks.OfType<TextBlock>().Where(block => block.Lines.Count > 0)];

    private IEnumerable<TextBlock> What(double share)
    {
        var ideal = Math.Max(0.13 * _height * share, Least);
        var (material, measure) = (Lettering.Printable(_content.Material), Lettering.Printable(_content.Measure));
        var together = $"{material}   {measure}";
        if (measure.Length > 0 && Lettering.Width(together, ideal, bold: true) <= _width) return [new TextBlock([together], ideal, Bold: true)];

        // The length has a line of its own; it is what a person looks for.
        return [Fit(Words(material), " ", bold: true, ideal, share > 0.6 ? 2 : 1), Fit(measure.Length > 0 ? [measure] : [], "", bold: true, ideal, 1)];
    }

    private TextBlock MarkLines(double share) =>
        Fit([.. _content.Marks.Select(Lettering.Printable)], " · ", bold: true, 0.09 * _height * share, 6);

    private TextBlock DetailLines(double share) =>
        Fit([.. Words(WholeLengths(string.Join("; ", _content.Details))).Select(Lettering.Printable)], " ", bold: false, 0.08 * _height * share, 2);

    private TextBlock TreatmentLine(double share) =>
        Fit(Words(Lettering.Printable(_content.Treatment)), " ", bold: false, 0.08 * _height * share, 1);

    private TextBlock PlaceLines(double share) =>
        Fit(Words(Lettering.Printable(_content.Place)), " ", bold: false, 0.1 * _height * share, share > 0.6 ? 2 : 1);

    private TextBlock DateLine(double share) =>
        Fit(Words(_content.Date), " ", bold: false, 0.075 * _height * share, 1);

    private TextBlock Fit(IReadOnlyList<string> parts, string joint, bool bold, double ideal, int mostLines) =>
        TextBlock.Fit(parts, joint, bold, ideal, Least, _width, mostLines);

    // Feet and their inches stay on one line.
    private static string WholeLengths(string text) => FeetAndInches().Replace(text, "'\u00a0");

    [GeneratedRegex(@"' (?=\d)", RegexOptions.CultureInvariant)]
    private static partial Regex FeetAndInches();

    private static string[] Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private void Add(TextBlock block, ref double y)
    {
        foreach (var line in block.Lines)
        {
            Lines.Add(new SetLine(line, _left, y + block.Size * Lettering.Ascent, block.Size, block.Bold));
            y += block.Size * Lettering.LineHeight;
        }
    }

    // A small label has one or two.
    private void SetWriteLines(double top)
    {
        string[] captions = ["material", "length", "place"];
        var room = _top + _height - top;
        var count = Math.Min(captions.Length, (int)(room / Apart));
        for (var i = 0; i < count; i++)
        {
            var y = top + room * (i + 1) / count - LeastSmall * Lettering.LineHeight;
            WriteLines.Add(new WriteLine(captions[i], _left, y, _width));
        }
    }
}
