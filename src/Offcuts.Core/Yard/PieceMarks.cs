using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>What the words of a catalogue line say of its pieces, each with the column at which it was said.</summary>
internal sealed class PieceMarks
{
    /// <summary>The words of a catalogue line.</summary>
    public static readonly LineWords Words = new(
        ["sound", "fair", "poor", "nails", "concrete", "oiled", "stamped", "treated", "untreated"],
        ["trim", "line", "bad"],
        ["from", "note", "treated"],
        TakesPlace: true,
        Example: LineExamples.Batch);

    private readonly Dictionary<string, int> _given = new(StringComparer.Ordinal);

    /// <summary>The stretches that are bad; the end is none where it is the end of each piece.</summary>
    public List<(Length Start, Length? End, int Column)> Bad { get; } = [];

    public Condition Condition { get; private set; }

    public bool Nails { get; private set; }

    public bool Concrete { get; private set; }

    public bool Oiled { get; private set; }

    public bool Stamped { get; private set; }

    public bool Treated { get; private set; }

    public string TreatedWith { get; private set; } = "";

    public string Place { get; private set; } = "";

    public string FromStage { get; private set; } = "";

    public string Note { get; private set; } = "";

    public Length TrimLeft { get; private set; }

    public Length TrimRight { get; private set; }

    public Length? FirstLine { get; private set; }

    /// <summary>True where <c>line none</c> says that it is not known, also of a whole panel.</summary>
    public bool NoFirstLine { get; private set; }

    /// <summary>The first word that means something for pieces only, with its column; none where all go with hardware too.</summary>
    public (string Word, int Column)? OnlyForPieces { get; private set; }

    /// <summary>Takes one mark where one stands here.</summary>
    public bool Take(TypedLine line)
    {
        if (line.Next == '@') return TakePlace(line);
        var word = line.PeekWord().ToLowerInvariant();
        if (word.Length == 0) return false;
        var column = line.Column;
        var colon = line.At + word.Length < line.Text.Length && line.Text[line.At + word.Length] == ':';
        var taken = word switch
        {
            "note" when colon => TakeNote(line),
            "from" when colon => TakeFrom(line),
            _ when colon && word is not ("treated" or "bad" or "trim" or "line") => false,
            "sound" or "fair" or "poor" => TakeCondition(line, word),
            "nails" => TakeNails(line),
            "concrete" => Concrete = TakeFlag(line, word),
            "oiled" => Oiled = TakeFlag(line, word),
            "stamped" => Stamped = TakeFlag(line, word),
            "treated" => TakeTreated(line, colon),
            "untreated" => TakeUntreated(line),
            "trim" => TakeTrim(line),
            "line" => TakeFirstLine(line),
            "bad" => BadSpotWords.Take(line, Bad),
            "and" => TakeAnd(line),
            _ => false,
        };
        if (taken && word is not ("note" or "and")) OnlyForPieces ??= (word, column);
        return taken;
    }

    /// <summary>Texts that are too long, each where it stands.</summary>
    public IEnumerable<Fault> TextFaults()
    {
        foreach (var (what, text, longest) in new[]
        {
            ("place", Place, PieceRules.LongestName),
            ("stage", FromStage, PieceRules.LongestName),
            ("treatment", TreatedWith, PieceRules.LongestName),
            ("note", Note, PieceRules.LongestNote),
        })
        {
            var faults = new List<Fault>();
            PieceRules.CheckText(faults, what, text, longest);
            foreach (var fault in faults) yield return fault with { Column = _given[what] };
        }
    }

    /// <summary>What lies outside a piece of this length, each where it was said.</summary>
    public IEnumerable<Fault> PlaceFaults(Material material, Length length)
    {
        foreach (var (start, end, column) in Bad)
        {
            if ((end ?? start) > length || start >= length)
                yield return YardFaults.BadSpotOutside(end ?? start, length) with { Column = column };
        }

        if (TrimLeft + TrimRight >= length) yield return YardFaults.TrimsEatAll() with { Column = _given["trim"] };
        if (NoFirstLine && material is not FoamPanel) yield return YardFaults.FirstLineOnlyForFoam() with { Column = _given["first pattern line"] };
        if (FirstLine is not { } line) yield break;
        if (material is not FoamPanel) yield return YardFaults.FirstLineOnlyForFoam() with { Column = _given["first pattern line"] };
        else if (line > length) yield return YardFaults.FirstLineOutside() with { Column = _given["first pattern line"] };
    }

