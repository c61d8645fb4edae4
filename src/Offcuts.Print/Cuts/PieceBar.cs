using Offcuts.Core.Measures;
using Offcuts.Core.Plans;

namespace Offcuts.Print;

/// <summary>What becomes of a stretch of a piece.</summary>
public enum StretchKind
{
    /// <summary>A cut.</summary>
    Cut,

    /// <summary>What the saw turns to dust, and slivers too short to be a remainder.</summary>
    Kerf,

    /// <summary>A remainder that gets a label.</summary>
    Kept,

    /// <summary>A remainder that is scrap.</summary>
    Scrap,

    /// <summary>A span that the plan leaves as it is.</summary>
    Untouched,

    /// <summary>A bad spot.</summary>
    Bad,

    /// <summary>An end trim.</summary>
    Trim,
}

/// <summary>One stretch of a piece.</summary>
/// <param name="Kind">What becomes of it.</param>
/// <param name="Start">Where it starts, from the marked end.</param>
/// <param name="Length">How long it is; over 0.</param>
/// <param name="Index">For a cut or a remainder, its index in the piece's list; else 0.</param>
public readonly record struct Stretch(StretchKind Kind, Length Start, Length Length, int Index)
{
    /// <summary>Where it ends.</summary>
    public Length End => Start + Length;
}

/// <summary>A planned piece as a bar: the stretches that make it up from the marked end to the other, without gap or overlap.</summary>
/// <param name="Length">The piece's full length.</param>
/// <param name="Stretches">In order; their lengths add up to the piece's.</param>
public sealed record PieceBar(Length Length, IReadOnlyList<Stretch> Stretches)
{
    /// <summary>The characters of <see cref="ToText"/> and what each means, in fewer than 78 columns.</summary>
    public const string Legend = "A B C cuts   | saw   = keep   . scrap   - left as it is   x bad   / trim";

    private const string Letters = "ABCDEFGHIJKLMNOPQRSTUVWYZabcdefghijklmnopqrstuvwyz";

    /// <summary>The letter that stands for a cut in bars and in the list below them; after fifty it begins again. X and x are left to bad spots.</summary>
    public static char Letter(int cut) => Letters[cut % Letters.Length];

    /// <summary>The bar of a planned piece.</summary>
    public static PieceBar Of(PlannedPiece piece)
    {
        var planned = piece.Cuts.Select((cut, i) => new Stretch(StretchKind.Cut, cut.Start, cut.Length, i))
            .Concat(piece.Remainders.Select((rest, i) => new Stretch(rest.Kept ? StretchKind.Kept : StretchKind.Scrap, rest.Start, rest.Length, i)))
            .Concat(piece.Untouched.Select(span => new Stretch(StretchKind.Untouched, span.Start, span.Length, 0)))
            .Where(stretch => !stretch.Length.IsZero)
            .OrderBy(stretch => stretch.Start)
            .ToList();

        var all = new List<Stretch>();
        var at = Length.Zero;
        foreach (var stretch in planned)
        {
            all.AddRange(Between(piece, at, stretch.Start));
            all.Add(stretch);
            at = stretch.End;
        }

        all.AddRange(Between(piece, at, piece.Length));
        return new PieceBar(piece.Length, all);
    }

    /// <summary>
    /// The bar in characters between brackets, to scale: see <see cref="Legend"/>. Every cut shows with at least one character
    /// where there is one to spare.
    /// </summary>
    /// <param name="cells">Characters between the brackets; 1 or more.</param>
    public string ToText(int cells)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(cells, 1);
        var drawn = new char[cells];
        Array.Fill(drawn, ' ');
        foreach (var stretch in Stretches.Where(stretch => stretch.Kind != StretchKind.Kerf))
            drawn.AsSpan(Cell(stretch.Start, cells)..Cell(stretch.End, cells)).Fill(Sign(stretch));

        // The saw's own width is far under a character: it takes one from the longer of its neighbours.
        foreach (var kerf in Stretches.Where(stretch => stretch.Kind == StretchKind.Kerf))
        {
            var cell = Cell(kerf.Start, cells);
            if (Cell(kerf.End, cells) > cell) drawn.AsSpan(cell..Cell(kerf.End, cells)).Fill('|');
            else if (cell >= 2 && drawn[cell - 1] == drawn[cell - 2]) drawn[cell - 1] = '|';
            else if (cell + 1 < cells && drawn[cell] == drawn[cell + 1]) drawn[cell] = '|';
        }

        foreach (var cut in Stretches.Where(stretch => stretch.Kind == StretchKind.Cut && !drawn.Contains(Sign(stretch))))
        {
            var cell = Math.Min(Cell(cut.Start, cells), cells - 1);
            if (!char.IsAsciiLetter(drawn[cell]) || drawn.Count(c => c == drawn[cell]) > 1) drawn[cell] = Sign(cut);
        }

        return $"[{new string(drawn)}]";
    }

    private static char Sign(Stretch stretch) => stretch.Kind switch
    {
        StretchKind.Cut => Letter(stretch.Index),
        StretchKind.Kerf => '|',
        StretchKind.Kept => '=',
        StretchKind.Scrap => '.',
        StretchKind.Untouched => '-',
        StretchKind.Bad => 'x',
        _ => '/',
    };

    private int Cell(Length at, int cells) => (int)Math.Clamp((2 * at.Units * cells + Length.Units) / (2 * Length.Units), 0, cells);

    // What nobody planned for is a trim or a bad spot where the piece says so, and sawdust elsewhere.
    private static IEnumerable<Stretch> Between(PlannedPiece piece, Length from, Length to)
    {
        if (to <= from) yield break;
        var edges = new SortedSet<Length> { from, to };
        if (piece.Source is { } source)
        {
            edges.Add(source.TrimLeft);
            edges.Add(source.Length.LessAtMost(source.TrimRight));
            foreach (var spot in source.BadSpots)
            {
                edges.Add(spot.Start);
                edges.Add(spot.End);
            }
        }

        var inside = edges.Where(edge => edge >= from && edge <= to).ToArray();
        var start = inside[0];
        for (var i = 1; i < inside.Length; i++)
        {
            var kind = KindAt(piece, start);
            if (i + 1 < inside.Length && KindAt(piece, inside[i]) == kind) continue;
            yield return new Stretch(kind, start, inside[i] - start, 0);
            start = inside[i];
        }
    }

    private static StretchKind KindAt(PlannedPiece piece, Length at)
    {
        if (piece.Source is not { } source) return StretchKind.Kerf;
        if (source.BadSpots.Any(spot => spot.Start <= at && at < spot.End)) return StretchKind.Bad;
        return at < source.TrimLeft || at >= source.Length.LessAtMost(source.TrimRight) ? StretchKind.Trim : StretchKind.Kerf;
    }
}
