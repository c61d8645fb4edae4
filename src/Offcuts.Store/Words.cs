using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <summary>The words that stand for an enum's members in the file, one to one.</summary>
internal sealed class Words<T>
    where T : struct, Enum
{
    private readonly Dictionary<T, string> _words;
    private readonly Dictionary<string, T> _members;

    public Words(params (T Member, string Word)[] pairs)
    {
        _words = pairs.ToDictionary(pair => pair.Member, pair => pair.Word);
        _members = pairs.ToDictionary(pair => pair.Word, pair => pair.Member);
    }

    /// <summary>The word of a member.</summary>
    public string this[T member] => _words[member];

    /// <summary>The member of a word. Throws <see cref="FormatException"/> where it is none.</summary>
    public T this[string word] => _members.TryGetValue(word, out var member) ? member : throw new FormatException($"\"{word}\" is no {typeof(T).Name}");
}

/// <summary>Every such set of words.</summary>
internal static class Words
{
    public static readonly Words<Condition> Condition = new(
        (Core.Yard.Condition.Sound, "sound"), (Core.Yard.Condition.Fair, "fair"), (Core.Yard.Condition.Poor, "poor"));

    public static readonly Words<PieceState> State = new(
        (PieceState.InYard, "in yard"), (PieceState.Reserved, "reserved"), (PieceState.Used, "used"),
        (PieceState.HandedOver, "handed over"), (PieceState.Scrapped, "scrapped"), (PieceState.Missing, "missing"));

    public static readonly Words<Use> Use = new(
        (Core.Yard.Use.Structural, "structural"), (Core.Yard.Use.Nonstructural, "nonstructural"),
        (Core.Yard.Use.Bracing, "bracing"), (Core.Yard.Use.Rough, "rough"));

    public static readonly Words<TreatedWish> Treated = new((TreatedWish.Any, "any"), (TreatedWish.Yes, "yes"), (TreatedWish.No, "no"));

    public static readonly Words<StepState> Step = new(
        (StepState.Waiting, "waiting"), (StepState.Done, "done"), (StepState.DoneOtherwise, "done otherwise"), (StepState.Dropped, "dropped"));

    public static readonly Words<MaterialFamily> Family = new(
        (MaterialFamily.Lumber, "lumber"), (MaterialFamily.Rebar, "rebar"), (MaterialFamily.Foam, "foam"),
        (MaterialFamily.Sheet, "sheet"), (MaterialFamily.Stick, "stick"), (MaterialFamily.Hardware, "hardware"));

    public static readonly Words<HandOverKind> Kind = new((HandOverKind.Gift, "gift"), (HandOverKind.Loan, "loan"), (HandOverKind.Sale, "sale"));

    public static readonly Words<LengthUnit> Unit = new((LengthUnit.Inch, "inch"), (LengthUnit.Millimetre, "millimetre"));
}
