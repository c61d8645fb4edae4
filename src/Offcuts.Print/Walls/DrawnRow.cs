using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>What a stretch of a course shows.</summary>
internal enum PatchKind
{
    /// <summary>A piece that is bought.</summary>
    New,

    /// <summary>A piece of the yard.</summary>
    Salvaged,

    /// <summary>To be covered; no plan says with what.</summary>
    Empty,

    /// <summary>The plan leaves it open.</summary>
    Unfilled,

    /// <summary>An opening.</summary>
    Opening,

    /// <summary>The core of a leg that meets this one goes through here.</summary>
    Gap,
}

/// <summary>One stretch of a course.</summary>
/// <param name="Kind">What it shows.</param>
/// <param name="From">Where it begins on the axis.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Labels">What may be written in it, the longest first; the first that has room is.</param>
internal sealed record Patch(PatchKind Kind, Length From, Length To, IReadOnlyList<string> Labels);

/// <summary>What holds the faces together at one place.</summary>
internal enum TieKind
{
    /// <summary>A regular tie with no joint on it.</summary>
    Regular,

    /// <summary>A regular tie under a joint.</summary>
    OnJoint,

    /// <summary>A tie beside the regular ones.</summary>
    Extra,

    /// <summary>A cleat behind a joint of boards.</summary>
    Cleat,
}

/// <summary>A tie at its place on the axis.</summary>
internal sealed record DrawnTie(Length At, TieKind Kind);

/// <summary>A piece in a course, in words.</summary>
/// <param name="Sign">Its letter, number and cut: <c>S12B</c>.</param>
/// <param name="Text">With its length, its code and how it lies.</param>
internal sealed record LaidText(string Sign, string Text);

/// <summary>One course of a row.</summary>
internal sealed record DrawnCourse(
    int Number, Length Bottom, Length Height, IReadOnlyList<Patch> Patches, IReadOnlyList<DrawnTie> Ties, IReadOnlyList<WallHole> Notches,
    IReadOnlyList<LaidText> Laid, string? Reason, bool Stacked, bool Cut);

/// <summary>A row, course by course from the bottom up, before it is set as text or on paper.</summary>
internal sealed class DrawnRow
{
    private readonly WallPicture _picture;
    private readonly LengthUnit _unit;
    private readonly Func<Code, string> _codeText;

    private DrawnRow(WallPicture picture, WallRow row, LengthUnit unit, Func<Code, string> codeText)
    {
        (_picture, Row, _unit, _codeText) = (picture, row, unit, codeText);
        var stretches = row.Run.Courses.SelectMany(course => course.Stretches).ToArray();
        From = stretches.Select(stretch => stretch.Start).DefaultIfEmpty(Length.Zero).Min();
        To = stretches.Select(stretch => stretch.End).DefaultIfEmpty(Length.Zero).Max();
        var bottom = Length.Zero;
        var courses = new List<DrawnCourse>();
        foreach (var course in row.Run.Courses)
        {
            courses.Add(Drawn(course, bottom));
            bottom += course.Height;
        }

        (Courses, Height) = (courses, bottom);
    }

    public WallRow Row { get; }

    public Length From { get; }

    public Length To { get; }

    public Length Height { get; }

    public IReadOnlyList<DrawnCourse> Courses { get; }

    public bool Blank => From == To;

    /// <summary>What stands over the drawing.</summary>
    public string Title
    {
        get
        {
            var heights = Courses.Select(course => course.Height).Distinct().Select(Text);
            return $"{TextRules.Harmless(Row.Run.Name)}: {TextRules.Harmless(Row.Run.Material.Name)}, {Text(To - From)} long, {Courses.Count} {(Courses.Count == 1 ? "course" : "courses")} of {string.Join(" and ", heights)}; "
                + $"seen from {Row.SeenFrom}, the leg's start at the {(Row.StartAtRight ? "right" : "left")}"
                + (Row.MeasuredFrom == WallRow.LegStartName ? "" : $"; measured from {Row.MeasuredFrom}");
        }
    }

    public static DrawnRow Of(WallPicture picture, WallRow row, LengthUnit unit, Func<Code, string> codeText) => new(picture, row, unit, codeText);

    /// <summary>A place on the axis as it is written: measured from the leg's start.</summary>
    public string Place(Length at) => at < Row.LegStart ? $"-{Text(Row.LegStart - at)}" : Text(at - Row.LegStart);

    private DrawnCourse Drawn(Course course, Length bottom)
    {
        var run = Row.Run;
        var laid = _picture.Plan?.Courses.FirstOrDefault(one => one.Run == run.Name && one.Course == course.Number);
        var top = bottom + course.Height;
        var touching = Row.Holes.Where(hole => hole.Bottom < top && hole.Top > bottom).ToArray();
        var whole = touching.Where(hole => hole.Bottom <= bottom && hole.Top >= top).ToArray();
        var stood = _picture.Stacked.FirstOrDefault(one => one.Run == run.Name && one.Course == course.Number);
        Shown[] shown = laid is { Pieces.Count: > 0 } ? [.. laid.Pieces.Select(Planned)] : [.. (stood?.Pieces ?? []).Select(Stood)];
        var patches = Patches(course, laid, shown, whole).ToArray();
        return new DrawnCourse(
            course.Number, bottom, course.Height, patches, [.. Ties(course, patches)], [.. touching.Except(whole)],
            [.. shown.Select(Words)], stood is null ? laid?.Reason : null, stood is { OnlyCut: false }, stood is { OnlyCut: true });
    }

