using Offcuts.Core.Faults;

namespace Offcuts.Core.Yard;

/// <summary>
/// A place that nothing lies at yet and that is written nearly like one that is known. It is said and never in the way: a new place is nothing
/// unusual, but a slip in one would hide what lies there.
/// </summary>
/// <param name="Place">As it was written.</param>
/// <param name="Nearest">The place it was more likely to be.</param>
public sealed record NewPlace(string Place, string Nearest)
{
    private const int ShortestWord = 3;

    private const int LettersPerSlip = 4;

    /// <summary>What to say of it, loudly, before it is saved.</summary>
    public string Told => $"NEW PLACE: {TextRules.Harmless(Place)} (did you mean {TextRules.Harmless(Nearest)}?)";

    /// <summary>Those of these places that are new and near a known one, each once, in their order.</summary>
    /// <param name="places">As written; empty for none.</param>
    /// <param name="known">Every place that is known.</param>
    public static IReadOnlyList<NewPlace> Among(IEnumerable<string> places, IReadOnlyCollection<string> known) =>
        [.. places.Distinct(StringComparer.OrdinalIgnoreCase).Select(place => Of(place, known)).OfType<NewPlace>()];

    /// <summary>This place, where it is new and near a known one; else none. Capitals make no new place.</summary>
    public static NewPlace? Of(string place, IReadOnlyCollection<string> known)
    {
        if (place.Length == 0 || known.Contains(place, StringComparer.OrdinalIgnoreCase)) return null;
        var nearest = known
            .Select(one => (Name: one, Slips: SlipsTo(place.ToLowerInvariant(), one.ToLowerInvariant())))
            .Where(pair => pair.Slips is not null)
            .OrderBy(pair => pair.Slips).ThenBy(pair => pair.Name, StringComparer.OrdinalIgnoreCase)
            .Select(pair => pair.Name)
            .FirstOrDefault();
        return nearest is null ? null : new NewPlace(place, nearest);
    }

    // Word by word, a slip for every four letters and one at least: "suoth pile" is near "south pile". "bay b" is not near "bay a", nor "rack 12"
    // near "rack 11": numbers and short words tell places apart, as "north rack" and "south rack" do.
    private static int? SlipsTo(string place, string known)
    {
        var (ours, theirs) = (place.Split(' '), known.Split(' '));
        if (ours.Length != theirs.Length) return string.Concat(ours) == string.Concat(theirs) ? 1 : null;
        var slips = 0;
        for (var i = 0; i < ours.Length; i++)
        {
            var (our, their) = (ours[i], theirs[i]);
            if (our == their) continue;
            var allowed = Math.Max(1, Math.Min(our.Length, their.Length) / LettersPerSlip);
            if (our.Length < ShortestWord || their.Length < ShortestWord || Math.Abs(our.Length - their.Length) > allowed) return null;
            if (!our.Where(char.IsAsciiDigit).SequenceEqual(their.Where(char.IsAsciiDigit))) return null;
            if (Slips.Between(our, their) is var some && some > allowed) return null;
            else slips += some;
        }

        return slips;
    }
}
