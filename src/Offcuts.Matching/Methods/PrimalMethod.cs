namespace Offcuts.Matching.Methods;

/// <summary>
/// The primal simplex method with ends on both sides: what is most worth it enters the basis, and what first comes to an end by that leaves it, until nothing is worth it.
/// Source: Dantzig, 1951, with bounded variables, 1955; the ratio test with a tolerance, Harris, 1973 (from memory).
/// </summary>
internal static class PrimalMethod
{
    /// <summary>Steps until nothing is worth it; false where it does not get there.</summary>
    /// <param name="state">Where it stands: no value beyond its ends.</param>
    /// <param name="limit">How many steps may be taken.</param>
    public static bool Run(SimplexState state, StepLimit limit)
    {
        while (limit.Next())
        {
            var (entering, sign) = MostWorthwhile(state);
            if (entering == SimplexState.None) return true;
            state.TakeColumn(entering);
            var (place, far) = FirstToEnd(state, sign);
            var own = entering >= 0 ? double.PositiveInfinity : state.Width(-1 - entering);
            if (double.IsInfinity(own) && double.IsInfinity(far)) return false;
            if (own <= far)
            {
                state.Cross(-1 - entering, sign);
                continue;
            }

            state.TakeRow(place);
            state.Step(place, entering, sign * far, leavesAtMost: sign * state.Entering[place] < 0);
        }

        return false;
    }

    private static (int Variable, int Sign) MostWorthwhile(SimplexState state)
    {
        var (best, sign, most) = (SimplexState.None, 1, SimplexState.OfCost);
        for (var c = 0; c < state.Columns; c++)
        {
            if (-state.Reduced[c] > most && state.IsOutside[c]) (best, most) = (c, -state.Reduced[c]);
        }

        for (var i = 0; i < state.Rows; i++)
        {
            var reduced = state.SlackReduced[i];
            if (Math.Abs(reduced) > most && state.Outside(i) && state.Wrong(i)) (best, sign, most) = (-1 - i, reduced < 0 ? 1 : -1, Math.Abs(reduced));
        }

        return (best, sign);
    }

    // Of what is in the basis as the entering one moves: first how far it can go with a small slip, then of what ends that the one with the largest pivot.
    private static (int Place, double Far) FirstToEnd(SimplexState state, int sign)
    {
        var furthest = double.PositiveInfinity;
        for (var place = 0; place < state.Rows; place++)
        {
            var at = sign * state.Entering[place];
            if (Math.Abs(at) > SimplexState.LeastPivot) furthest = Math.Min(furthest, (state.Room(place, at > 0) + SimplexState.OfValue) / Math.Abs(at));
        }

        var (first, largest, far) = (-1, 0.0, double.PositiveInfinity);
        for (var place = 0; place < state.Rows; place++)
        {
            var at = sign * state.Entering[place];
            if (Math.Abs(at) <= SimplexState.LeastPivot || Math.Abs(at) <= largest) continue;
            var room = state.Room(place, at > 0);
            if (room / Math.Abs(at) <= furthest) (first, largest, far) = (place, Math.Abs(at), room / Math.Abs(at));
        }

        return (first, far);
    }
}
