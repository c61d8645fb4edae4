using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>How often the saw goes through, in words: all of it, with what of it only takes off what cannot be used.</summary>
public static class SawCutsText
{
    /// <summary>Of a whole plan: <c>5 saw cuts, 2 of them to take bad spots and trimmed ends off</c>.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="settings">Keep lengths and kerfs.</param>
    public static string Of(Plan plan, YardSettings settings)
    {
        var freeing = FreeingCuts.Count(plan, settings);
        var all = Cuts(plan.Tiers.SawCuts + freeing);
        return freeing == 0 ? all : $"{all}, {freeing} of them to take bad spots and trimmed ends off";
    }

    internal static string Cuts(int count) => count == 1 ? "1 saw cut" : $"{count} saw cuts";
}
