using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>A need that a wall entered in its stage and that it would enter otherwise now.</summary>
/// <param name="Name">Its name, without that of the wall.</param>
/// <param name="Entered">How many were entered; 0 where it was not entered.</param>
/// <param name="Now">How many would be entered now; 0 where the wall asks for it no more. The same number where it is of another material, length or use.</param>
public sealed record ChangedNeed(string Name, int Entered, int Now)
{
    /// <summary>In a few words: <c>panel tie 108, now 117</c>.</summary>
    public override string ToString() => Entered == Now ? $"{Name} is another cut now" : $"{Name} {Number(Entered)}, now {Number(Now)}";

    /// <summary>What a stage has of a wall otherwise than the wall would enter it; nothing where it has entered nothing yet.</summary>
    /// <param name="stage">The stage.</param>
    /// <param name="prefix">What names of the wall's needs begin with.</param>
    /// <param name="cuts">The cuts it would enter.</param>
    /// <param name="hardware">The counted things it would enter.</param>
    public static IReadOnlyList<ChangedNeed> Of(Stage stage, string prefix, IReadOnlyList<RequiredCut> cuts, IReadOnlyList<HardwareNeed> hardware)
    {
        bool Own(string need) => need.StartsWith(prefix, StringComparison.OrdinalIgnoreCase);
        var entered = stage.Cuts.Where(cut => Own(cut.Name)).Select(Asked).Concat(stage.Hardware.Where(need => Own(need.Name)).Select(Asked)).ToDictionary(one => one.Name, StringComparer.OrdinalIgnoreCase);
        if (entered.Count == 0) return [];
        var now = cuts.Select(Asked).Concat(hardware.Select(Asked)).ToDictionary(one => one.Name, StringComparer.OrdinalIgnoreCase);
        return
        [
            .. from name in now.Keys.Union(entered.Keys, StringComparer.OrdinalIgnoreCase)
               let was = entered.GetValueOrDefault(name)
               let isNow = now.GetValueOrDefault(name)
               where !Equals(was.What, isNow.What) || was.Count != isNow.Count
               select new ChangedNeed(name[prefix.Length..], was.Count, isNow.Count),
        ];
    }

    // What is asked for apart from how many: two cuts that are alike but for their number are one need of another number.
    private static (string Name, int Count, object What) Asked(RequiredCut cut) => (cut.Name, cut.Count, cut with { Count = 1, Stage = "" });

    private static (string Name, int Count, object What) Asked(HardwareNeed need) => (need.Name, need.Count, need with { Count = 1, Stage = "" });

    private static string Number(int count) => count == 0 ? "none" : count.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
