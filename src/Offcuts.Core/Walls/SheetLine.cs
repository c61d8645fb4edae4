using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Walls;

/// <summary>
/// One line of a sheet while it is being read, word by word from the left. What can't be read leaves one fault, with its line and
/// column, and every later step of that line then does nothing.
/// </summary>
internal sealed class SheetLine
{
    private readonly SheetFact _fact;
    private readonly List<Fault> _faults;
    private int _at;

    public SheetLine(string text, int number, SheetFact fact, int start, List<Fault> faults) =>
        (Text, Number, _fact, _at, _faults) = (text, number, fact, start, faults);

    /// <summary>The whole line.</summary>
    public string Text { get; }

    /// <summary>Its number, from 1.</summary>
    public int Number { get; }

    /// <summary>What it tells.</summary>
    public string Fact => _fact.Name;

    /// <summary>A line of its kind, for a person to copy.</summary>
    public string Example => _fact.Example;

    /// <summary>True once something of it couldn't be read.</summary>
    public bool Failed { get; private set; }

    /// <summary>Everything that is left, without the spaces around it; a fault where nothing is.</summary>
    public string Rest(string what)
    {
        Skip();
        if (Failed) return "";
        if (_at >= Text.Length) return Fail(WallFaults.WordMissing(what, Example, _at + 1), "");
        var rest = Text[_at..].TrimEnd();
        _at = Text.Length;
        return rest;
    }

    /// <summary>Everything up to a colon, which is read over.</summary>
    public string Name(string what)
    {
        Skip();
        if (Failed) return "";
        var colon = Text.IndexOf(':', _at);
        if (colon < 0) return Fail(WallFaults.WordMissing("a colon behind the name", Example, Text.TrimEnd().Length + 1), "");
        var name = Text[_at..colon].TrimEnd();
        if (name.Length == 0) return Fail(WallFaults.WordMissing(what, Example, _at + 1), "");
        _at = colon + 1;
        return name;
    }

    /// <summary>A length with its unit.</summary>
    public Length Length()
    {
        Skip();
        if (Failed) return default;
        var read = LengthReader.Read(Text, _at, bare: null);
        if (!read.TryGet(out var found)) return Fail(BareBeforeWord() ? MeasureFaults.UnitMissing(_at + 1) : read.Fault, default(Length));
        if (found.End < Text.Length && Text[found.End] != ' ') return Fail(WallFaults.WordsLeft(WordAt(found.End), Example, found.End + 1), default(Length));
        _at = found.End;
        return found.Length;
    }

    /// <summary>A whole number.</summary>
    public int Figure()
    {
        var (word, column) = Word("a number");
        if (Failed) return 0;
        return int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0
            ? number
            : Fail(WallFaults.WordsLeft(word, Example, column), 0);
    }

    /// <summary>A percentage with at most one decimal, as tenths of a percent: <c>7.5 %</c> is 75.</summary>
    public int Permille()
    {
        var rest = Rest("a percentage");
        if (Failed) return 0;
        var number = rest.TrimEnd('%').TrimEnd();
        return rest.EndsWith('%') && decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent) && percent <= 100 && percent * 10 == decimal.Truncate(percent * 10)
            ? (int)(percent * 10)
            : Fail(WallFaults.AllowanceOutside() with { Column = Text.TrimEnd().Length - rest.Length + 1 }, 0);
    }

    /// <summary>One of a few words.</summary>
    public T OneOf<T>(IReadOnlyDictionary<string, T> words)
    {
        var known = Known(words.Keys);
        var (word, column) = Word(known);
        return Failed ? words.Values.First() : words.TryGetValue(word.ToLowerInvariant(), out var value) ? value : Fail(WallFaults.NotOneOf(word, known, column), words.Values.First());
    }

    /// <summary>This word, which must stand here.</summary>
    public SheetLine Then(string word)
    {
        if (!Failed && !Next(word))
        {
            if (_at >= Text.Length) Fail(WallFaults.WordMissing($"\"{word}\"", Example, _at + 1), false);
            else Fail(WallFaults.WordsLeft(WordAt(_at), Example, _at + 1), false);
        }

        return this;
    }

    /// <summary>Reads over this word where it stands here, and tells whether it did.</summary>
    public bool Next(string word)
    {
        Skip();
        if (Failed || !string.Equals(WordAt(_at), word, StringComparison.OrdinalIgnoreCase)) return false;
        _at += word.Length;
        return true;
    }

    /// <summary>What is written from here on, without reading over it.</summary>
    public string Ahead()
    {
        Skip();
        return Text[_at..].TrimEnd();
    }

    /// <summary>A material, which is all that is left.</summary>
    public T? Material<T>(Func<string, Result<Material>> read, Func<string, Fault> wrongKind)
        where T : Material
    {
        Skip();
        var column = _at;
        var rest = Rest("a material");
        if (Failed) return null;
        var material = read(rest);
        if (!material.TryGet(out var found)) return Fail(material.Fault.Shift(column), default(T));
        return found as T ?? Fail(wrongKind(found.Name) with { Column = column + 1 }, default(T));
    }

    /// <summary>Adds a fault where anything is left.</summary>
    public void End()
    {
        Skip();
        if (!Failed && _at < Text.Length) Fail(WallFaults.WordsLeft(Text[_at..].TrimEnd(), Example, _at + 1), false);
    }

    /// <summary>Adds a fault of this line.</summary>
    public T Fail<T>(Fault fault, T value)
    {
        if (!Failed) _faults.Add(fault with { Line = Number });
        Failed = true;
        return value;
    }

    // "4 wide": what follows the number is the line's own next word and no unit of anybody's.
    private bool BareBeforeWord()
    {
        var number = WordAt(_at);
        var next = WordAt(Math.Min(Text.Length, _at + number.Length + 1));
        return number.All(char.IsAsciiDigit) && _fact.Shape.Split(' ', '|', ':').Contains(next, StringComparer.OrdinalIgnoreCase);
    }

    private (string Word, int Column) Word(string what)
    {
        Skip();
        if (Failed) return ("", 0);
        var (word, column) = (WordAt(_at), _at + 1);
        if (word.Length == 0) return (Fail(WallFaults.WordMissing(what, Example, column), ""), column);
        _at += word.Length;
        return (word, column);
    }

    private string WordAt(int at)
    {
        var end = at;
        while (end < Text.Length && Text[end] != ' ') end++;
        return Text[at..end];
    }

    private void Skip()
    {
        while (_at < Text.Length && Text[_at] == ' ') _at++;
    }

    private static string Known(IEnumerable<string> words) => words.ToArray() is var all && all.Length == 1 ? all[0] : string.Join(", ", all[..^1]) + " or " + all[^1];
}
