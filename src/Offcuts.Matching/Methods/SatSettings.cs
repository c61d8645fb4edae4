namespace Offcuts.Matching.Methods;

/// <summary>How CP-SAT of OR-Tools is asked, so that it takes the same way every time.</summary>
internal static class SatSettings
{
    /// <summary>One worker, a fixed seed, a limit in counted work.</summary>
    public static string Parameters(double work, Effort effort)
    {
        var parameters = FormattableString.Invariant($"num_workers:1 random_seed:1 linearization_level:2 catch_sigint_signal:false max_deterministic_time:{work}");
        return double.IsInfinity(effort.Seconds) ? parameters : parameters + FormattableString.Invariant($" max_time_in_seconds:{effort.Seconds}");
    }

    /// <summary>The same where nothing is probed and no symmetry looked for beforehand, which can take half of the whole.</summary>
    public static string Unprobed(double work, Effort effort) => Parameters(work, effort) + " symmetry_level:0 cp_model_probing_level:0";

    /// <summary>That for a model near its relaxation too: all rows are in the linear program from the start.</summary>
    public static string NearRelaxation(double work, Effort effort) => Unprobed(work, effort) + " add_lp_constraints_lazily:false";

    /// <summary>That with several ways to branch, taken in turn.</summary>
    public static string InTurn(double work, Effort effort) => NearRelaxation(work, effort) + " search_branching:PORTFOLIO_SEARCH";

    /// <summary>From the bound up: what a plan of the least cost would have to be is assumed, and what contradicts it raises the bound.</summary>
    public static string FromBelow(double work, Effort effort) => Unprobed(work, effort) + " optimize_with_core:true";
}
