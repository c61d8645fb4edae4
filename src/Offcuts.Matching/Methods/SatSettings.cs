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
}
