using Offcuts.Core.Faults;
using Offcuts.Print;

namespace Offcuts.Screens;

/// <summary>What a stretch of text is, from which the view makes its look. No meaning hangs on it alone: the words say it too.</summary>
internal enum Tone
{
    /// <summary>Ordinary text.</summary>
    Plain,

    /// <summary>What the eye should find first.</summary>
    Strong,

    /// <summary>What only helps.</summary>
    Soft,

    /// <summary>Something went well.</summary>
    Good,

    /// <summary>Something is wrong.</summary>
    Fault,

    /// <summary>Something that can hurt.</summary>
    Caution,

    /// <summary>The chosen line.</summary>
    Chosen,

    /// <summary>Dark on light whatever the theme: a QR symbol.</summary>
    Paper,
}

/// <summary>A stretch of text in one tone; whatever was in the text is shown without harm.</summary>
internal readonly record struct Ink
{
    public Ink(string text, Tone tone = Tone.Plain) => (Text, Tone) = (TextRules.Harmless(text), tone);

    public string Text { get; }

    public Tone Tone { get; }

    public static implicit operator Ink(string text) => new(text);
}

/// <summary>One line of the screen.</summary>
internal sealed record Row(IReadOnlyList<Ink> Inks)
{
    public static Row Blank { get; } = new([]);

    /// <summary>The line without its tones.</summary>
    public string Text => string.Concat(Inks.Select(ink => ink.Text));

    /// <summary>Columns it takes.</summary>
    public int Width => Inks.Sum(ink => TextColumns.Width(ink.Text));

    public static Row Of(params Ink[] inks) => new(inks);

    public static Row Of(string text, Tone tone) => new([new Ink(text, tone)]);

    /// <summary>A text in as many lines as it needs, broken between words; lines after the first are set in.</summary>
    public static IEnumerable<Row> Wrapped(string text, int width, Tone tone = Tone.Plain, int indent = 0)
    {
        var lead = text.Length - text.TrimStart(' ').Length;
        var room = Math.Max(2, width - indent - lead);
        var lines = TextColumns.Wrap(TextRules.Harmless(text), room);
        for (var i = 0; i < lines.Count; i++)
            yield return Of(new string(' ', i == 0 ? lead : lead + indent) + lines[i], tone);
    }

    /// <summary>The line with every stretch in one tone and blanks up to the width: a chosen line.</summary>
    public Row Marked(int width) => Of(TextColumns.Fill(Text, Math.Max(0, width)), Tone.Chosen);
}
