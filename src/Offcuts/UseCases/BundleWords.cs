using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What is in a bundle, in words.</summary>
public static class BundleWords
{
    /// <summary>A bundle in a line: code, name, what is in it, place.</summary>
    public static string Line(Bundle bundle, YardFile yard) =>
        string.Join("  ", new[] { bundle.Code.ToString(), bundle.Name, Holds(bundle, yard), bundle.Place }.Where(part => part.Length > 0));

    /// <summary>What is in it by material: <c>12 2x4, 3 2x10</c>; <c>nothing</c> where it is empty.</summary>
    public static string Holds(Bundle bundle, YardFile yard)
    {
        var kinds = bundle.Pieces.Select(yard.Piece).OfType<Piece>().GroupBy(piece => piece.Material.Name).Select(kind => $"{kind.Count()} x {kind.Key}").ToArray();
        return kinds.Length == 0 ? "nothing" : string.Join(", ", kinds);
    }
}
