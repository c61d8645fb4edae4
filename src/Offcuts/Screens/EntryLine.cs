using System.Collections.Immutable;

namespace Offcuts.Screens;

/// <summary>
/// The one typed line of a place, and the question that may stand on it. A question keeps what was typed before it and gives it
/// back; Esc needs a second press before anything typed goes.
/// </summary>
internal sealed record EntryLine
{
    private const int MostPast = 50;

    /// <summary>What the line holds.</summary>
    public string Text { get; init; } = "";

    /// <summary>The open question, if any.</summary>
    public Ask? Ask { get; init; }

    /// <summary>The text that was sent off and waits for its answer; empty where none does.</summary>
    public string Sent { get; init; } = "";

    /// <summary>Lines typed before, oldest first.</summary>
    public ImmutableList<string> Past { get; init; } = [];

    /// <summary>Pasted lines that come up one after the other as the line is saved.</summary>
    public ImmutableList<string> Waiting { get; init; } = [];

    /// <summary>Lines for which Enter was pressed while one before them was on its way: each goes in its turn. Empty where none is on its way.</summary>
    public ImmutableList<string> Entered { get; private init; } = [];

    /// <summary>
    /// True while an answer stands that was only offered: it is marked as in a form, so that the first letter takes its place. What a
    /// person wrote themselves is never marked.
    /// </summary>
    public bool Marked { get; private init; }

    // The line was emptied while another is on its way: what is typed from then on is a line by itself.
    private bool Emptied { get; init; }

    private string Behind { get; init; } = "";

    private string Given { get; init; } = "";

    private bool EscapedOnce { get; init; }

    private int Back { get; init; }

    private string Draft { get; init; } = "";

    /// <summary>True while a letter answers.</summary>
    public bool Choosing => Ask is Ask.Choose;

    /// <summary>True where something typed would be lost by leaving.</summary>
    public bool Holds => Waiting.Count > 0 || (Ask is null ? Text : Behind).Trim().Length > 0;

    /// <summary>All that was typed on it and would be lost: an answer that is being written, what stood on the line before that, what waits behind it.</summary>
    public IEnumerable<string> Typed() =>
        ((string[])[Ask is Ask.Write ? Answer : Text, Ask is null ? "" : Behind == Text ? "" : Behind, .. Entered, .. Waiting]).Where(text => text.Trim().Length > 0);

    /// <summary>The answer that somebody is writing; empty where none is, or where it only stands as it was offered.</summary>
    public string Answer => Ask is Ask.Write && Text != Given && Text.Trim().Length > 0 ? Text : "";

    /// <summary>True where all that it holds is on its way to be saved.</summary>
    public bool OnItsWay => Sent.Length > 0 && Ask is null && Waiting.Count == 0 && Entered.Count == 0 && Text == Sent;

    /// <summary>What typing or a step back makes of the line, the same at every place; nothing where the intent means something else.</summary>
    public (EntryLine Line, Notice? Notice)? Edited(Intent intent) => intent switch
    {
        Intent.Type(var text) => (Typed(text), null),
        Intent.Escape => Escape(),
        _ => null,
    };

    /// <summary>The same for a line that is saved: earlier ones can be brought back, and several can be pasted.</summary>
    public (EntryLine Line, Notice? Notice)? EditedToSave(Intent intent) => intent switch
    {
        Intent.Recall(var step) when Ask is null => (Recall(step), null),
        Intent.Paste(var lines) => (Pasted(lines), PastedNotice(lines)),
        _ => Edited(intent),
    };

    /// <summary>The person typed.</summary>
    public EntryLine Typed(string text) => text == Text ? this : this with { Text = text, Marked = false, EscapedOnce = false, Back = 0, Emptied = Emptied || (Sent.Length > 0 && Ask is null && text.Length == 0) };

