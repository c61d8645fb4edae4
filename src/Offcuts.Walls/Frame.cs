using Offcuts.Core.Walls;

namespace Offcuts.Walls;

/// <summary>
/// Two rows of things of one thickness along every leg, with something between: foam and core, or form boards and footing. All
/// figures are units of length along a leg, from its start on the outside face, so that they may be negative.
/// </summary>
/// <param name="Thickness">Of one row.</param>
/// <param name="Core">From row to row.</param>
/// <param name="Legs">In the order of the sheet.</param>
internal sealed record Frame(long Thickness, long Core, IReadOnlyList<FrameLeg> Legs)
{
    /// <summary>From outside face to inside face.</summary>
    public long Whole => Core + 2 * Thickness;

    /// <summary>What a row covers from end to end, openings and tees included.</summary>
    public (long From, long To) Row(FrameLeg leg, Face face, bool runsBy) =>
        (-CornerTable.Change(leg.Start, face, runsBy, Thickness, Whole), leg.Length + CornerTable.Change(leg.End, face, runsBy, Thickness, Whole));

    /// <summary>The gap that a tee leaves in the row on its side: as wide as the core of what meets it there.</summary>
    public (long From, long To) Gap(Tee tee) => (tee.Offset - Core / 2, tee.Offset - Core / 2 + Core);

    /// <summary>
    /// Where the centre line of the core runs, from middle to middle of corners, so that the lines of all legs times the core are its
    /// plan area, each corner once. At a tee it goes on through the gap to the core of the leg that goes through.
    /// </summary>
    public (Half From, Half To) CentreLine(FrameLeg leg) =>
        (new Half(-CentreChange(leg.Start)), new Half(2 * leg.Length + CentreChange(leg.End)));

    /// <summary>The core from end to end: to the far side of it at corners and tees.</summary>
    public (long From, long To) CoreReach(FrameLeg leg) => (-CoreChange(leg.Start), leg.Length + CoreChange(leg.End));

    private long CentreChange(LegEnd end) => end switch
    {
        LegEnd.OutsideCorner => -Whole,
        LegEnd.InsideCorner => Whole,
        LegEnd.Tee => 2 * Thickness,
        _ => 0,
    };

    private long CoreChange(LegEnd end) => end switch
    {
        LegEnd.OutsideCorner => -Thickness,
        LegEnd.InsideCorner => Whole - Thickness,
        LegEnd.Tee => Thickness + Core,
        _ => 0,
    };
}

/// <summary>Twice a length, so that the middle of anything is exact.</summary>
internal readonly record struct Half(long Twice);

/// <summary>A leg within a frame.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Length">Of its outside face.</param>
/// <param name="Start">What it starts at.</param>
/// <param name="End">What it ends at.</param>
/// <param name="First">True where it runs by its corners in the first course.</param>
/// <param name="Tees">What meets its sides.</param>
internal sealed record FrameLeg(string Name, long Length, LegEnd Start, LegEnd End, bool First, IReadOnlyList<Tee> Tees)
{
    /// <summary>True where it runs by its corners in a course, counted from 1.</summary>
    public bool RunsBy(int course, Lap lap) => lap == Lap.Same ? First : First == (course % 2 == 1);
}

/// <summary>Where another leg meets the side of this one.</summary>
/// <param name="Branch">The leg that meets it.</param>
/// <param name="Offset">Where the middle of that leg lies.</param>
/// <param name="Face">On which side.</param>
internal sealed record Tee(string Branch, long Offset, Face Face);
