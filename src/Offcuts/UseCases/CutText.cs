using Offcuts.Core.Faults;
using Offcuts.Core.Plans;

namespace Offcuts.UseCases;

/// <summary>What carrying out did, in sentences: what came of it in money, what is lacking still, and what to do next.</summary>
public static class CutText
{
    /// <summary>What all-new means in the lines of an act.</summary>
    public const string AllNewMeans =
        "All new is what the cuts made now add to the cost of buying everything made so far new, at its own best plan; spent is what was paid for the pieces cut now. A cut that went wrong counts once it is made.";

    /// <summary>What the ledger gained, stage by stage; why it gained nothing where it did not.</summary>
    public static IEnumerable<string> Gained(CarriedOut done, string sign)
    {
        foreach (var line in done.Lines)
            yield return $"{line.Stage}: all new {line.AllNew.ToText(sign)}, spent {line.Spent.ToText(sign)}, saved {line.Saved.ToText(sign)}";
        if (done.NotMade.Count == 0) yield break;
        yield return done.Lines.Count == 0 ? "Nothing came out right, so nothing is saved by it; nothing was spent on it either." : AllNewMeans;
    }

    /// <summary>What to mind where nails were still in what was cut; nothing where none were known of.</summary>
    public static IEnumerable<string> Nails(CarriedOut done)
    {
        if (done.Nailed.Count == 0) yield break;
        yield return $"! By the yard nails were still in {string.Join(", ", done.Nailed)}: look before the next cut, and what is left of {(done.Nailed.Count == 1 ? "it" : "them")} stays marked so until you say that they are out.";
    }

    /// <summary>What is lacking still and how the rest is matched again; nothing where all came out right.</summary>
    /// <param name="done">What was done.</param>
    /// <param name="wall">The wall whose filling was cut; none where it was no wall's.</param>
    public static IEnumerable<string> Next(CarriedOut done, string? wall)
    {
        if (done.NotMade.Count == 0) yield break;
        yield return $"Lacking still: {Lacking(done)}.";
        if (wall is not null) yield return $"Fill the rest again with: offcuts wall fill {ShellWord.Of(wall)} --keep";
        else yield return $"Match the rest again with: offcuts plan {string.Join(' ', done.Again.Select(ShellWord.Of))} --save";
    }

    /// <summary>The cuts that are lacking, counted by name.</summary>
    public static string Lacking(CarriedOut done) => Lacking(done.NotMade);

    /// <summary>The same for any cuts that did not come out right.</summary>
    public static string Lacking(IEnumerable<PlannedCut> lacking) => string.Join(", ", lacking.GroupBy(cut => (cut.Stage, cut.Cut)).Select(same => $"{same.Count()} x {same.Key.Cut} ({same.Key.Stage})"));
}