    private IEnumerable<Patch> Patches(Course course, LaidCourse? laid, Shown[] shown, WallHole[] holes)
    {
        Length? end = null;
        foreach (var stretch in course.Stretches)
        {
            if (end is { } from)
                foreach (var gap in Between(from, stretch.Start, holes)) yield return gap;
            var at = stretch.Start;
            foreach (var piece in shown.Where(piece => piece.From >= stretch.Start && piece.To <= stretch.End))
            {
                if (piece.From > at) yield return Open(at, piece.From, laid);
                yield return new Patch(piece.Code is null ? PatchKind.New : PatchKind.Salvaged, piece.From, piece.To, Labels(piece));
                at = piece.To;
            }

            if (at < stretch.End) yield return Open(at, stretch.End, laid);
            end = stretch.End;
        }
    }

    private static Patch Open(Length from, Length to, LaidCourse? laid) =>
        laid is null ? new Patch(PatchKind.Empty, from, to, []) : new Patch(PatchKind.Unfilled, from, to, ["unfilled", "open"]);

    private static IEnumerable<Patch> Between(Length from, Length to, WallHole[] holes)
    {
        foreach (var hole in holes.Where(hole => hole.Where.Start < to && hole.Where.End > from).OrderBy(hole => hole.Where.Start))
        {
            var (start, end) = (Length.Max(from, hole.Where.Start), Length.Min(to, hole.Where.End));
            if (start > from) yield return new Patch(PatchKind.Gap, from, start, []);
            if (end > start) yield return new Patch(PatchKind.Opening, start, end, [TextRules.Harmless(hole.Name)]);
            from = end;
        }

        if (from < to) yield return new Patch(PatchKind.Gap, from, to, []);
    }

    private IEnumerable<DrawnTie> Ties(Course course, Patch[] patches)
    {
        var (run, lines) = (Row.Run, Row.Run.Lines);
        var joints = patches.Zip(patches.Skip(1)).Where(pair => IsPiece(pair.First) && IsPiece(pair.Second)).Select(pair => pair.First.To).ToHashSet();
        var extras = (_picture.Plan?.ExtraTies ?? []).Where(tie => tie.Leg == run.Leg && tie.Course == course.Number).ToArray();
        // What stands has a tie on each of its joints, whatever is planned for the rest.
        var faces = _picture.Rows.Where(row => row.Run.Leg == run.Leg && row.Run.Joints == JointRule.OnPattern).Select(row => row.Run.Name).ToHashSet();
        foreach (var at in _picture.Stacked.Where(one => one.Course == course.Number && faces.Contains(one.Run)).SelectMany(one => one.Joints).Distinct().Where(at => !lines.IsTie(at) && extras.All(extra => extra.At != at)))
            yield return new DrawnTie(at, TieKind.Extra);
        foreach (var extra in extras)
        {
            if (extra.CleatOn is null) yield return new DrawnTie(extra.At, TieKind.Extra);
            else if (extra.CleatOn == run.Name) yield return new DrawnTie(extra.At, TieKind.Cleat);
        }

        var others = _picture.Rows.Where(row => row.Run.Leg == run.Leg && row.Run.Name != run.Name)
            .Select(row => row.Run.Courses.FirstOrDefault(one => one.Number == course.Number)?.Stretches ?? []).ToArray();
        for (var at = lines.FirstTie; at <= To; at += lines.TieSpacing)
        {
            bool Has(IReadOnlyList<Span> stretches) => stretches.Any(stretch => stretch.Start <= at && at <= stretch.End);
            if (Has(course.Stretches) && others.All(Has)) yield return new DrawnTie(at, joints.Contains(at) ? TieKind.OnJoint : TieKind.Regular);
        }
    }

    private static bool IsPiece(Patch patch) => patch.Kind is PatchKind.New or PatchKind.Salvaged;

    // A piece as it is drawn: its sign, and the code of what it is cut from where that is the yard's.
    private sealed record Shown(Length From, Length To, string Sign, string? Code, bool Turned);

    // The letter tells yard from store where nothing else has room; number and letter are those of the cut sheet.
    private Shown Planned(LaidPiece piece)
    {
        var source = _picture.Plan!.Pieces[piece.Piece].Source;
        var sign = $"{(source is null ? 'N' : 'S')}{(piece.Piece + 1).ToString(CultureInfo.InvariantCulture)}{PieceBar.Letter(piece.Cut)}";
        return new Shown(piece.From, piece.To, sign, source is null ? null : CodeOf(source.Code), piece.Turned);
    }

    // What stands is on no cut sheet any more.
    private Shown Stood(StoodPiece piece) => new(piece.From, piece.To, piece.Code.IsNone ? "N" : "S", piece.Code.IsNone ? null : CodeOf(piece.Code), piece.Turned);

    private IReadOnlyList<string> Labels(Shown piece)
    {
        var (sign, length) = (piece.Sign, Text(piece.To - piece.From));
        return piece.Code is { } code
            ? [$"{sign} {code} {length}", $"{sign} {code}", $"{sign} {length}", sign, sign[..1]]
            : [$"{sign} {length}", sign, sign[..1]];
    }

    private LaidText Words(Shown piece)
    {
        var about = new[] { piece.Code, piece.Turned ? "turned" : null }.OfType<string>().ToArray();
        return new LaidText(piece.Sign, $"{piece.Sign} {Text(piece.To - piece.From)}{(about.Length == 0 ? "" : $" ({string.Join(", ", about)})")}");
    }

    private string CodeOf(Code code) => TextRules.Harmless(_codeText(code));

    private string Text(Length length) => length.ToText(_unit);
}
