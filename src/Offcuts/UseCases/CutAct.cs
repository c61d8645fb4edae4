using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>One piece of a plan that was cut.</summary>
/// <param name="Index">Which of the plan's pieces, from 0.</param>
/// <param name="Otherwise">What really came of it; null where it was cut as planned.</param>
public sealed record CutAct(int Index, WhatHappened? Otherwise = null)
{
    /// <summary>The piece with only some of its cuts made, each where it was planned; none where it was cut whole or otherwise.</summary>
    internal PlannedPiece? Really { get; init; }

    /// <summary>True where it lies in a wall already: what of it is bad lies there with it, and there is nothing to say of where it was sawn.</summary>
    internal bool Lies { get; init; }
}

/// <summary>What really came of a piece that was not cut as planned.</summary>
/// <param name="Made">Which of its planned cuts came out right, by their place in the piece's list.</param>
/// <param name="Left">What is left of it and goes back to the yard, narrower boards and the strips beside its cuts too; everything else is scrap.</param>
public sealed record WhatHappened(IReadOnlyList<int> Made, IReadOnlyList<LeftPiece> Left)
{
    /// <summary>What is left and is as wide as the piece was.</summary>
    public IEnumerable<LeftPiece> Lengths => Left.Where(left => left.Narrower is null);

    /// <summary>What is left and is narrower.</summary>
    public IEnumerable<LeftPiece> Strips => Left.Where(left => left.Narrower is not null);

    /// <summary>What happened to this piece; what is said to be of its own material is as wide as it was.</summary>
    public static WhatHappened To(PlannedPiece planned, IReadOnlyList<int> made, IReadOnlyList<LeftPiece> left) =>
        new(made, [.. left.Select(one => planned.Material.Equals(one.Narrower) ? one with { Narrower = null } : one)]);
}
