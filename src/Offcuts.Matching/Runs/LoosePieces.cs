namespace Offcuts.Matching.Runs;

/// <summary>A laid piece that may be taken up again.</summary>
/// <param name="From">Left end.</param>
/// <param name="To">Right end.</param>
/// <param name="Kind">What it asks of the stock.</param>
/// <param name="Bar">What it is cut from.</param>
internal sealed record LoosePiece(long From, long To, Kind Kind, LooseBar Bar);

/// <summary>A bar in use; which of the bars that are alike it is, is settled at the end.</summary>
internal sealed class LooseBar(CutSet set)
{
    public CutSet Set { get; set; } = set;
}

/// <summary>A covered stretch with its pieces from left to right.</summary>
internal sealed record Lane(Row Row, int Stretch, List<LoosePiece> Pieces)
{
    public long From => Row.Stretches[Stretch].From;

    public long To => Row.Stretches[Stretch].To;
}

/// <summary>Some pieces of a lane that lie beside each other, and how long the pieces are that shall lie there instead.</summary>
internal readonly record struct Window(Lane Lane, int First, int Count, long[] Lengths)
{
    public long From => Lane.Pieces[First].From;
}

/// <summary>The figures of the tiers after the unfilled courses, or by how much they change.</summary>
/// <param name="Spend">Cents spent.</param>
/// <param name="GivenUp">Cents of yard value given up.</param>
/// <param name="Ties">Extra ties, or cleats.</param>
/// <param name="Joints">Joints.</param>
/// <param name="Saws">Saw cuts.</param>
internal readonly record struct LaterFigures(long Spend, long GivenUp, long Ties, long Joints, long Saws) : IComparable<LaterFigures>
{
    /// <summary>Those of a filling.</summary>
    public static LaterFigures Of(Filling filling)
    {
        var tier = filling.Part.Levels.Length;
        return new(filling.Figures[tier], filling.Figures[tier + 1], filling.Figures[tier + 2], filling.Figures[tier + 3], filling.Figures[tier + 4]);
    }

    public int CompareTo(LaterFigures other) =>
        (Spend, GivenUp, Ties, Joints, Saws).CompareTo((other.Spend, other.GivenUp, other.Ties, other.Joints, other.Saws));

    public static LaterFigures operator +(LaterFigures a, LaterFigures b) => new(a.Spend + b.Spend, a.GivenUp + b.GivenUp, a.Ties + b.Ties, a.Joints + b.Joints, a.Saws + b.Saws);

    public static LaterFigures operator -(LaterFigures a, LaterFigures b) => new(a.Spend - b.Spend, a.GivenUp - b.GivenUp, a.Ties - b.Ties, a.Joints - b.Joints, a.Saws - b.Saws);
}
