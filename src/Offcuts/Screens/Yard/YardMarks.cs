using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>Marking many, so that one act goes for all of them: pure.</summary>
internal static class YardMarks
{
    // Beyond this nobody loads them by hand, and adding them up would keep a key waiting.
    private const int MostAddedUp = 1000;

    private const int MostKinds = 4;

    /// <summary>Marks the chosen one, or takes its mark off, and goes on to the next in the list.</summary>
    public static YardState Turn(YardState state)
    {
        if (state.Entry is not { } entry) return state;
        var marked = state.Marked.ToHashSet();
        if (!marked.Remove(entry.Code)) marked.Add(entry.Code);
        var next = state.Closer ? state.Chosen : Math.Min(state.Chosen + 1, state.Shown.Count - 1);
        return With(state, marked) with { Chosen = next };
    }

    /// <summary>Marks all that is shown; where all of it is marked already, takes those marks off.</summary>
    public static Turn<YardState> All(YardState state)
    {
        if (state.Shown.Count == 0) return new(state, Notice: new Notice("nothing is shown that could be marked"));
        Code[] shown = [.. state.Shown.Select(i => state.Yard.Entries[i].Code)];
        var off = shown.All(state.Marked.Contains);
        var marked = state.Marked.ToHashSet();
        if (off) marked.ExceptWith(shown);
        else marked.UnionWith(shown);
        var next = With(state, marked);
        return new(next, Notice: new Notice(off ? $"no mark on any of these {Number(shown.Length)} any more" : $"all {Number(shown.Length)} that are shown are marked; Tab takes a mark off, Esc all of them"));
    }

    /// <summary>Marks one that was scanned.</summary>
    public static Turn<YardState> Scanned(YardState state, Code code)
    {
        var already = state.Marked.Contains(code);
        var next = With(state, [.. state.Marked, code]);
        return new(next, Notice: new Notice(already ? $"{code} is marked already: {Number(next.Marked.Count)} in all" : $"{code} is marked too: {Number(next.Marked.Count)} in all", already ? Tone.Caution : Tone.Good));
    }

    /// <summary>Esc: asks once, then lets go.</summary>
    public static Turn<YardState> LetGo(YardState state) => state.LettingGo
        ? new(With(state, []), Notice: Notice.None)
        : new(state with { LettingGo = true }, Notice: new Notice($"Esc once more takes the mark off {(state.Marked.Count == 1 ? "it" : $"all {Number(state.Marked.Count)}")}"));

    /// <summary>The same marks on what is still there.</summary>
    public static YardState Pruned(YardState state) =>
        state.Marked.Count == 0 ? state : With(state, state.Marked.Where(state.Yard.Index.ContainsKey).ToHashSet());

    private static YardState With(YardState state, HashSet<Code> marked)
    {
        var next = state with { Marked = marked, LettingGo = false };
        return next with { MarkedTold = Told(next) };
    }

    // What somebody wants to know who is about to carry them.
    private static string Told(YardState state)
    {
        if (state.Marked.Count == 0) return "";
        var count = $"{Number(state.Marked.Count)} marked";
        if (state.Marked.Count > MostAddedUp) return count;
        var (unit, species) = (state.Yard.Unit, state.Yard.Settings.Species);
        var meant = state.Meant;
        var kinds = meant.GroupBy(entry => entry.Material).Select(same => $"{same.Count()} of {same.Key.Name}").ToArray();
        Piece[] pieces = [.. meant.Select(entry => entry.Piece).OfType<Piece>()];
        var weights = pieces.Select(piece => Quantities.WeightOf(piece.Material, piece.Length, species, piece.Width)).ToArray();
        var known = weights.OfType<Core.Measures.Weight>().Aggregate(new Core.Measures.Weight(), (sum, weight) => sum + weight);
        var heavy = pieces.Length == 0 || weights.All(weight => weight is null) ? ""
            : $"; about {known.ToText(unit)}{(weights.Any(weight => weight is null) ? ", what has no known weight left out" : "")}";
        var rest = kinds.Length > MostKinds ? $" and {kinds.Length - MostKinds} kinds more" : "";
        return $"{count}: {string.Join(", ", kinds.Take(MostKinds))}{rest}{heavy}";
    }

    private static string Number(int number) => number.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture);
}
