using Offcuts.Core.Walls;

namespace Offcuts.Print;

/// <summary>Counted things that a wall takes, as a cut sheet tells them beside its pieces.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Needed">How many are still needed.</param>
/// <param name="FromYard">How many of these the bins have.</param>
public sealed record WallHardware(string Name, long Needed, long FromYard)
{
    /// <summary>How many are lacking.</summary>
    public long Lacking => Needed - FromYard;
}

/// <summary>What a cut sheet says of the wall that its plan fills, beside the pieces.</summary>
/// <param name="Wall">What people call it.</param>
/// <param name="Parts">Where pieces run on under or over an opening and are cut to height there.</param>
/// <param name="Hardware">What is counted.</param>
public sealed record WallOnSheet(string Wall, IReadOnlyList<NotchedPart> Parts, IReadOnlyList<WallHardware> Hardware);
