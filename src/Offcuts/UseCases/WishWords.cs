using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>
/// Wishes for single pieces as a person types them: <c>K7F 3MXX for blocking</c>, with the stage where two have a cut of that
/// name: <c>K7F 3MXX for walls: blocking</c>. To leave a piece alone its code is enough.
/// </summary>
public static class WishWords
{
    private const string For = " for ";

    /// <summary>All of them, or every fault.</summary>
    /// <param name="pins">Texts that pin.</param>
    /// <param name="spares">Texts that spare.</param>
    /// <param name="stages">Where cuts are looked for.</param>
    /// <param name="code">Reads a code.</param>
    public static Result<Wishes> Read(IReadOnlyList<string> pins, IReadOnlyList<string> spares, IReadOnlyList<Stage> stages, Func<string, Result<Code>> code)
    {
        var faults = new List<Fault>();
        var said = new Wishes([.. Each(pins, text => Pin(text, stages, code), faults)], [.. Each(spares, text => Spare(text, stages, code), faults).Distinct()]);
        return faults.Count > 0 ? Result<Wishes>.Fail(faults) : said;
    }

    /// <summary>One piece for one cut.</summary>
    public static Result<Pin> Pin(string text, IReadOnlyList<Stage> stages, Func<string, Result<Code>> code)
    {
        var (piece, cut) = Split(text);
        if (cut is null) return PlanFaults.PinUnreadable(text);
        return code(piece).Then(read => Cut(cut, stages).Then<Pin>(found => new Pin(read, found.Stage, found.Name)));
    }

    /// <summary>A piece to be left alone, wholly or for one cut.</summary>
    public static Result<Spare> Spare(string text, IReadOnlyList<Stage> stages, Func<string, Result<Code>> code)
    {
        var (piece, cut) = Split(text);
        return code(piece).Then(read => cut is null
            ? Result<Spare>.Of(new Spare(read))
            : Cut(cut, stages).Then<Spare>(found => new Spare(read, found.Stage, found.Name)));
    }

    /// <summary>The one cut of this name, <c>blocking</c> or <c>walls: blocking</c>, in either case.</summary>
    public static Result<RequiredCut> Cut(string text, IReadOnlyList<Stage> stages)
    {
        var typed = text.Trim();
        bool Same(string name, string other) => string.Equals(name, other.Trim(), StringComparison.OrdinalIgnoreCase);
        var cuts = stages.SelectMany(stage => stage.Cuts).ToArray();
        var found = cuts.Where(cut => Same(cut.Name, typed)).ToArray();
        if (found.Length == 0)
            found = [.. cuts.Where(cut => typed.StartsWith(cut.Stage + ":", StringComparison.OrdinalIgnoreCase) && Same(cut.Name, typed[(cut.Stage.Length + 1)..]))];
        if (found.Length == 0) return PlanFaults.NoSuchCut(typed, [.. cuts.Select(cut => cut.Name).Distinct()]);
        return found.Length == 1 ? found[0] : PlanFaults.CutInSeveralStages(typed, [.. found.Select(cut => cut.Stage)]);
    }

    private static IEnumerable<T> Each<T>(IReadOnlyList<string> texts, Func<string, Result<T>> read, List<Fault> faults)
    {
        foreach (var text in texts)
        {
            var one = read(text);
            if (one.TryGet(out var value)) yield return value;
            else faults.AddRange(one.Faults.Select(fault => new Fault($"{TextRules.Harmless(text)}: {fault.Sentence}")));
        }
    }

    private static (string Piece, string? Cut) Split(string text)
    {
        var at = text.IndexOf(For, StringComparison.OrdinalIgnoreCase);
        return at < 0 ? (text.Trim(), null) : (text[..at].Trim(), text[(at + For.Length)..]);
    }
}
