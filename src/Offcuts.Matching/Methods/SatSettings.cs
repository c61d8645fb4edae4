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

    /// <summary>
    /// The same for a model near its relaxation: all rows are in the linear program from the start, and nothing is probed and no symmetry looked for
    /// beforehand, which took up to half of the whole.
    /// </summary>
    public static string NearRelaxation(double work, Effort effort) =>
        Parameters(work, effort) + " add_lp_constraints_lazily:false cp_model_probing_level:0 symmetry_level:0";
}
