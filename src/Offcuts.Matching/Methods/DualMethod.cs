namespace Offcuts.Matching.Methods;

/// <summary>
/// The dual simplex method: a value that is beyond its ends leaves the basis, and what enters for it keeps all reduced costs in order, until no value is beyond its ends.
/// Source: Lemke, 1954; the choice by steepest edge, Forrest and Goldfarb, 1992; the ratio test with a tolerance, Harris, 1973; costs moved a little against going round in circles, Wolfe, 1963 (from memory).
/// </summary>
internal static class DualMethod
{
    // Few take so many steps, and those that do mostly go round in circles.
    private const int StepsToSpread = 150;

    /// <summary>Steps until nothing is beyond its ends; false where it does not get there.</summary>
    /// <param name="state">Where it stands: all reduced costs in order.</param>
    /// <param name="limit">How many steps may be taken.</param>
    public static bool Run(SimplexState state, StepLimit limit)
    {
        var candidates = new int[state.Columns];
        for (var steps = 1; limit.Next(); steps++)
        {
            if (steps % StepsToSpread == 0) state.Spread();
            var place = FurthestBeyond(state);
            if (place < 0) return true;
            var beyond = state.Beyond(place);
            state.TakeRow(place);
            var entering = FirstToTurn(state, place, Math.Sign(beyond), candidates);
            if (entering != SimplexState.None) state.TakeColumn(entering);
            if (entering != SimplexState.None && Math.Abs(state.Entering[place]) >= SimplexState.LeastPivot) state.Step(place, entering, beyond / state.Entering[place], leavesAtMost: beyond > 0);
            else if (state.Fresh) return false;
            else state.MakeAnew();
        }

        return false;
    }

    // Measured along its edge.
    private static int FurthestBeyond(SimplexState state)
    {
        var (furthest, most) = (-1, 0.0);
        for (var place = 0; place < state.Rows; place++)
        {
            var beyond = Math.Abs(state.Beyond(place));
            if (beyond > SimplexState.OfValue && beyond * beyond > most * state.Basis.Square(place)) (furthest, most) = (place, beyond * beyond / state.Basis.Square(place));
        }

        return furthest;
    }

    // Of what the pivot row lets enter: first how far the duals can go with a small slip, then of what ends that the one with the largest pivot.
    private static int FirstToTurn(SimplexState state, int place, int sign, int[] candidates)
    {
        var (furthest, count, row, pivots, reduced) = (double.PositiveInfinity, 0, state.Basis.Row(place), state.PivotRow, state.Reduced);
        for (var c = 0; c < state.Columns; c++)
        {
            var at = sign * pivots[c];
            if (at <= SimplexState.LeastPivot || !state.IsOutside[c]) continue;
            candidates[count++] = c;
            furthest = Math.Min(furthest, (Math.Max(0, reduced[c]) + SimplexState.OfCost) / at);
        }

        for (var i = 0; i < state.Rows; i++)
        {
            if (Helps(state, i, sign * row[i]) is > SimplexState.LeastPivot and var at) furthest = Math.Min(furthest, (Math.Abs(state.SlackReduced[i]) + SimplexState.OfCost) / at);
        }

        var (first, largest) = (SimplexState.None, 0.0);
        for (var k = 0; k < count; k++)
        {
            var at = sign * pivots[candidates[k]];
            if (at > largest && Math.Max(0, reduced[candidates[k]]) / at <= furthest) (first, largest) = (candidates[k], at);
        }

        for (var i = 0; i < state.Rows; i++)
        {
            if (Helps(state, i, sign * row[i]) is > SimplexState.LeastPivot and var at && at > largest && Math.Abs(state.SlackReduced[i]) / at <= furthest) (first, largest) = (-1 - i, at);
        }

        return first;
    }

    // The entry of a slack that is outside: above nothing where it can move the way that is asked for.
    private static double Helps(SimplexState state, int row, double entry) =>
        !state.Outside(row) || state.Width(row) == 0 ? 0 : state.Free(row) ? Math.Abs(entry) : state.AtMost(row) ? -entry : entry;
}
