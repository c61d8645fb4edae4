using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>
/// What a wall asks for, every figure with what it is made of. Before its runs are filled the ties are the regular ones only, and of
/// panels only a least number is known.
/// </summary>
public sealed record Takeoff
{
    /// <summary>The wall.</summary>
    public required LaidWall Wall { get; init; }

    /// <summary>Panels, and form boards where footing forms are asked for.</summary>
    public required IReadOnlyList<RunTakeoff> Runs { get; init; }

    /// <summary>Ties first, then what corners, tees, ends and courses take, each kind once.</summary>
    public required IReadOnlyList<HardwareTakeoff> Hardware { get; init; }

    /// <summary>Bucks, steel, braces, footing.</summary>
    public required IReadOnlyList<CutTakeoff> Cuts { get; init; }

    /// <summary>The core, and the footing where its depth is given.</summary>
    public required IReadOnlyList<ConcreteTakeoff> Concrete { get; init; }

    /// <summary>What was taken for granted, and what a person has to look at.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What to mind; below them stands <see cref="Cautions.Closing"/>.</summary>
    public IReadOnlyList<Caution> Cautions => Core.Yard.Cautions.ForWall(Wall.Sheet.Steel is not null);

    /// <summary>Takes a wall off, for a stage.</summary>
    /// <param name="wall">The wall.</param>
    /// <param name="stage">Name of the stage that its cuts are for.</param>
    public static Takeoff Of(LaidWall wall, string stage)
    {
        var cuts = new CutList(wall.Sheet.Name, stage);
        BuckCuts.Add(cuts, wall);
        SteelCuts.Add(cuts, wall);
        BraceCuts.Add(cuts, wall);
        FootingCuts.Add(cuts, wall);
        return new Takeoff
        {
            Wall = wall,
            Runs = RunsOf(wall, new HashSet<(string Run, int Course)>(), null),
            Hardware = HardwareCounts.Of(wall),
            Cuts = cuts.All(),
            Concrete = ConcreteVolumes.Of(wall),
            Notes = TakeoffNotes.Of(wall),
        };
    }

    /// <summary>
    /// The same with the joints of a plan: one more tie for each joint that has no regular tie on it. Joints of both faces of a leg at
    /// one place of one course share a tie, and so do joints told twice. Form boards have stakes and no ties: joints of theirs count nothing.
    /// </summary>
    /// <param name="joints">Leg, number of the course and place along the axis of the leg's runs, of every joint of the plan.</param>
    public Takeoff WithJoints(IEnumerable<(string Leg, int Course, Length At)> joints)
    {
        var more = ExtraTies(Wall, joints).ToArray();
        if (more.Length == 0) return this;
        return this with { Hardware = WithTies(Hardware, more), Joints = [.. Joints, .. joints], Notes = TakeoffNotes.WithJoints(Notes) };
    }

    // Ties are the first of the hardware.
    private static IReadOnlyList<HardwareTakeoff> WithTies(IReadOnlyList<HardwareTakeoff> hardware, IReadOnlyList<CountLine> more) =>
        [.. hardware.Select((one, i) => i == 0 ? one with { Count = new Count([.. one.Count.Lines, .. more]) } : one)];

    private IReadOnlyList<(string Leg, int Course, Length At)> Joints { get; init; } = [];

    /// <summary>What a wall's needs begin with among those of its stage.</summary>
    public static string NeedPrefix(string wall) => SheetNames.NeedPrefix(wall);

    /// <summary>The wall's hardware as needs of its stage; its cuts are such needs as they stand.</summary>
    public IReadOnlyList<HardwareNeed> HardwareNeeds(string stage) =>
    [
        .. Hardware.Where(one => one.Count.Figure > 0)
            .Select(one => new HardwareNeed(stage, NeedPrefix(Wall.Sheet.Name) + one.Hardware.Name, one.Hardware, checked((int)one.Count.Figure))),
    ];