    /// <summary>A piece of this length with these marks. Throws where a fault was found.</summary>
    public PieceDraft Draft(Material material, Length length, Length width)
    {
        var draft = new PieceDraft
        {
            Material = material,
            Length = length,
            Width = width,
            Condition = Condition,
            BadSpots = [.. Bad.Select(spot => new Span(spot.Start, spot.End ?? length))],
            TrimLeft = TrimLeft,
            TrimRight = TrimRight,
            Treated = Treated,
            TreatedWith = TreatedWith,
            Stamped = Stamped,
            Nails = Nails,
            Concrete = Concrete,
            Oiled = Oiled,
            Place = Place,
            FromStage = FromStage,
            FirstLine = FirstLine,
            Note = Note,
        };
        return draft with { BadSpots = PieceRules.Check(draft.ToPiece(default)).Value.BadSpots };
    }

    private bool Once(TypedLine line, string what, int column)
    {
        if (_given.TryAdd(what, column)) return true;
        line.Faults.Add(LineFaults.GivenTwice(what, column));
        return false;
    }

    private static bool TakeAnd(TypedLine line)
    {
        line.At += 3;
        return true;
    }

    private bool TakePlace(TypedLine line)
    {
        var column = line.Column;
        line.At++;
        var place = line.TakeText("place");
        if (Once(line, "place", column)) Place = place;
        return true;
    }

    private bool TakeNote(TypedLine line)
    {
        var column = line.Column;
        var note = line.Text[(line.At + 5)..].Trim();
        line.At = line.Text.Length;
        if (note.Length == 0) line.Faults.Add(LineFaults.TextMissing("note", line.Column));
        if (Once(line, "note", column)) Note = note;
        return true;
    }

    private bool TakeFrom(TypedLine line)
    {
        var column = line.Column;
        line.At += 5;
        var stage = line.TakeText("stage");
        if (Once(line, "stage", column)) FromStage = stage;
        return true;
    }

    private bool TakeCondition(TypedLine line, string word)
    {
        if (Once(line, "condition", line.Column)) Condition = Enum.Parse<Condition>(word, ignoreCase: true);
        line.At += word.Length;
        return true;
    }

    private static bool TakeFlag(TypedLine line, string word)
    {
        line.At += word.Length;
        return true;
    }

    private bool TakeNails(TypedLine line)
    {
        line.At += 5;
        var next = line.AfterSpaces(line.At);
        if (string.Equals(line.WordAt(next), "in", StringComparison.OrdinalIgnoreCase)) line.At = next + 2;
        return Nails = true;
    }

    private bool TakeTreated(TypedLine line, bool colon)
    {
        var column = line.Column;
        line.At += 7;
        var with = "";
        if (colon)
        {
            line.At++;
            with = line.TakeText("treatment", stopsAtComma: true);
        }

        if (Once(line, "treatment", column)) (Treated, TreatedWith) = (true, with);
        return true;
    }

    private bool TakeUntreated(TypedLine line)
    {
        Once(line, "treatment", line.Column);
        line.At += 9;
        return true;
    }

    private bool TakeTrim(TypedLine line)
    {
        var column = line.Column;
        line.PassWord(4);
        if (Measure(line, zeroAllowed: true) is not { } left) return true;
        var right = Length.Zero;
        line.SkipSpaces();
        if (line.Next == ';' && line.Text.Length > line.At + 1)
        {
            line.At++;
            line.SkipSpaces();
            if (line.AtNumber())
            {
                if (line.TakeLength(zeroAllowed: true) is not { } second) return true;
                right = second.Length;
            }
        }

        if (Once(line, "trim", column)) (TrimLeft, TrimRight) = (left, right);
        return true;
    }

    private bool TakeFirstLine(TypedLine line)
    {
        var column = line.Column;
        line.PassWord(4);
        line.SkipSpaces();
        if (line.PeekWord().Equals("none", StringComparison.OrdinalIgnoreCase))
        {
            line.PassWord(4);
            NoFirstLine |= Once(line, "first pattern line", column);
        }
        else if (Measure(line, zeroAllowed: true) is { } at && Once(line, "first pattern line", column)) FirstLine = at;
        return true;
    }

    private static Length? Measure(TypedLine line, bool zeroAllowed)
    {
        line.SkipSpaces();
        if (line.AtNumber()) return line.TakeLength(zeroAllowed)?.Length;
        line.Faults.Add(MeasureFaults.LengthMissing(line.Column));
        return null;
    }
}
