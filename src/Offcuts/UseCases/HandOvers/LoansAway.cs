using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Which loans end, and by how much, where pieces and counted things of them are named.</summary>
internal static class LoansAway
{
    /// <summary>What of which loan is meant. Of two loans of one bin, the older comes first; a bin may be named by its bare code too: that is one of it.</summary>
    /// <param name="all">Everything that went from the yard, the oldest first.</param>
    /// <param name="only">The number of the one loan that is meant; any where nothing is said.</param>
    /// <param name="pieces">Pieces.</param>
    /// <param name="counted">Counted things.</param>
    /// <param name="faults">Takes what is not lent, or not so often, and refusals.</param>
    /// <param name="refusal">Why one that is lent can't be meant, if so.</param>
    public static List<(HandOver Gone, HandOverItem Item, int Count)> Shared(
        IReadOnlyList<HandOver> all, int? only, IReadOnlyList<Code> pieces, IReadOnlyList<Counted> counted, List<Fault> faults, Func<Code, Fault?>? refusal = null)
    {
        var loans = all.Where(one => one.Terms.Kind == HandOverKind.Loan && (only is null || one.Id == only)).ToArray();
        var shared = new List<(HandOver Gone, HandOverItem Item, int Count)>();
        foreach (var same in pieces.Distinct().Select(code => new Counted(code, 1)).Concat(counted).GroupBy(one => one.Bin))
        {
            var (code, left) = (same.Key, same.Sum(one => one.Count));
            var away = loans.SelectMany(one => one.Items.Where(item => item.Code == code && item.Away > 0).Select(item => (Gone: one, Item: item))).ToArray();
            if (away.Length == 0) faults.Add(HandFaults.NotLent(code.ToString(), only));
            else if (away.Sum(one => one.Item.Away) < left) faults.Add(HandFaults.MoreThanAway(code.ToString(), away.Sum(one => one.Item.Away)));
            else if (refusal?.Invoke(code) is { } refused) faults.Add(refused);
            foreach (var (gone, item) in away)
            {
                if (left == 0) break;
                shared.Add((gone, item, Math.Min(left, item.Away)));
                left -= shared[^1].Count;
            }
        }

        return shared;
    }
}
