using System.Globalization;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>A need that a wall entered in its stage and that it would enter otherwise now.</summary>
/// <param name="Name">Its name, without that of the wall.</param>
/// <param name="Entered">How many were entered; 0 where it was not entered.</param>
/// <param name="Now">How many would be entered now; 0 where the wall asks for it no more.</param>
public sealed record ChangedNeed(string Name, int Entered, int Now)
{
    /// <summary>What it is now instead, <c>another cut</c> or <c>another thing</c>; empty where only the number changed.</summary>
    public string Instead { get; init; } = "";

    /// <summary>In a few words: <c>panel tie 108, now 117</c>.</summary>
    public override string ToString() =>
        Instead.Length == 0 ? $"{Name} {Number(Entered)}, now {Number(Now)}"
        : Entered == Now ? $"{Name} is {Instead} now"
        : $"{Name} is {Instead} now: {Number(Now)}, not {Number(Entered)}";

    /// <summary>
    /// What a stage has of a wall otherwise than the wall would enter it; nothing where it has entered nothing yet. Wishes that a person may set on a need
    /// are no change of the wall, and neither is a number that what is in place by now explains.
    /// </summary>
    /// <param name="stage">The stage.</param>
    /// <param name="prefix">What names of the wall's needs begin with.</param>
    /// <param name="now">What the wall would enter.</param>
    /// <param name="whole">The same with what is in place already.</param>
    public static IReadOnlyList<ChangedNeed> Of(Stage stage, string prefix, Stage now, Stage whole)
    {
        bool Own(string need) => need.StartsWith(prefix, StringComparison.OrdinalIgnoreCase);
        var entered = stage with { Cuts = [.. stage.Cuts.Where(cut => Own(cut.Name))], Hardware = [.. stage.Hardware.Where(need => Own(need.Name))] };
        if (entered.Cuts.Count + entered.Hardware.Count == 0) return [];

        // A cut and a counted thing may share a name: until the wall is entered, nothing has refused that.
        bool Cut(string need) => entered.Cuts.Concat(now.Cuts).Any(cut => Same(cut.Name, need));
        bool Counted(string need) => entered.Hardware.Concat(now.Hardware).Any(one => Same(one.Name, need));
        return
        [
            .. Compared(Cuts(entered), Cuts(now), Cuts(whole), "another cut", need => need[prefix.Length..] + (Counted(need) ? " (cut)" : "")),
            .. Compared(Hardware(entered), Hardware(now), Hardware(whole), "another thing", need => need[prefix.Length..] + (Cut(need) ? " (counted)" : "")),
        ];
    }

    private static IEnumerable<ChangedNeed> Compared(Dictionary<string, Asked> entered, Dictionary<string, Asked> now, Dictionary<string, Asked> whole, string instead, Func<string, string> told)
    {
        foreach (var name in now.Keys.Union(entered.Keys, StringComparer.OrdinalIgnoreCase))
        {
            var (was, isNow) = (entered.GetValueOrDefault(name, Asked.Nothing), now.GetValueOrDefault(name, Asked.Nothing));
            var most = Math.Max(isNow.Count, whole.GetValueOrDefault(name, Asked.Nothing).Count);
            var other = was.Count > 0 && isNow.Count > 0 && !was.What.SetEquals(isNow.What);
            // Entered before some of it was in place, it asks for more than is left, and for no more than the wall takes.
            if (other || was.Count < isNow.Count || was.Count > most) yield return new ChangedNeed(told(name), was.Count, isNow.Count) { Instead = other ? instead : "" };
        }
    }

    // What is cut, to which length and for what is the wall's; ripping, treatment and how much longer one may stay are wishes of a person.
    private static Dictionary<string, Asked> Cuts(Stage stage) => Gathered(stage.Cuts.Select(cut => (cut.Name, cut.Count, (object)(cut.Material, cut.Shortest, cut.Use))));

    private static Dictionary<string, Asked> Hardware(Stage stage) => Gathered(stage.Hardware.Select(need => (need.Name, need.Count, (object)need.Hardware)));

    // A stage tells names apart that differ in their case alone; entered again, the wall's needs take the place of all of them.
    private static Dictionary<string, Asked> Gathered(IEnumerable<(string Name, int Count, object What)> needs) =>
        needs.GroupBy(need => need.Name, StringComparer.OrdinalIgnoreCase)
            .ToDictionary(same => same.Key, same => new Asked(same.Sum(need => need.Count), [.. same.Select(need => need.What)]), StringComparer.OrdinalIgnoreCase);

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static string Number(int count) => count == 0 ? "none" : count.ToString(CultureInfo.InvariantCulture);

    // How many of one name, and what they are apart from how many.
    private sealed record Asked(int Count, HashSet<object> What)
    {
        public static Asked Nothing { get; } = new(0, []);
    }
}
