using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Runs;

/// <summary>Everything that filling the runs of a wall depends on. Checked by <see cref="RunProblem.Create"/>.</summary>
public sealed record RunRequest
{
    /// <summary>The stage the wall is built in: pieces reserved for another stay where they are.</summary>
    public required string Stage { get; init; }

    /// <summary>All runs of the wall: one problem over one stock.</summary>
    public required IReadOnlyList<Run> Runs { get; init; }

    /// <summary>The yard's pieces in the yard's own order. Those not on hand are passed over.</summary>
    public IReadOnlyList<Piece> Pieces { get; init; } = [];

    /// <summary>What can be bought, and by what pieces are valued.</summary>
    public PriceBook Prices { get; init; } = PriceBook.Empty;

    /// <summary>Kerf by family, keep length by material, and which pieces may serve which use.</summary>
    public YardSettings Settings { get; init; } = YardSettings.Usual;

    /// <summary>False fills from the yard alone. Prices then still value the pieces.</summary>
    public bool Buy { get; init; } = true;

    /// <summary>
    /// What each material is laid for; <see cref="Use.Nonstructural"/> where nothing is said, so that foam for a wall is sound or fair
    /// unless the rules say otherwise.
    /// </summary>
    public IReadOnlyDictionary<Material, Use> Uses { get; init; } = new Dictionary<Material, Use>();
}

/// <summary>A problem of runs that has been checked once and does not change any more.</summary>
public sealed class RunProblem
{
    /// <summary>Most pattern lines on one course.</summary>
    public const int MostLines = 20_000;

    private RunProblem(RunRequest request)
    {
        Stage = request.Stage;
        Runs = [.. request.Runs.Select(Frozen)];
        Pieces = [.. request.Pieces.Where(piece => piece.OnHand)];
        Prices = request.Prices;
        Settings = request.Settings;
        Buy = request.Buy;
        Uses = request.Uses.ToDictionary();
        Materials = [.. Runs.Select(run => run.Material).Distinct().Order()];
    }

    /// <summary>The stage the wall is built in.</summary>
    public string Stage { get; }

    /// <summary>All runs of the wall.</summary>
    public IReadOnlyList<Run> Runs { get; }

    /// <summary>Pieces on hand, in the yard's own order.</summary>
    public IReadOnlyList<Piece> Pieces { get; }

    /// <summary>What can be bought, and by what pieces are valued.</summary>
    public PriceBook Prices { get; }

    /// <summary>Kerf, keep length and use rules.</summary>
    public YardSettings Settings { get; }

    /// <summary>False where nothing may be bought.</summary>
    public bool Buy { get; }

    /// <summary>What each material is laid for, where it was said.</summary>
    public IReadOnlyDictionary<Material, Use> Uses { get; }

    /// <summary>Materials that are laid, in their own order. Each is a problem of its own.</summary>
    public IReadOnlyList<Material> Materials { get; }

    /// <summary>What a material is laid for.</summary>
    public Use UseOf(Material material) => Uses.GetValueOrDefault(material, Use.Nonstructural);

    /// <summary>True where this piece may be laid in a run of its material.</summary>
    public bool Allows(Piece piece) =>
        piece.OnHand && (piece.State != PieceState.Reserved || piece.ReservedFor == Stage)
        && Settings.Rules.Allows(piece.Condition, piece.Stamped, piece.Treated, UseOf(piece.Material), TreatedWish.Any);

    /// <summary>
    /// From line to line on the pieces of a material; none where no run of it is joined on the pieces' own pattern.
    /// </summary>
    public Length? PatternOf(Material material) =>
        Runs.FirstOrDefault(run => run.Joints == JointRule.OnPattern && run.Material.Equals(material))?.Lines.Interval;

    /// <summary>The frozen problem, or every fault in the request.</summary>
    public static Result<RunProblem> Create(RunRequest request)
    {
        var faults = new List<Fault>();
        if (request.Stage.Length == 0) faults.Add(RunFaults.StageMissing());
        foreach (var twice in request.Runs.GroupBy(run => run.Name).Where(group => group.Count() > 1)) faults.Add(RunFaults.NameTwice(twice.Key));
        foreach (var run in request.Runs) Check(run, faults);
        CheckTogether(request.Runs, faults);
        CheckStock(request, faults);
        return faults.Count > 0 ? Result<RunProblem>.Fail(faults) : new RunProblem(request);
    }

