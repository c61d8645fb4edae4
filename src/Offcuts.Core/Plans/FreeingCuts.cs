using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Plans;

/// <summary>
/// Saw cuts that no tier counts: those by which what is used or kept of a piece comes free of a bad spot or of an end that is
/// trimmed off. A tier counts within the spans alone, where a plan has a choice; the person at the saw makes these as well.
/// </summary>
public static class FreeingCuts
{
    /// <summary>Where they go, from the marked end on, each at the edge of the wood that is used or kept; none on a clean piece.</summary>
    /// <param name="piece">The piece as planned, or as really cut where its stretches lie where they were planned.</param>
    /// <param name="settings">
    /// The keep length, from which a span that is left alone is kept; and the kerf: a bad spot no wider goes in one cut.
    /// </param>
    public static IReadOnlyList<Length> Of(PlannedPiece piece, YardSettings settings)
    {
        if (piece.Source is not { } source) return [];
        var keep = settings.Keep(source.Material);
        var wanted = piece.Cuts.Select(cut => (cut.Start, End: cut.Start + cut.Length))
            .Concat(piece.Remainders.Where(rest => rest.Kept).Select(rest => (rest.Start, End: rest.Start + rest.Length)))
            .Concat(piece.Untouched.Where(span => span.Length >= keep).Select(span => (span.Start, span.End)))
            .ToArray();
        var (starts, ends) = (wanted.Select(stretch => stretch.Start).ToHashSet(), wanted.Select(stretch => stretch.End).ToHashSet());
        var cuts = new List<Length>();
        foreach (var bad in source.Unusable())
        {
            var (from, to) = (bad.Start, bad.End);
            var (before, behind) = (!from.IsZero && ends.Contains(from), to < source.Length && starts.Contains(to));
            if (before) cuts.Add(from);
            if (behind && !(before && to - from <= settings.Kerf(source.Material))) cuts.Add(to);
        }

        return cuts;
    }

    /// <summary>How many a whole plan needs.</summary>
    public static int Count(Plan plan, YardSettings settings) => plan.Pieces.Sum(piece => Of(piece, settings).Count);
}
