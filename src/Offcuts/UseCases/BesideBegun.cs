using Offcuts.Core.Plans;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>
/// What is told while the other courses of a begun filling are filled, with what its begun ones take beside them: whoever hears an amount to spend hears what the plan will say, not a part of it.
/// </summary>
/// <param name="told">Who is told.</param>
/// <param name="open">Begun courses with a place for which there is no piece, and those that are left open whatever is found.</param>
/// <param name="always">Of those, the latter.</param>
/// <param name="waits">What is bought for pieces that wait for begun courses, in cents.</param>
/// <param name="inGaps">What is bought for their places that lacked a piece; none where there were none. Another choice there might cost less.</param>
internal sealed class BesideBegun(IProgress<MatchProgress> told, int open, int always, long waits, long? inGaps) : IProgress<MatchProgress>
{
    public void Report(MatchProgress value)
    {
        var spend = value.Spend.Value + waits + (inGaps ?? 0);
        told.Report(value with
        {
            Unfilled = new Figure(value.Unfilled.Value + open, (inGaps is null ? value.Unfilled.Bound : 0) + always),
            Spend = new Figure(spend, waits + (inGaps is null ? value.Spend.Bound : 0)),
            // What is left of new pieces is worth no more than what they cost.
            ValueGivenUp = inGaps is null ? value.ValueGivenUp : value.ValueGivenUp with { Bound = Math.Min(value.ValueGivenUp.Value, -spend) },
        });
    }
}
