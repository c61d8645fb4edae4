using Offcuts.Core.Savings;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the ledger's place does: pure.</summary>
internal static class LedgerModel
{
    public static LedgerState Start(YardSnapshot yard) => Read(new LedgerState { Yard = yard });

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<LedgerState> Apply(LedgerState state, Intent intent)
    {
        switch (intent)
        {
            case Intent.Type or Intent.Escape when state.Line.Edited(intent) is { } edit:
                return new(Read(state with { Line = edit.Line }), Notice: edit.Notice);
            case Intent.Move(var by):
                return new(state with { Chosen = Within(state, (long)state.Chosen + by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? Within(state, int.MaxValue) : 0 });
            case Intent.OtherList:
                var turned = state with { OverTime = !state.OverTime };
                return new(turned with { Chosen = turned.OverTime ? Math.Max(0, turned.Parts - 1) : 0 });
            case Intent.Enter:
                if (state.AtHandOvers) return new(state, new Errand.Open(Place.Hand));
                if (state.Chosen >= state.Parts) return new(state, state.Yard.Plans.LastOrDefault(plan => plan.Open) is { } open ? new Errand.Open(Place.Plan) { PlanId = open.Id } : null);
                return state.Acts.LastOrDefault(line => line.PlanId != 0) is { } act
                    ? new(state, new Errand.Open(Place.Plan) { PlanId = act.PlanId })
                    : new(state, Notice: new Notice(state.Acts.Count == 0 ? "nothing was done there" : "that was part of no plan"));
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<LedgerState> Hear(LedgerState state, News news) =>
        news is News.Fresh(var yard) ? new(ReferenceEquals(yard, state.Yard) ? state : Read(state with { Yard = yard })) : new(state);

    private static LedgerState Read(LedgerState state)
    {
        var wanted = state.Line.Text.Trim();
        LedgerLine[] lines = [.. state.Yard.Ledger.Where(line => line.Stage.Contains(wanted, StringComparison.OrdinalIgnoreCase))];
        var next = state with
        {
            Lines = lines,
            Sums = Ledger.Of(lines, [.. state.Yard.Stages.Select(stage => stage.Name)]),
            Time = LedgerOverTime.Of(lines, LedgerState.MostSteps),
        };
        return next with { Chosen = Within(next, next.Chosen) };
    }

    private static int Within(LedgerState state, long at) => (int)Math.Clamp(at, 0, Math.Max(0, state.Stops - 1));
}