    /// <summary>A line that is offered to be changed: it stands marked, as an offered answer does.</summary>
    public EntryLine Offered(string text) => Typed(text) with { Marked = text.Length > 0 };

    /// <summary>Several lines were pasted: the first goes behind what is typed, the others wait their turn.</summary>
    public EntryLine Pasted(IReadOnlyList<string> lines) =>
        lines.Count == 0 ? this : Typed(Text + lines[0]) with { Waiting = Ask is null ? [.. lines.Skip(1), .. Waiting] : Waiting };

    /// <summary>What to say of pasted lines; nothing of a single one.</summary>
    public static Notice PastedNotice(IReadOnlyList<string> lines) =>
        new(lines.Count > 1 ? $"{lines.Count} lines pasted: Enter saves this one, then the next comes up" : "");

    /// <summary>A question opens, with a text to begin from.</summary>
    public EntryLine Open(Ask ask, string given = "") => this with
    {
        Ask = ask,
        Behind = Ask is null ? Text : Behind,
        Text = ask is Ask.Write ? given : Ask is null ? Text : Behind,
        Given = given,
        Marked = ask is Ask.Write && given.Length > 0,
        EscapedOnce = false,
    };

    /// <summary>A question opens again with what the person wrote, because that was refused: it stands to be put right.</summary>
    public EntryLine Reopen(Ask ask, string written) => Open(ask, written) with { Marked = false };

    /// <summary>The question is answered or dropped; what was typed before it stands again.</summary>
    public EntryLine Close() => Ask is null ? this : this with { Ask = null, Text = Behind, Behind = "", Given = "", Marked = false, EscapedOnce = false };

    /// <summary>The question goes, but its written answer stays on the line; what was typed before it comes up after that.</summary>
    public EntryLine CloseKeeping()
    {
        var (typed, closed) = (Text, Close());
        return closed.Text.Trim().Length == 0 ? closed.Typed(typed) : closed.Typed(typed) with { Waiting = Waiting.Insert(0, closed.Text) };
    }

    /// <summary>A text that was sent off and has nothing left to be about: it stands on the line, or comes up after what stands there.</summary>
    public EntryLine PutBack(string text) =>
        Ask is null && Text.Trim().Length == 0 ? Typed(text) : this with { Waiting = Waiting.Insert(0, text) };

    /// <summary>A letter answered: the line stands again, retyped where the answer says so, and is on its way where it is to be saved.</summary>
    public EntryLine Chose(Choice choice)
    {
        var closed = Close();
        if (choice.Retyped is { } text) return closed.Typed(text);
        return choice.Errand is Errand.Catalogue or Errand.AddNeed or Errand.SetPrice ? closed.Send() : closed;
    }

    /// <summary>One step back, and what to say about it.</summary>
    public (EntryLine Line, Notice? Notice) Escape()
    {
        var asked = Ask is not null;
        var worthKeeping = Ask switch
        {
            null => Text.Length > 0,
            Ask.Write => Text != Given && Text.Length > 0,
            _ => false,
        };
        if (worthKeeping && !EscapedOnce) return (this with { EscapedOnce = true }, new Notice(Entered.Count > 0 && !asked ? $"Esc once more clears the line and drops {(Entered.Count == 1 ? "the one that waits" : $"the {Entered.Count} that wait")} to be saved" : "Esc once more clears the line"));
        return asked ? (Close(), Notice.None) : (Next(), Notice.None);
    }

    // A pasted line that is not wanted makes room for the next; lines that were entered and wait to be saved are dropped with it, and can be brought back.
    private EntryLine Next()
    {
        var cleared = Entered.Aggregate(Cleared() with { Entered = [], Emptied = Sent.Length > 0 }, (line, entered) => line.Remember(entered));
        return Waiting.Count > 0 ? cleared with { Text = Waiting[0], Waiting = Waiting.RemoveAt(0) } : cleared;
    }

