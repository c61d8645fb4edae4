using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests.Independent;

/// <summary>What ripping one cut out of a stretch adds: 1 and its saw cuts and the strip's value, or nothing at all.</summary>
internal readonly record struct Lengthwise(int Rips, int SawCuts, long StripValue)
{
    // Dry dressed widths in inches by nominal width. Source: PS 20-20, Table 3.
    private static readonly Dictionary<string, decimal> Dry = new()
    {
        ["1"] = 0.75m,
        ["2"] = 1.5m,
        ["3"] = 2.5m,
        ["4"] = 3.5m,
        ["6"] = 5.5m,
        ["8"] = 7.25m,
        ["10"] = 9.25m,
        ["12"] = 11.25m,
    };

    /// <summary>True where the one may be sawn lengthwise out of the other: as thick, of the same type, and narrower.</summary>
    public static bool May(Material from, Material into) =>
        Across(from) is { } board && Across(into) is { } wanted && board.Kind == wanted.Kind && board.Width > wanted.Width;

    /// <summary>What a cut of this length adds on this stretch.</summary>
    public static Lengthwise Of(Stretch stretch, RequiredCut cut, long length, MatchRequest request)
    {
        if (stretch.Material.Equals(cut.Material)) return default;
        var (wide, kept) = Strip(stretch.Material, cut.Material, request);
        return kept is null || length < request.Settings.Keep(kept).Units
            ? new Lengthwise(1, 1, 0)
            : new Lengthwise(1, Across(kept)!.Value.Width == wide ? 1 : 2, Definition.Value(length, stretch.Condition, stretch.Treated, kept, request));
    }

    /// <summary>How wide the strip is, and the widest material of the list that it can be.</summary>
    public static (long Wide, Material? Kept) Strip(Material from, Material into, MatchRequest request)
    {
        var (board, wanted) = (Across(from)!.Value, Across(into)!.Value);
        var wide = Math.Max(0, board.Width - wanted.Width - request.Settings.Kerf(from).Units);
        var listed = request.Stages.SelectMany(stage => stage.Cuts.Select(cut => cut.Material))
            .Concat(request.Pieces.Where(piece => piece.State is PieceState.InYard or PieceState.Reserved).Select(piece => piece.Material))
            .Concat(request.Prices.All.Select(price => price.Material));
        return (wide, listed.Where(one => Across(one) is { } other && other.Kind == board.Kind && other.Width <= wide).OrderBy(one => Across(one)!.Value.Width).LastOrDefault());
    }

    // By the names alone: 2x8, foam 2x16, foam 2x16 II.
    private static (string Kind, long Width)? Across(Material material)
    {
        var words = material.Name.Split(' ');
        var sides = words[words[0] == "foam" ? 1 : 0].Split('x');
        if (sides.Length != 2 || (words[0] != "foam" && words.Length > 1)) return null;
        if (words[0] == "foam") return ($"foam {sides[0]} {string.Join(' ', words.Skip(2))}", Length.Parse(sides[1], LengthUnit.Inch).Value.Units);
        return Dry.TryGetValue(sides[1], out var inches) && int.Parse(sides[0], System.Globalization.CultureInfo.InvariantCulture) < 5
            ? ($"lumber {sides[0]}", (long)(inches * Length.PerInch))
            : null;
    }
}
