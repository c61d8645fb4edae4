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
            Runs = RunsOf(wall),
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
        var lines = Wall.Runs.DistinctBy(run => run.Leg).ToDictionary(run => run.Leg, run => run.Lines);
        var more = joints.Distinct()
            .Where(joint => lines.TryGetValue(joint.Leg, out var of) && !of.IsTie(joint.At))
            .GroupBy(joint => (joint.Leg, joint.Course))
            .Select(same => new CountLine($"leg {same.Key.Leg}, course {same.Key.Course}: joints without a regular tie", same.Count()))
            .ToArray();
        if (more.Length == 0) return this;
        return this with
        {
            Hardware = [.. Hardware.Select((one, i) => i == 0 ? one with { Count = new Count([.. one.Count.Lines, .. more]) } : one)],
        };
    }

    /// <summary>What a wall's needs begin with among those of its stage.</summary>
    public static string NeedPrefix(string wall) => SheetNames.NeedPrefix(wall);

    /// <summary>The wall's hardware as needs of its stage; its cuts are such needs as they stand.</summary>
    public IReadOnlyList<HardwareNeed> HardwareNeeds(string stage) =>
    [
        .. Hardware.Where(one => one.Count.Figure > 0)
            .Select(one => new HardwareNeed(stage, NeedPrefix(Wall.Sheet.Name) + one.Hardware.Name, one.Hardware, checked((int)one.Count.Figure))),
    ];

    /// <summary>The same less what was cut and counted out already; what is all done is gone.</summary>
    /// <param name="done">How many, by the name of the need.</param>
    public Takeoff Still(Func<string, int> done)
    {
        Count Less(Count count, string need) => done(need) is > 0 and var made ? new Count([.. count.Lines, new CountLine("done already", -Math.Min(made, count.Figure))]) : count;
        return this with
        {
            Hardware = [.. Hardware.Select(one => one with { Count = Less(one.Count, NeedPrefix(Wall.Sheet.Name) + one.Hardware.Name) })],
            Cuts =
            [
                .. from cut in Cuts
                   let left = Less(cut.Count, cut.Cut.Name)
                   where left.Figure > 0
                   select cut with { Count = left, Cut = cut.Cut with { Count = (int)left.Figure } },
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

    private static List<RunTakeoff> RunsOf(LaidWall wall)
    {
        RunTakeoff Taken(IReadOnlyList<Run> runs, Length whole)
        {
            var lines = runs.Select(run => (
                What: $"{run.Name}: {run.Courses.Count} {(run.Courses.Count == 1 ? "course" : "courses")}",
                Length: Length.FromUnits(run.Courses.Sum(course => course.Stretches.Sum(stretch => stretch.Length.Units))))).ToArray();
            return new RunTakeoff(runs[0].Material, whole, Length.FromUnits(lines.Sum(line => line.Length.Units)), lines);
        }

        var taken = new List<RunTakeoff> { Taken(wall.Runs, wall.System.PanelLength) };
        if (wall.FootingRuns.Count > 0) taken.Add(Taken(wall.FootingRuns, Length.Zero));
        return taken;
    }
}