    private static Run Frozen(Run run) => run with
    {
        Courses = [.. run.Courses.Select(course => course with { Stretches = [.. course.Stretches] })],
        Standing = [.. run.Standing.Select(course => course with { Joints = [.. course.Joints] })],
    };

    private static void Check(Run run, List<Fault> faults)
    {
        var lines = run.Lines;
        if (run.Name.Length == 0) faults.Add(RunFaults.WithoutName());
        if (run.Material is Hardware or Sheet) faults.Add(RunFaults.NotLaid(run.Name, run.Material.Name));
        if (run.Joints == JointRule.OnPattern && run.Material is not FoamPanel) faults.Add(RunFaults.NoPattern(run.Name, run.Material.Name));
        if (run.Joints == JointRule.Anywhere && run.ShortestPiece.IsZero) faults.Add(RunFaults.ShortestMissing(run.Name));
        if (lines.Interval.IsZero || lines.TieSpacing.IsZero || lines.TieSpacing.Units % lines.Interval.Units != 0)
        {
            faults.Add(RunFaults.Spacing(run.Name, lines.Interval, lines.TieSpacing));
            return;
        }

        if (lines.FirstTie >= lines.TieSpacing) faults.Add(RunFaults.FirstTie(run.Name, lines.FirstTie, lines.TieSpacing));
        for (var c = 1; c < run.Courses.Count; c++)
        {
            if (run.Courses[c].Number > run.Courses[c - 1].Number) continue;
            faults.Add(RunFaults.CoursesOutOfOrder(run.Name));
            break;
        }

        if (run.Standing.FirstOrDefault(standing => run.Courses.Any(course => course.Number == standing.Number)) is { } twice) faults.Add(RunFaults.StandsAlready(run.Name, twice.Number));
        foreach (var course in run.Courses)
        {
            if (course.Height.IsZero) faults.Add(RunFaults.CourseWithoutHeight(run.Name, course.Number));
            if (run.Material is FoamPanel panel && course.Height > panel.Height) faults.Add(RunFaults.CourseHeight(run.Name, course.Number, course.Height, panel.Height));
            for (var s = 1; s < course.Stretches.Count; s++)
            {
                if (course.Stretches[s].Start > course.Stretches[s - 1].End) continue;
                faults.Add(RunFaults.StretchesOverlap(run.Name, course.Number));
                break;
            }

            if (course.Stretches.Sum(stretch => stretch.Length.Units) / lines.Interval.Units > MostLines) faults.Add(RunFaults.TooLong(run.Name, MostLines));
        }
    }

    private static void CheckTogether(IReadOnlyList<Run> runs, List<Fault> faults)
    {
        foreach (var leg in runs.GroupBy(run => run.Leg))
        {
            foreach (var run in leg.Skip(1).Where(run => run.Lines != leg.First().Lines && run.Material.Equals(leg.First().Material)))
                faults.Add(RunFaults.OtherLines(run.Name, leg.First().Name, leg.Key));
        }

        foreach (var material in runs.Where(run => run.Joints == JointRule.OnPattern).GroupBy(run => run.Material))
        {
            foreach (var run in material.Skip(1).Where(run => run.Lines.Interval != material.First().Lines.Interval))
                faults.Add(RunFaults.OtherInterval(run.Name, material.First().Name, material.Key.Name));
        }
    }

    private static void CheckStock(RunRequest request, List<Fault> faults)
    {
        var onHand = request.Pieces.Where(piece => piece.OnHand).ToArray();
        foreach (var twice in onHand.Where(piece => !piece.Code.IsNone).GroupBy(piece => piece.Code).Where(group => group.Count() > 1))
            faults.Add(YardFaults.TwoWithOneCode(twice.Key.ToString()));
        foreach (var piece in onHand) faults.AddRange(PieceRules.Check(piece).Faults);
        foreach (var price in request.Prices.All.Where(price => price.Material is not Hardware and not Sheet))
        {
            if (price.Length.IsZero) faults.Add(MatchFaults.StoreLengthMissing(price.Material.Name));
            if (price.Price.Cents < 0) faults.Add(MatchFaults.PriceNegative(price.Material.Name));
        }
    }
}
