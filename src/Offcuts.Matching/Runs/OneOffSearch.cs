using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Runs;

/// <summary>One piece that is looked for.</summary>
/// <param name="Material">Any material that is cut to length.</param>
/// <param name="Length">How long it must be.</param>
public sealed record OneOffNeed(Material Material, Length Length)
{
    /// <summary>True where its left end must lie on a pattern line.</summary>
    public bool LeftOnPattern { get; init; }

    /// <summary>True where its right end must.</summary>
    public bool RightOnPattern { get; init; }

    /// <summary>From line to line; needed only where an end must lie on one, over 0.</summary>
    public Length Interval { get; init; }

    /// <summary>True where it may be turned end for end.</summary>
    public bool Reversible { get; init; } = true;

    /// <summary>What it is for.</summary>
    public Use Use { get; init; } = Use.Nonstructural;

    /// <summary>The stage it is for, so that what is reserved for it counts; empty for none.</summary>
    public string Stage { get; init; } = "";
}

/// <summary>What would be left of a piece.</summary>
/// <param name="Start">From its marked end.</param>
/// <param name="Length">How long.</param>
/// <param name="Kept">True where it is worth a label.</param>
/// <param name="FirstLine">Its first pattern line, where known and where it has one.</param>
public sealed record OneOffRemainder(Length Start, Length Length, bool Kept, Length? FirstLine);

/// <summary>One way to get the piece.</summary>
/// <param name="Piece">What it is cut from.</param>
/// <param name="Start">Where the cut starts, from the marked end.</param>
/// <param name="Turned">True where it has to be turned end for end.</param>
/// <param name="Remainders">What would be left of that span, from the marked end on.</param>
/// <param name="GivenUp">Yard value given up.</param>
/// <param name="SawCuts">How often the saw goes through.</param>
/// <param name="Lost">What of that span is neither laid nor kept: scrap, and what the saw takes.</param>
public sealed record OneOffCandidate(Piece Piece, Length Start, bool Turned, IReadOnlyList<OneOffRemainder> Remainders, Money GivenUp, int SawCuts, Length Lost)
{
    /// <summary>The kept plan in which it waits to be cut for something else; none where it is free.</summary>
    public int? WaitsInPlan { get; init; }
}

/// <summary>
/// Which piece of the yard fits one place: every piece that may serve, each at the place on it that loses least, in the order of least
/// yard value given up, then least lost to scrap and saw, then fewest saw cuts, then the yard's own order. Where the material has no price,
/// value is taken as if the longest piece of it were the one store length: a long piece spoiled is more than a short one then too.
/// </summary>
public static class OneOffSearch
{
    /// <summary>The candidates, or why there can be none for anybody.</summary>
    /// <param name="need">What is looked for.</param>
    /// <param name="pieces">The yard, in its own order; what is not on hand or not allowed is passed over.</param>
    /// <param name="prices">By what pieces are valued.</param>
    /// <param name="settings">Kerf, keep length, use rules.</param>
    public static Result<IReadOnlyList<OneOffCandidate>> Find(OneOffNeed need, IReadOnlyList<Piece> pieces, PriceBook prices, YardSettings settings)
    {
        var onPattern = need.LeftOnPattern || need.RightOnPattern;
        if (need.Material is Hardware or Sheet) return RunFaults.NotLaid("it", need.Material.Name);
        if (need.Length.IsZero) return MeasureFaults.LengthZero(0);
        if (onPattern && need.Material is not FoamPanel) return RunFaults.NoPattern("it", need.Material.Name);
        if (onPattern && need.Interval.IsZero) return MeasureFaults.LengthZero(0);
        if (need.LeftOnPattern && need.RightOnPattern && need.Length.Units % need.Interval.Units != 0) return RunFaults.EndsOffPattern(need.Length, need.Interval);
        var worth = Worth(need, pieces, prices, settings);
        var found = pieces.Select(piece => Best(need, piece, prices, settings, worth)).OfType<OneOffCandidate>()
            .OrderBy(worth).ThenBy(one => one.Lost).ThenBy(one => one.SawCuts).ToArray();
        return Result<IReadOnlyList<OneOffCandidate>>.Of(found);
    }

