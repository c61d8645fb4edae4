using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;

namespace Offcuts.UseCases;

/// <summary>
/// What must be spent at least on a wall that is filled again around what is begun, whatever its gaps are filled with. What is begun keeps its place, and
/// the new pieces that wait for it are bought in any case; that is no part of these figures. Each of them is true by itself, so the greater one holds.
/// </summary>
/// <param name="others">The courses that are filled anew, and from what, before any gap took something.</param>
/// <param name="rests">What is left of the pieces that wait for begun courses, before any gap took something.</param>
internal sealed class BegunBound(RunRequest others, IReadOnlyCollection<Piece> rests)
{
    /// <summary>
    /// By length alone: what is to be covered, gaps and all, less all that lies there, in new pieces. Holds of plans that leave nothing open.
    /// </summary>
    /// <param name="gaps">Where begun courses lack a piece.</param>
    public long ByLength(IEnumerable<(Run Run, Span Where)> gaps)
    {
        var cover = others.Runs.SelectMany(run => run.Courses.SelectMany(course => course.Stretches).Select(stretch => (run.Material, stretch.Length.Units)))
            .Concat(gaps.Select(gap => (gap.Run.Material, gap.Where.Length.Units)));
        return cover.GroupBy(one => one.Material, one => one.Units).Sum(same => OfMaterial(same.Key, same.Sum()));
    }

    private long OfMaterial(Material material, long toCover)
    {
        var lacking = toCover - others.Pieces.Concat(rests).Where(piece => piece.OnHand && piece.Material.Equals(material)).Sum(piece => piece.Length.Units);
        var prices = others.Prices.Of(material);
        if (lacking <= 0 || prices.Count == 0) return 0;

        // As many of the longest as that takes, each at the lowest price; or by what a length costs at least. Rounded so that neither says too much.
        var (longest, lowest) = (prices.Max(price => price.Length.Units), prices.Min(price => price.Price.Cents));
        return Math.Max((lacking + longest - 1) / longest * lowest, (long)prices.Min(price => (Int128)lacking * price.Price.Cents / price.Length.Units));
    }

    /// <summary>
    /// By what the other courses take at least once gaps took pieces: with those pieces there they would take less, but no less than what new pieces cost
    /// that could lie in the place of those. None where such pieces can't be had, so that nothing follows.
    /// </summary>
    /// <param name="least">What the others spend at least without those pieces.</param>
    /// <param name="taken">What gaps took of the yard, or of what is left of waiting pieces.</param>
    public long? WithoutTaken(long least, IEnumerable<Piece> taken)
    {
        foreach (var piece in taken)
        {
            if (!others.Buy || others.Prices.Of(piece.Material).Where(price => price.Limit is null && price.Treated == piece.Treated && LiesIn(piece, price.Length)).Select(price => (long?)price.Price.Cents).Min() is not { } instead) return null;
            least -= instead;
        }

        return Math.Max(0, least);
    }

    // Whether all that can be cut of a piece can be cut of a new one as well: there must be such a stretch on it, with its lines on the lines of the new
    // one, whose pattern begins at its end, and with room for the saw where it ends within.
    private bool LiesIn(Piece piece, Length fresh)
    {
        var kerf = others.Settings.Kerf(piece.Material).Units;
        var from = 0L;
        if (piece is { Material: FoamPanel, FirstLine: { } first } && others.Runs.FirstOrDefault(run => run.Joints == JointRule.OnPattern && run.Material.Equals(piece.Material)) is { } run)
        {
            var interval = run.Lines.Interval.Units;
            from = (interval - first.Units % interval) % interval;
            while (from > 0 && from < kerf) from += interval;
        }

        var left = fresh.Units - from - piece.Length.Units;
        return left == 0 || left >= kerf;
    }
}