    /// <summary>An empty line; what it held can be brought back.</summary>
    public EntryLine Cleared() => (this with { Text = "", Marked = false, EscapedOnce = false, Back = 0 }).Remember(Text);

    /// <summary>The text goes off to be saved and stays until that is done.</summary>
    public EntryLine Send() => this with { Sent = Text, Emptied = false };

    /// <summary>
    /// Enter while a line is on its way: what is typed behind it stays apart, so that a label scanned meanwhile keeps its end.
    /// </summary>
    public EntryLine EnterMeanwhile() => Text.Length > Sent.Length && Text[^1] != ' ' ? this with { Text = Text + " " } : this;

    private bool Follows => !Emptied && Text.StartsWith(Sent, StringComparison.Ordinal);

    /// <summary>What is typed behind a line that is on its way; all of it where that is not there any more.</summary>
    public string Rest => Follows ? Text[Sent.Length..].TrimStart() : Text;

    /// <summary>
    /// Enter while a line is on its way, where another is typed behind it: that one goes next. So a terminal that doesn't mark what is pasted runs no lines together.
    /// The line on its way with letters taken back or changed is no other one: it would be saved twice, so it stands until its first form has arrived.
    /// </summary>
    public EntryLine EnterNext() => Rest.Trim().Length == 0 || !(Follows || Emptied) ? this : this with { Entered = Entered.Add(Rest.Trim()), Text = Sent, Emptied = false };

    /// <summary>What to say where <see cref="EnterNext"/> changes nothing because the line on its way was changed; nothing else.</summary>
    public Notice? Changed => Follows || Emptied ? null : new Notice("the line is being saved as it was entered; what you changed stays here: Enter once more saves that as another", Tone.Caution);

    /// <summary>The next line that was entered meanwhile stands by itself, as typed; and what was typed behind it since. None where none was entered.</summary>
    public (EntryLine Line, string Since)? TakeEntered() => Entered.Count == 0 ? null : (this with { Text = Entered[0], Entered = Entered.RemoveAt(0) }, Text);

    /// <summary>The same line with what was typed behind it since: behind it where it is on its way now; where it has to be put right first, all the others wait their turn.</summary>
    public EntryLine Followed(string rest)
    {
        if (Sent.Length > 0) return this with { Text = Text + rest };
        return this with { Entered = [], Waiting = [.. Entered, .. rest.Trim().Length > 0 ? [rest] : Array.Empty<string>(), .. Waiting] };
    }

    /// <summary>What was sent is saved: it leaves the line, whatever was typed behind it meanwhile stays.</summary>
    public EntryLine Arrived()
    {
        var rest = Rest;
        var next = (this with { Text = rest, Sent = "", Emptied = false, Marked = false, Back = 0, EscapedOnce = false }).Remember(Sent);
        return rest.Length == 0 && Waiting.Count > 0 && Entered.Count == 0 ? next with { Text = Waiting[0], Waiting = Waiting.RemoveAt(0) } : next;
    }

    /// <summary>What was sent was refused: the line stays as it is.</summary>
    public EntryLine Returned() => Entered.Count == 0 ? this with { Sent = "", Emptied = false } : (this with { Text = Sent, Sent = "", Emptied = false }).Followed(Rest);

    /// <summary>An earlier line (negative) or a later one; the line being typed comes after the last.</summary>
    public EntryLine Recall(int step)
    {
        var back = Math.Clamp(Back - step, 0, Past.Count);
        if (back == Back) return this;
        var draft = Back == 0 ? Text : Draft;
        return this with { Back = back, Draft = draft, Text = back == 0 ? draft : Past[^back], Marked = false, EscapedOnce = false };
    }

    private EntryLine Remember(string line)
    {
        if (line.Trim().Length == 0 || (Past.Count > 0 && Past[^1] == line)) return this;
        var past = Past.Add(line);
        return this with { Past = past.Count > MostPast ? past.RemoveAt(0) : past };
    }
}
