using System.Collections.Immutable;
using Offcuts.Core.Walls;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What kind of sheet a form holds.</summary>
internal enum SheetKind
{
    /// <summary>A wall's.</summary>
    Wall,

    /// <summary>A system's.</summary>
    System,
}

/// <summary>
/// A sheet while it is written: its lines as they were typed, the chosen one, and every step that led here. The lines are those of the
/// sheet's file, so that what somebody has learned from the one holds for the other.
/// </summary>
internal sealed record SheetForm
{
    /// <summary>Words before the value of a line stand in so many columns.</summary>
    private const int Indent = 2;

    public required SheetKind Kind { get; init; }

    /// <summary>Name of the sheet that was opened; none for a new one.</summary>
    public string? Of { get; init; }

    /// <summary>The text that sheet had then, as the yard writes it; empty for a new one.</summary>
    public string Opened { get; init; } = "";

    /// <summary>The text of another program's sheet that may be written over, as was answered; empty where that one was dropped. Null where nothing was answered.</summary>
    public string? Over { get; init; }

    /// <summary>The stage of a wall.</summary>
    public string Stage { get; init; } = "";

    /// <summary>The lines that the form began with.</summary>
    public required ImmutableList<string> Start { get; init; }

    /// <summary>The lines now; at least one.</summary>
    public required ImmutableList<string> Lines { get; init; }

    /// <summary>The chosen line, from 0.</summary>
    public int At { get; init; }

    /// <summary>What the lines say.</summary>
    public SheetReading Reading { get; init; } = new("", "", ImmutableDictionary<int, string>.Empty, []);

    /// <summary>True once it was to be saved and could not be.</summary>
    public bool Tried { get; init; }

    /// <summary>What is being saved; none while nothing is. The same is not saved a second time meanwhile, which would be refused.</summary>
    public SheetEdit? Saving { get; init; }

    private ImmutableStack<(ImmutableList<string> Lines, int At)> Past { get; init; } = [];

    private ImmutableStack<(ImmutableList<string> Lines, int At)> Ahead { get; init; } = [];

    // The line that is being typed on: all letters typed on it one after the other are one step.
    private int Typing { get; init; } = -1;

    /// <summary>The sheet as text.</summary>
    public string Text => string.Concat(Lines.Select(line => line + "\n"));

    /// <summary>The text of the chosen line.</summary>
    public string Line => Lines[At];

    /// <summary>True where something would be lost by leaving.</summary>
    public bool Changed => !Lines.SequenceEqual(Start);

    /// <summary>The edit that saving it is.</summary>
    public SheetEdit Edit => new(Text, Of, Opened);

    /// <summary>Everything that a line of it may tell.</summary>
    public IReadOnlyList<SheetFact> Facts => FactsOf(Kind);

    /// <summary>Everything that a line of such a sheet may tell.</summary>
    public static IReadOnlyList<SheetFact> FactsOf(SheetKind kind) => kind == SheetKind.Wall ? SheetFacts.OfWall : SheetFacts.OfSystem;

    /// <summary>A form with these lines.</summary>
    public static SheetForm With(SheetKind kind, string text, string? of = null, string stage = "", bool isNew = false)
    {
        ImmutableList<string> lines = [.. text.TrimEnd('\n').Split('\n')];
        return new SheetForm { Kind = kind, Of = isNew ? null : of, Opened = isNew ? "" : text, Stage = stage, Start = lines, Lines = lines };
    }

    /// <summary>The fact that a line tells; none where it tells none yet.</summary>
    public string? Fact(int line) => SheetFact.Of(Facts, Lines[line])?.Name;

    /// <summary>The chosen line says this now.</summary>
    public SheetForm Typed(string text)
    {
        if (text == Line) return this;
        var step = Typing == At ? this : Stepped();
        return step with { Lines = Lines.SetItem(At, text), Typing = At, Ahead = [] };
    }

    /// <summary>Another line is chosen.</summary>
    public SheetForm ChooseLine(int line) => this with { At = Math.Clamp(line, 0, Lines.Count - 1), Typing = -1 };

    /// <summary>These lines stand from a place on, and the first of them is chosen.</summary>
    public SheetForm Inserted(int at, IReadOnlyList<string> lines) => Stepped() with { Lines = Lines.InsertRange(at, lines), At = at };

    /// <summary>Everything is these lines now; the step before has what was there.</summary>
    public SheetForm Replaced(ImmutableList<string> lines, int at) => Stepped() with { Lines = lines, At = Math.Clamp(at, 0, lines.Count - 1) };

    /// <summary>The chosen line is gone, and with a leg all that stands below it. One line always stays.</summary>
    public SheetForm Dropped()
    {
        var (from, to) = Block(At);
        var rest = Lines.RemoveRange(from, to - from);
        return Replaced(rest.IsEmpty ? [""] : rest, from);
    }

    /// <summary>The chosen line, or leg, changes places with the one above (-1) or below it (1).</summary>
    public SheetForm Shifted(int step)
    {
        var (from, to) = Block(At);
        if (step < 0 ? from == 0 : to == Lines.Count) return this;
        var other = step < 0 ? Block(Fact(At) == LegFact ? HeadOf(from - 1) : from - 1) : Block(to);
        if (Fact(At) != LegFact) other = step < 0 ? (from - 1, from) : (to, to + 1);
        var moved = Lines.GetRange(from, to - from);
        var at = step < 0 ? other.From : from + other.To - other.From;
        return Replaced(Lines.RemoveRange(from, to - from).InsertRange(at, moved), at);
    }

    /// <summary>One step back.</summary>
    public SheetForm Undone() => Past.IsEmpty ? this
        : this with { Lines = Past.Peek().Lines, At = Past.Peek().At, Past = Past.Pop(), Ahead = Ahead.Push((Lines, At)), Typing = -1 };

    /// <summary>One step that was taken back, once more.</summary>
    public SheetForm Redone() => Ahead.IsEmpty ? this
        : this with { Lines = Ahead.Peek().Lines, At = Ahead.Peek().At, Ahead = Ahead.Pop(), Past = Past.Push((Lines, At)), Typing = -1 };

    /// <summary>From and to behind: the line alone, or a leg with all that belongs to it.</summary>
    public (int From, int To) Block(int line)
    {
        var to = line + 1;
        if (Fact(line) == LegFact)
            while (to < Lines.Count && BelongsToLeg(to)) to++;
        return (line, to);
    }

    /// <summary>The line of the leg that a line belongs to, or is; none where it stands in no leg.</summary>
    public int? LegAt(int line)
    {
        var head = HeadOf(line);
        return Fact(head) == LegFact ? head : null;
    }

    /// <summary>True for a line that is said of the leg above it.</summary>
    public bool BelongsToLeg(int line) => Kind == SheetKind.Wall && Fact(line) is "outside" or "starts" or "ends" or "opening";

    /// <summary>A line of a fact and its value, as the yard writes it.</summary>
    public static string Set(string line) => new string(' ', Indent) + line;

    private const string LegFact = "leg";

    private int HeadOf(int line)
    {
        while (line > 0 && BelongsToLeg(line)) line--;
        return line;
    }

    private SheetForm Stepped() => this with { Past = Past.Push((Lines, At)), Ahead = [], Typing = -1 };
}