    /// <summary>
    /// What is left to do: of the runs, their ties and what is at corners, tees, ends and in courses, only the courses that don't stand; of
    /// what is cut and counted out, less what was. A tie of a course that stands and was counted out is used once.
    /// </summary>
    /// <param name="standing">Courses that stand, by name of the run and number.</param>
    /// <param name="done">How many were cut or counted out already, or are to be by a plan, by the name of the need and what it is of: a cut and a counted thing may share a name.</param>
    /// <param name="cutFor">How much of other courses is cut and waits to be stacked: its panels and boards are there, its ties and what else is set with it are not used yet.</param>
    public Takeoff Left(IEnumerable<(string Run, int Course)> standing, Func<string, Material, int> done, IReadOnlyDictionary<(string Run, int Course), Length>? cutFor = null)
    {
        var stands = standing.ToHashSet();
        var open = Wall.Runs.SelectMany(run => run.Courses.Where(course => course.Stretches.Count > 0 && !stands.Contains((run.Name, course.Number))).Select(course => (run.Leg, course.Number))).ToHashSet();
        var hardware = WithTies(HardwareCounts.Of(Wall, (leg, course) => open.Contains((leg, course))), [.. ExtraTies(Wall, Joints.Where(joint => open.Contains((joint.Leg, joint.Course))))]);
        var need = NeedPrefix(Wall.Sheet.Name);
        return this with
        {
            Runs = [.. RunsOf(Wall, stands, cutFor).Where(run => !run.Total.IsZero)],
            Hardware =
            [
                .. from one in Hardware
                   let leftByCourses = hardware.Where(left => left.Hardware.Equals(one.Hardware)).Sum(left => left.Count.Figure)
                   let used = Math.Min(one.Count.Figure, Math.Max(one.Count.Figure - leftByCourses, done(need + one.Hardware.Name, one.Hardware)))
                   select used == 0 ? one : one with { Count = new Count([.. one.Count.Lines, new CountLine("in courses that stand, or counted out already", -used)]) },
            ],
            Cuts =
            [
                .. from cut in Cuts
                   let made = Math.Min(cut.Count.Figure, done(cut.Cut.Name, cut.Cut.Material))
                   where made < cut.Count.Figure
                   select made == 0 ? cut : cut with { Count = new Count([.. cut.Count.Lines, new CountLine("made already, or planned", -made)]), Cut = cut.Cut with { Count = (int)(cut.Count.Figure - made) } },
            ],
        };
    }

    /// <summary>The cleats of so many joints of form boards between two stakes; none where the system has no cleats or no joint needs one.</summary>
    public CutTakeoff? Cleats(string stage, long joints)
    {
        if (Wall.System.Cleat is not { } cleat || joints == 0) return null;
        var cuts = new CutList(Wall.Sheet.Name, stage);
        cuts.Add("footing", "cleat", cleat.Material, cleat.Length, joints, Use.Rough, TreatedWish.Any, "one a joint of form boards between two stakes");
        return cuts.All()[0];
    }

    private static IEnumerable<CountLine> ExtraTies(LaidWall wall, IEnumerable<(string Leg, int Course, Length At)> joints)
    {
        var lines = wall.Runs.DistinctBy(run => run.Leg).ToDictionary(run => run.Leg, run => run.Lines);
        var legs = wall.Legs.ToDictionary(leg => leg.Leg.Name);
        return joints.Distinct()
            .Where(joint => lines.TryGetValue(joint.Leg, out var of) && !of.IsTie(joint.At))
            .GroupBy(joint => (joint.Leg, joint.Course))
            .Select(same => new CountLine($"leg {same.Key.Leg}, course {same.Key.Course}: joints without a regular tie, at {string.Join(", ", same.OrderBy(joint => joint.At).Select(joint => wall.Place(legs[joint.Leg], joint.At)))} from the leg's start", same.Count()));
    }

    private static List<RunTakeoff> RunsOf(LaidWall wall, IReadOnlySet<(string Run, int Course)> standing, IReadOnlyDictionary<(string Run, int Course), Length>? cut)
    {
        Length Open(Run run, Course course) =>
            Length.FromUnits(Math.Max(0, course.Stretches.Sum(stretch => stretch.Length.Units) - (cut?.GetValueOrDefault((run.Name, course.Number)).Units ?? 0)));
        bool IsOpen(Run run, Course course) => !standing.Contains((run.Name, course.Number)) && (cut is null || !cut.ContainsKey((run.Name, course.Number)) || !Open(run, course).IsZero);
        RunTakeoff Taken(IReadOnlyList<Run> runs, Length whole)
        {
            var lines = runs.Select(run => (Run: run, Courses: run.Courses.Where(course => IsOpen(run, course)).ToArray()))
                .Where(run => run.Courses.Length > 0)
                .Select(run => (
                    What: $"{run.Run.Name}: {run.Courses.Length} {(run.Courses.Length == 1 ? "course" : "courses")}",
                    Length: Length.FromUnits(run.Courses.Sum(course => Open(run.Run, course).Units)))).ToArray();
            return new RunTakeoff(runs[0].Material, whole, Length.FromUnits(lines.Sum(line => line.Length.Units)), lines);
        }

        var taken = new List<RunTakeoff> { Taken(wall.Runs, wall.System.PanelLength) };
        if (wall.FootingRuns.Count > 0) taken.Add(Taken(wall.FootingRuns, Length.Zero));
        return taken;
    }
}
