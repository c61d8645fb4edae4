using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>What one line of a stage's list says: either lengths to cut or counted things.</summary>
/// <param name="Cut">What must be cut; none where it is hardware.</param>
/// <param name="Hardware">What must be counted out; none where it is cut.</param>
public sealed record CutDraft(RequiredCut? Cut, HardwareNeed? Hardware)
{
    /// <summary>True where the length was typed as a bare whole number, or as two of them, without a unit.</summary>
    public bool BareWhole { get; init; }

    /// <summary>What is needed.</summary>
    public Material Material => Cut?.Material ?? Hardware!.Hardware;

    /// <summary>The reading in plain words, for a person to agree to before it is saved.</summary>
    /// <param name="unit">The unit lengths are shown in.</param>
    public string ReadBack(LengthUnit unit)
    {
        if (Cut is not { } cut) return ReadBackText.Join([$"{Hardware!.Name}: hardware: {Hardware.Count} of {Hardware.Hardware.Name}"]);
        var length = cut.Shortest == cut.Longest
            ? cut.Shortest.ToText(unit)
            : $"{cut.Shortest.ToText(unit)}, or whole up to {cut.Longest.ToText(unit)}";
        return ReadBackText.Join(
        [
            $"{cut.Name}: {cut.Count} of {cut.Material.Name}, {length}",
            MarkWords.Of(cut.Use),
            cut.Treated switch
            {
                TreatedWish.Yes => "treated only",
                TreatedWish.No => "untreated only",
                _ => "treated or not",
            },
            .. cut.Rip ? (string[])["may be ripped from wider"] : [],
        ]);
    }
}
