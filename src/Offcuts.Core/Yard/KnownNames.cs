using Offcuts.Core.Faults;
using Offcuts.Core.Materials;

namespace Offcuts.Core.Yard;

/// <summary>A name that nothing has yet.</summary>
/// <param name="Material">What it names.</param>
/// <param name="Nearest">The nearest name that is known; the same name where it is known of the other kind, counted or cut; empty where none is near.</param>
public sealed record NewName(Material Material, string Nearest)
{
    /// <summary>True where the same name is known, but counted instead of cut to length, or the other way round.</summary>
    public bool OtherKind => string.Equals(Material.Name, Nearest, StringComparison.OrdinalIgnoreCase);

    /// <summary>What makes it new, and what is near it.</summary>
    public string Why => OtherKind
        ? $"so far it is known only as something {(Material is Hardware ? "cut to length" : "counted")}"
        : "no piece, price, stage or system has it yet" + (Nearest.Length > 0 ? $"; {TextRules.Harmless(Nearest)} is the nearest that is known"
            : AtEnd.Length > 0 ? $"; {TextRules.Harmless(AtEnd)} stands at its end: a need's own name has a colon behind it" : "");

    /// <summary>What has its name by its size and stands at the end of this one, as 2x4 does in "stakes 2x4"; empty where nothing does.</summary>
    public string AtEnd => Ends().FirstOrDefault("");

    /// <summary>What to say of it, loudly, before it is saved.</summary>
    public string Told => $"NEW NAME \"{TextRules.Harmless(Material.Name)}\": {Why}";

    private IEnumerable<string> Ends() =>
        from i in Enumerable.Range(1, Math.Max(0, Material.Name.Length - 1))
        where Material.Name[i - 1] == ' '
        let end = Material.Name[i..]
        where MaterialReader.ReadStart(end) is { Material.Ok: true } read && read.End == end.Length
        select end;
}

/// <summary>
/// The materials that a yard, its prices, its stages and its systems speak of already. Lumber, bars, foam and sheets have names by their size
/// and are never new. Any other name is taken as typed, so a slip in it would silently make a material of its own.
/// </summary>
public sealed class KnownNames
{
    private readonly HashSet<Material> _known;

    /// <summary>Of these materials.</summary>
    public KnownNames(IEnumerable<Material> known) => _known = [.. known];

    /// <summary>Of nothing yet.</summary>
    public static KnownNames None { get; } = new([]);

    /// <summary>The new names among these, each once, in their order. The same name counted and cut to length is two.</summary>
    public IReadOnlyList<NewName> NewAmong(IEnumerable<Material> materials) =>
        [.. materials.Distinct().Where(IsNew).Select(material => new NewName(material, NearestTo(material.Name)))];

    private bool IsNew(Material material) => material.Family is MaterialFamily.Stick or MaterialFamily.Hardware && !_known.Contains(material);

    // A slip for every four letters, one at least and three at most: "panel tei" is near "panel tie", "panel clip" is not.
    private string NearestTo(string name)
    {
        var lower = name.ToLowerInvariant();
        var allowed = Math.Clamp(name.Length / 4, 1, 3);
        return _known
            .Select(material => material.Name)
            .Where(known => Math.Abs(known.Length - name.Length) <= allowed)
            .Select(known => (Name: known, Slips: Slips.Between(lower, known.ToLowerInvariant())))
            .Where(pair => pair.Slips <= allowed)
            .OrderBy(pair => pair.Slips).ThenBy(pair => pair.Name, StringComparer.OrdinalIgnoreCase)
            .Select(pair => pair.Name)
            .FirstOrDefault("");
    }
}
