using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>The words by which a file writes one of a few values. Read in any case; the first of two is the one written.</summary>
internal sealed class CellWords<T>(params (string Word, T Value)[] pairs)
    where T : struct
{
    /// <summary>The word of a value.</summary>
    public string Of(T value) => pairs.First(pair => pair.Value.Equals(value)).Word;

    /// <summary>The value of a word, or none.</summary>
    public T? Find(string word)
    {
        foreach (var (known, value) in pairs)
            if (string.Equals(known, word, StringComparison.OrdinalIgnoreCase)) return value;
        return null;
    }
}

/// <summary>The words of each kind.</summary>
internal static class CellWords
{
    public static CellWords<bool> YesNo { get; } = new(("no", false), ("yes", true));

    public static CellWords<Condition> Condition { get; } =
        new(("sound", Core.Yard.Condition.Sound), ("fair", Core.Yard.Condition.Fair), ("poor", Core.Yard.Condition.Poor));

    public static CellWords<Use> Use { get; } = new(
        ("structural", Core.Yard.Use.Structural),
        ("nonstructural", Core.Yard.Use.Nonstructural),
        ("bracing", Core.Yard.Use.Bracing),
        ("rough", Core.Yard.Use.Rough));

    public static CellWords<TreatedWish> Treated { get; } =
        new(("any", TreatedWish.Any), ("yes", TreatedWish.Yes), ("no", TreatedWish.No));

    public static CellWords<PieceState> State { get; } = new(
        ("in yard", PieceState.InYard),
        ("reserved", PieceState.Reserved),
        ("used", PieceState.Used),
        ("handed over", PieceState.HandedOver),
        ("scrapped", PieceState.Scrapped),
        ("missing", PieceState.Missing));
}
