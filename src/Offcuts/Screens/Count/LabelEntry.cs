using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What a label of the list is.</summary>
internal enum LabelKind
{
    /// <summary>It waits to be printed.</summary>
    Waits,

    /// <summary>It is on a bundle that is strapped.</summary>
    Bundle,

    /// <summary>It was printed and nothing has taken it yet.</summary>
    Blank,

    /// <summary>It is a place's.</summary>
    Place,
}

/// <summary>A label in the list of labels.</summary>
/// <param name="Code">What it says.</param>
/// <param name="Kind">What it is.</param>
/// <param name="What">What it hangs on.</param>
internal sealed record LabelEntry(Code Code, LabelKind Kind, string What)
{
    // Of one kind; nobody reads more of them on a screen.
    private const int Most = 500;

    /// <summary>The labels of a yard: those that wait first, then bundles, blanks, places.</summary>
    public static IReadOnlyList<LabelEntry> Of(YardSnapshot yard)
    {
        var bundles = yard.Bundles.Where(bundle => bundle.IsWhole).ToArray();
        string What(Code code) => yard.Find(code) is { } there ? $"{there.Material}{(there.Piece is { } piece ? $"  {Words.Size(piece, yard.Unit)}" : "")}{(there.Place.Length > 0 ? $"  @{there.Place}" : "")}"
            : bundles.FirstOrDefault(bundle => bundle.Code == code) is { } bundle ? Bundle(bundle)
            : yard.CountedPlaces.FirstOrDefault(place => place.Code == code) is { } place ? $"place {place.Name}"
            : "";
        return
        [
            .. yard.Queue.Take(Most).Select(code => new LabelEntry(code, LabelKind.Waits, What(code))).OrderBy(entry => entry.What, StringComparer.OrdinalIgnoreCase).ThenBy(entry => entry.Code),
            .. bundles.Take(Most).Select(bundle => new LabelEntry(bundle.Code, LabelKind.Bundle, Bundle(bundle))),
            .. yard.Blanks.Order().Take(Most).Select(code => new LabelEntry(code, LabelKind.Blank, "")),
            .. yard.CountedPlaces.Where(place => !place.Code.IsNone).Take(Most).Select(place => new LabelEntry(place.Code, LabelKind.Place, place.Name)),
        ];
    }

    private static string Bundle(Bundle bundle) =>
        string.Join("  ", new[] { bundle.Name, Words.Count(bundle.Pieces.Count, "piece"), bundle.Place.Length > 0 ? $"@{bundle.Place}" : "" }.Where(part => part.Length > 0));
}
