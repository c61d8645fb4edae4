using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>A leg as it is laid out.</summary>
/// <param name="Leg">The leg of the sheet.</param>
/// <param name="Outside">On which hand its outside lies, of somebody who walks from its start to its end.</param>
/// <param name="Start">What it starts at.</param>
/// <param name="End">What it ends at.</param>
/// <param name="RunsByFirst">True where it runs by its corners in the first course.</param>
/// <param name="AxisBefore">How far the axis of its runs begins before the leg's start on its outside face.</param>
public sealed record LaidLeg(Leg Leg, Hand Outside, LegEnd Start, LegEnd End, bool RunsByFirst, Length AxisBefore);

/// <summary>
/// A wall with its legs put on the ground: what to lay, course by course. Made by <see cref="Of"/>, which refuses a wall that can't
/// be; everything counted from it is in <see cref="Takeoff"/>.
/// </summary>
/// <remarks>The rules, and what was decided where the definition is silent, stand in README.md beside this file's source.</remarks>
public sealed class LaidWall
{
    private readonly IReadOnlyList<PlacedLeg> _placed;

    private LaidWall(WallSheet sheet, SystemSheet system, LengthUnit unit, IReadOnlyList<PlacedLeg> placed, Frame foam, Frame? boards)
    {
        (Sheet, System, Unit, _placed, Foam, Boards) = (sheet, system, unit, placed, foam, boards);
        Lap = sheet.Lap ?? system.Lap;
        Layers = Layer.Of(sheet.Height, system.PanelHeight);
        Legs = [.. placed.Zip(foam.Legs, (at, leg) => new LaidLeg(at.Leg, at.Outside, at.Start, at.End, leg.First, Length.FromUnits(Shift(foam, leg))))];
        Runs = RunMaker.Foam(this);
        FootingRuns = boards is null ? [] : RunMaker.Footing(this, boards);
        Notches = [.. foam.Legs.SelectMany(NotchesOf)];
    }

    /// <summary>The sheet.</summary>
    public WallSheet Sheet { get; }

    /// <summary>What it is built of.</summary>
    public SystemSheet System { get; }

    /// <summary>In which unit its places and spacings are told where a figure is opened.</summary>
    public LengthUnit Unit { get; }

    /// <summary>How its corners are laid.</summary>
    public Lap Lap { get; }

    /// <summary>Its legs, in the order of the sheet.</summary>
    public IReadOnlyList<LaidLeg> Legs { get; }

    /// <summary>How many courses it has, the last perhaps ripped to the rest of the height.</summary>
    public int Courses => Layers.Count;

    /// <summary>Two runs of foam a leg: outside, then inside.</summary>
    public IReadOnlyList<Run> Runs { get; }

    /// <summary>Two runs of form boards a leg, of one course; empty where no footing forms are asked for.</summary>
    public IReadOnlyList<Run> FootingRuns { get; }

    /// <summary>Where pieces are cut to height around openings.</summary>
    public IReadOnlyList<Notch> Notches { get; }

    /// <summary>What a person has to look at where it is laid out as its sheet says: ends that touch a side with nothing said of it, and stretches that nothing can fill. A sentence each.</summary>
    public IReadOnlyList<string> ToLookAt => [.. TouchingEnds.Of(_placed, Foam.Whole, Unit), .. Unfillable.Of(this).Select(stretch => $"! {stretch.Says}.")];

    internal IReadOnlyList<Layer> Layers { get; }

    internal Frame Foam { get; }

    internal Frame? Boards { get; }

