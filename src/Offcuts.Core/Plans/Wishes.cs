using Offcuts.Core.Yard;

namespace Offcuts.Core.Plans;

/// <summary>
/// This piece for that cut: one copy of the cut is taken from this piece, or it stays unfilled and says so. Two equal pins are
/// two copies. What else is cut from the piece, and where the cut's other copies come from, stays open.
/// </summary>
/// <param name="Piece">The piece.</param>
/// <param name="Stage">Stage of the cut.</param>
/// <param name="Cut">Name of the cut; it stands only once in its stage.</param>
public sealed record Pin(Code Piece, string Stage, string Cut);

/// <summary>Never touch this piece; or, where a cut is named, not for this cut.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Stage">Stage of the one cut it must not serve; empty where it serves nothing.</param>
/// <param name="Cut">Name of that cut; empty where it serves nothing.</param>
public sealed record Spare(Code Piece, string Stage = "", string Cut = "")
{
    /// <summary>True where the piece is not touched at all.</summary>
    public bool Wholly => Cut.Length == 0;

    /// <summary>True where it keeps the piece from this cut.</summary>
    public bool Forbids(Code piece, string stage, string cut) => Piece == piece && (Wholly || (Stage == stage && Cut == cut));
}

/// <summary>What a person said of single pieces before a plan was made; kept with it. <c>default</c>-like: <see cref="None"/>.</summary>
/// <param name="Pins">Pieces for certain cuts.</param>
/// <param name="Spares">Pieces to be left alone.</param>
public sealed record Wishes(IReadOnlyList<Pin> Pins, IReadOnlyList<Spare> Spares)
{
    /// <summary>Nothing was said.</summary>
    public static Wishes None { get; } = new([], []);

    /// <summary>True where nothing was said.</summary>
    public bool Empty => Pins.Count + Spares.Count == 0;

    /// <summary>The same without what was said of these pieces.</summary>
    public Wishes Without(IEnumerable<Code> pieces)
    {
        var released = pieces.ToHashSet();
        return new Wishes([.. Pins.Where(pin => !released.Contains(pin.Piece))], [.. Spares.Where(spare => !released.Contains(spare.Piece))]);
    }

    /// <summary>In words: <c>pinned: K7F 3MXX for blocking (walls); left alone: N4P X7AW</c>. Empty where nothing was said.</summary>
    public string ToText(Func<Code, string> code)
    {
        var parts = new List<string>();
        if (Pins.Count > 0) parts.Add("pinned: " + string.Join(", ", Pins.Select(pin => $"{code(pin.Piece)} for {pin.Cut} ({pin.Stage})")));
        if (Spares.Count > 0) parts.Add("left alone: " + string.Join(", ", Spares.Select(spare => code(spare.Piece) + (spare.Wholly ? "" : $" for {spare.Cut} ({spare.Stage})"))));
        return string.Join("; ", parts);
    }

    /// <summary>These and then those; a piece spared twice is spared once.</summary>
    public Wishes And(Wishes more) => new([.. Pins, .. more.Pins], [.. Spares.Union(more.Spares)]);
}
