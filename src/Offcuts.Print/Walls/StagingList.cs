using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>A piece at the saw, in the order of the work; or new pieces alike that go whole into one course.</summary>
/// <param name="Numbers">Its number on the cut sheet, from 1; several where there are several of them.</param>
/// <param name="Code">Its code, or <c>new</c>, with their count where there are several.</param>
/// <param name="Length">How long it is.</param>
/// <param name="Place">Where it lies; <c>store</c> for what is bought.</param>
/// <param name="Course">The lowest course that needs a cut of it.</param>
/// <param name="Goes">Where its cuts go, letter by letter; of several pieces which of them go where.</param>
public sealed record StagingCut(IReadOnlyList<int> Numbers, string Code, string Length, string Place, int Course, string Goes);

/// <summary>What goes from one place to one leg: a piece, or new ones alike that go there whole.</summary>
/// <param name="Numbers">The piece's number on the cut sheet, from 1; several where there are several of them.</param>
/// <param name="Code">Its code, or <c>new</c>, with their count where there are several.</param>
/// <param name="Material">What it is.</param>
/// <param name="Goes">Which of its cuts go to this leg, and to which course of which row; of several pieces which of them go where.</param>
public sealed record StagingPiece(IReadOnlyList<int> Numbers, string Code, string Material, string Goes);

/// <summary>The pieces of one place for one leg.</summary>
/// <param name="Place">Where they lie.</param>
/// <param name="Leg">The leg they are for.</param>
/// <param name="Pieces">By their number, the first where there are several.</param>
public sealed record StagingGroup(string Place, string Leg, IReadOnlyList<StagingPiece> Pieces);

/// <summary>
/// What to bring where and what to cut first: the pieces of a wall's plan by the place where they lie and the leg they go to, and all of
/// them in the order in which the courses ask for them, from the bottom up. New panels alike that go whole where they go stand together with
/// their count: most of a wall are such, and nobody looks for one of them rather than another.
/// </summary>
public sealed class StagingList
{
    /// <summary>The place of what is bought.</summary>
    public const string Store = "new, from the store";

    private StagingList(IReadOnlyList<StagingCut> cuts, IReadOnlyList<StagingGroup> groups) => (Cuts, Groups) = (cuts, groups);

    /// <summary>Every piece in one row alone, the lowest course first; in a course by leg and by place.</summary>
    public IReadOnlyList<StagingCut> Cuts { get; }

    /// <summary>By place, store last, then by leg. A piece whose cuts go to several legs stands at each.</summary>
    public IReadOnlyList<StagingGroup> Groups { get; }

    /// <summary>The list of a wall, of the courses that do not stand yet; empty where it has no plan.</summary>
    public static StagingList Of(WallPicture picture, LengthUnit unit, Func<Code, string>? codeText = null)
    {
        if (picture.Plan is not { } plan) return new StagingList([], []);
        var legs = picture.Rows.Select(row => row.Run.Leg).Distinct().ToList();
        var runs = picture.Rows.ToDictionary(row => row.Run.Name, row => row.Run);
        // What stands, or is cut and waits to be stacked, is brought nowhere any more.
        var stands = picture.Stacked.Select(course => (course.Run, course.Course)).ToHashSet();
        bool ToCut(int piece) => picture.Steps is not { } steps || piece >= steps.Steps.Count || steps.Steps[piece].State == StepState.Waiting;
        var uses = plan.Courses.Where(course => runs.ContainsKey(course.Run) && !stands.Contains((course.Run, course.Course)))
            .SelectMany(course => course.Pieces.Where(piece => ToCut(piece.Piece)).Select(piece => new Use(piece.Piece, piece.Cut, runs[course.Run], course.Course)))
            .OrderBy(use => use.Course).ThenBy(use => legs.IndexOf(use.Run.Leg)).ThenBy(use => use.Run.Name, StringComparer.Ordinal).ThenBy(use => use.Cut)
            .ToArray();
        string CodeOf(IReadOnlyList<int> pieces) => (pieces.Count, plan.Pieces[pieces[0]].Source) switch
        {
            ( > 1, _) => $"{Number(pieces.Count)} new",
            (_, { } source) => TextRules.Harmless(codeText?.Invoke(source.Code) ?? source.Code.ToString()),
            _ => "new",
        };

        // What stands in one row: a piece alone, or all new ones of a material and a length that go whole.
        (int Piece, string Material, Length Length) Row(int piece) =>
            IsWholeNew(plan.Pieces[piece]) ? (-1, plan.Pieces[piece].Material.Name, plan.Pieces[piece].Length) : (piece, "", Length.Zero);

        var cuts = uses.GroupBy(use => use.Piece).GroupBy(piece => (piece.First().Course, Row: Row(piece.Key)), piece => piece.AsEnumerable())
            .Select(row => (row.Key.Course, Uses: row.SelectMany(piece => piece).ToArray(), Pieces: PiecesOf(row.SelectMany(piece => piece))))
            .OrderBy(row => row.Course).ThenBy(row => legs.IndexOf(row.Uses[0].Run.Leg))
            .ThenBy(row => PlaceKey(plan.Pieces[row.Pieces[0]])).ThenBy(row => row.Pieces[0])
            .Select(row => (row.Uses, row.Pieces, row.Course, First: plan.Pieces[row.Pieces[0]]))
            .Select(row => new StagingCut(
                NumbersOf(row.Pieces), CodeOf(row.Pieces), row.First.Length.ToText(unit), row.First.Source is null ? "store" : PlaceOf(row.First), row.Course, Goes(row.Uses)));
        var groups = uses.GroupBy(use => (Place: PlaceKey(plan.Pieces[use.Piece]), use.Run.Leg))
            .OrderBy(group => group.Key.Place).ThenBy(group => legs.IndexOf(group.Key.Leg))
            .Select(group => new StagingGroup(
                PlaceOf(plan.Pieces[group.First().Piece]), TextRules.Harmless(group.Key.Leg),
                [.. group.GroupBy(use => Row(use.Piece)).Select(row => (Uses: row.ToArray(), Pieces: PiecesOf(row))).OrderBy(row => row.Pieces[0]).Select(row => new StagingPiece(
                    NumbersOf(row.Pieces), CodeOf(row.Pieces), TextRules.Harmless(plan.Pieces[row.Pieces[0]].Material.Name), Goes(row.Uses)))]));
        return new StagingList([.. cuts], [.. groups]);
    }