    /// <summary>Lays out a wall with its system, or says everything that keeps it from being built.</summary>
    /// <param name="sheet">The wall.</param>
    /// <param name="system">What it is built of.</param>
    /// <param name="unit">In which unit what is told of it is written.</param>
    public static Result<LaidWall> Of(WallSheet sheet, SystemSheet system, LengthUnit unit)
    {
        var checkedSystem = SystemRules.Check(system);
        if (!checkedSystem.Ok) return Result<LaidWall>.Fail(checkedSystem.Faults);
        var faults = WallRules.Faults(sheet, system);
        // While a sheet is typed leg by leg its legs can't stand yet; its openings are looked at all the same.
        if (faults.Count > 0) return Result<LaidWall>.Fail([.. faults, .. GroundRules.OpeningsOf(sheet)]);

        var whole = sheet.CoreWidth.Units + 2 * system.Thickness.Units;
        var placed = Chains.Of(sheet, whole, faults);
        if (faults.Count > 0) return Result<LaidWall>.Fail([.. faults, .. GroundRules.OpeningsOf(sheet)]);
        var foam = FrameMaker.Foam(placed, system.Thickness.Units, sheet.CoreWidth.Units);
        faults.AddRange(GroundRules.Faults(sheet, system, placed, foam));
        var boards = sheet.Footing is { } footing ? FrameMaker.Boards(footing, foam) : null;
        if (faults.Count == 0 && boards is not null) faults.AddRange(FrameMaker.Faults(boards));
        return faults.Count > 0 ? Result<LaidWall>.Fail(faults) : new LaidWall(sheet, system, unit, placed, foam, boards);
    }

    /// <summary>Numbers of the courses that lie wholly within an opening's height, so that it takes its width out of them.</summary>
    public IReadOnlyList<int> CoursesTakenBy(Opening opening) => [.. Layers.Where(layer => layer.IsTakenBy(opening)).Select(layer => layer.Number)];

    /// <summary>A measure of its sheet as it is told where a figure is opened; nothing is rounded.</summary>
    internal string Told(Length length) => Unit == LengthUnit.Inch ? length.ToString() : LengthText.In(Unit, length);

    /// <summary>A measure as a tape shows it; nothing is rounded.</summary>
    internal string OnTape(Length length) => LengthText.OnTape(length, Unit);

    /// <summary>A place so many units from a leg's start; before it with a minus.</summary>
    internal string Place(long units) => (units < 0 ? "-" : "") + OnTape(Length.FromUnits(Math.Abs(units)));

    /// <summary>A place on the axis of a leg's runs, from the leg's start on its outside face.</summary>
    internal string Place(LaidLeg leg, Length onAxis) => Place(onAxis.Units - leg.AxisBefore.Units);

    /// <summary>The rows of a leg in a course.</summary>
    internal Rows RowsOf(FrameLeg leg, Layer layer) => Rows.Of(
        Foam,
        leg,
        leg.RunsBy(layer.Number, Lap),
        SheetLeg(leg).Openings.Where(layer.IsTakenBy).Select(opening => (opening.Offset.Units, opening.End.Units)));

    /// <summary>The leg of the sheet that a frame's leg stands for.</summary>
    internal Leg SheetLeg(FrameLeg leg) => _placed[Foam.Legs.TakeWhile(one => one.Name != leg.Name).Count()].Leg;

    /// <summary>Corners, each by the names of its two legs, in the order of the sheet.</summary>
    internal IEnumerable<(string Leg, string Next)> Corners() =>
        from leg in _placed
        where leg.Leg.Turn != Turn.End
        select (leg.Leg.Name, _placed.First(next => next.At == leg.Finish && next.Start is LegEnd.OutsideCorner or LegEnd.InsideCorner).Leg.Name);

    /// <summary>How far the axis of a leg's runs begins before its start: as far as an inside row reaches at an inside corner.</summary>
    internal static long Shift(Frame frame, FrameLeg leg) => leg.Start == LegEnd.InsideCorner ? frame.Whole : 0;

    private IEnumerable<Notch> NotchesOf(FrameLeg leg) =>
        from layer in Layers
        from opening in SheetLeg(leg).Openings
        where layer.IsTouchedBy(opening) && !layer.IsTakenBy(opening)
        let shift = Shift(Foam, leg)
        select new Notch(
            leg.Name,
            layer.Number,
            opening.Name,
            new Span(Length.FromUnits(opening.Offset.Units + shift), Length.FromUnits(opening.End.Units + shift)),
            Length.FromUnits(Math.Max(0, opening.Sill.Units - layer.Bottom)),
            Length.FromUnits(Math.Max(0, layer.Top - opening.Top.Units)));
}