    // By what candidates are ordered first: what of a piece's worth is lost.
    private static Func<OneOffCandidate, Money> Worth(OneOffNeed need, IReadOnlyList<Piece> pieces, PriceBook prices, YardSettings settings)
    {
        Piece[] alike = [.. pieces.Where(piece => piece.OnHand && piece.Material.Equals(need.Material))];
        if (alike.Length == 0 || alike.Any(piece => prices.ForValue(piece.Material, piece.Treated).Count > 0)) return one => one.GivenUp;
        var keep = settings.Keep(need.Material);
        StorePrice[] longest = [new StorePrice { Material = need.Material, Length = alike.Max(piece => piece.Length), Price = new Money(1_000_000) }];
        Money Of(OneOffCandidate one, Length length) => YardValue.Of(length, one.Piece.Condition, longest, keep);
        return one =>
        {
            var kept = one.Remainders.Where(rest => rest.Kept).Select(rest => rest.Length).ToArray();
            return kept.Aggregate(Of(one, kept.Aggregate(need.Length + one.Lost, (sum, rest) => sum + rest)), (sum, rest) => sum - Of(one, rest));
        };
    }

    private static OneOffCandidate? Best(OneOffNeed need, Piece piece, PriceBook prices, YardSettings settings, Func<OneOffCandidate, Money> worth)
    {
        var free = piece.State != PieceState.Reserved || (need.Stage.Length > 0 && piece.ReservedFor == need.Stage);
        if (!piece.OnHand || !free || !piece.Material.Equals(need.Material)) return null;
        if (!settings.Rules.Allows(piece.Condition, piece.Stamped, piece.Treated, need.Use, TreatedWish.Any)) return null;
        return piece.Spans().SelectMany(span => Ways(need, piece, span, prices, settings))
            .OrderBy(worth).ThenBy(one => one.Lost).ThenBy(one => one.SawCuts).ThenBy(one => one.Turned).ThenBy(one => one.Start).FirstOrDefault();
    }

    // From either end of the span, turned or not: as near to that end as the lines allow.
    private static IEnumerable<OneOffCandidate> Ways(OneOffNeed need, Piece piece, Span span, PriceBook prices, YardSettings settings)
    {
        foreach (var turned in need.Reversible && need.LeftOnPattern != need.RightOnPattern ? new[] { false, true } : [false])
        {
            var (left, right) = turned ? (need.RightOnPattern, need.LeftOnPattern) : (need.LeftOnPattern, need.RightOnPattern);
            foreach (var fromRight in new[] { false, true })
            {
                var start = fromRight ? span.End.Units - need.Length.Units : span.Start.Units;
                if (left || right)
                {
                    if (piece.FirstLine is not { } line) continue;
                    var off = RunPart.Modulo(line.Units - (left ? start : start + need.Length.Units), need.Interval.Units);
                    start += fromRight && off > 0 ? off - need.Interval.Units : off;
                }

                if (start >= span.Start.Units && start + need.Length.Units <= span.End.Units)
                    yield return Cut(need, piece, span, Length.FromUnits(start), turned, prices, settings);
            }
        }
    }

    private static OneOffCandidate Cut(OneOffNeed need, Piece piece, Span span, Length start, bool turned, PriceBook prices, YardSettings settings)
    {
        var (kerf, keep) = (settings.Kerf(piece.Material), settings.Keep(piece.Material));
        var end = start + need.Length;
        var before = (start - span.Start).LessAtMost(kerf);
        var after = (span.End - end).LessAtMost(kerf);
        var left = new List<OneOffRemainder>();
        if (!before.IsZero) left.Add(Rest(need, piece, span.Start, before, keep));
        if (!after.IsZero) left.Add(Rest(need, piece, span.End - after, after, keep));
        var value = prices.ForValue(piece.Material, piece.Treated);
        var given = left.Aggregate(YardValue.Of(span.Length, piece.Condition, value, keep), (sum, rest) => sum - YardValue.Of(rest.Length, piece.Condition, value, keep));
        var lost = left.Where(rest => rest.Kept).Aggregate(span.Length - need.Length, (sum, rest) => sum - rest.Length);
        return new OneOffCandidate(piece, start, turned, left, given, (start > span.Start ? 1 : 0) + (end < span.End ? 1 : 0), lost);
    }

    private static OneOffRemainder Rest(OneOffNeed need, Piece piece, Length start, Length length, Length keep)
    {
        Length? first = null;
        if (piece.FirstLine is { } line && !need.Interval.IsZero)
        {
            var units = RunPart.Modulo(line.Units - start.Units, need.Interval.Units);
            if (units <= length.Units) first = Length.FromUnits(units);
        }

        return new OneOffRemainder(start, length, length >= keep, first);
    }
}