    /// <summary>The list in at most so many columns; lines end with <c>\n</c>.</summary>
    /// <param name="width">60 columns or more.</param>
    public string Text(int width)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 60);
        var lines = new List<string> { "What goes to which leg, by the place where it lies" };
        var legs = new TextTable(4, new("no.", 4, Right: true), new("code", 10), new("material", 18), new("cut: row and course", width - 4 - 4 - 10 - 18 - 6));
        lines.Add(Groups.Count == 0 ? "  nothing" : legs.Head());
        foreach (var place in Groups.GroupBy(group => group.Place))
        {
            lines.AddRange(TextColumns.Wrap(place.Key, width - 2).Select(line => "  " + line));
            foreach (var leg in place)
            {
                lines.AddRange(TextColumns.Wrap($"to leg {leg.Leg}", width - 3).Select(line => "   " + line));
                foreach (var piece in leg.Pieces) lines.AddRange(legs.Row(NumberAlone(piece.Numbers), piece.Code, piece.Material, piece.Goes));
            }
        }

        lines.Add("");
        lines.Add("What to cut first: the bottom courses come first");
        if (Cuts.Count == 0) lines.Add("  nothing");
        else
        {
            var table = new TextTable(2, new("course", 6, Right: true), new("no.", 4, Right: true), new("code", 10), new("length", 10), new("lies at", 14), new("cut: row and course", width - 2 - 6 - 4 - 10 - 10 - 14 - 10));
            lines.Add(table.Head());
            foreach (var cut in Cuts) lines.AddRange(table.Row(Number(cut.Course), NumberAlone(cut.Numbers), cut.Code, cut.Length, cut.Place, cut.Goes));
        }

        return string.Concat(lines.Select(line => line.TrimEnd() + "\n"));
    }

    /// <summary>What stands in the column of numbers: nothing where there are several, which stand beside where they go.</summary>
    internal static string NumberAlone(IReadOnlyList<int> numbers) => numbers.Count == 1 ? Number(numbers[0]) : "";

    // A piece is one cut long, and no saw touches it.
    private static bool IsWholeNew(PlannedPiece piece) => piece is { Source: null, SawCuts: 0, Cuts: [{ Rip: null }], Remainders.Count: 0 };

    private static int[] PiecesOf(IEnumerable<Use> uses) => [.. uses.Select(use => use.Piece).Distinct().Order()];

    private static int[] NumbersOf(int[] pieces) => [.. pieces.Select(piece => piece + 1)];

    private static string Goes(IReadOnlyList<Use> uses) => uses.DistinctBy(use => use.Piece).Count() == 1
        ? string.Join("; ", uses.Select(use => $"{PieceBar.Letter(use.Cut)}: {TextRules.Harmless(use.Run.Name)} {Number(use.Course)}"))
        : string.Join("; ", uses.GroupBy(use => (use.Run.Name, use.Course)).Select(course => $"{TextRules.Harmless(course.Key.Name)} {Number(course.Key.Course)}: no. {UsedAsTheyAre.Numbers(course.Select(use => use.Piece + 1))}"));

    private static string PlaceOf(PlannedPiece piece) => piece.Source switch
    {
        null => Store,
        { Place.Length: 0 } => "no place noted",
        var source => TextRules.Harmless(source.Place),
    };

    // Places by their name, then what has none, then the store.
    private static (int Kind, string Place) PlaceKey(PlannedPiece piece) => piece.Source switch
    {
        null => (2, ""),
        { Place.Length: 0 } => (1, ""),
        var source => (0, source.Place.ToUpperInvariant()),
    };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private sealed record Use(int Piece, int Cut, Run Run, int Course);
}
