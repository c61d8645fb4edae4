namespace Offcuts.Core.Plans;

/// <summary>How far one piece of a kept plan has come.</summary>
public enum StepState
{
    /// <summary>Not yet cut.</summary>
    Waiting,

    /// <summary>Cut as planned.</summary>
    Done,

    /// <summary>Cut, but not as planned; what really happened stands in the history.</summary>
    DoneOtherwise,

    /// <summary>Given up, because the rest was matched again.</summary>
    Dropped,
}

/// <summary>A plan that the yard keeps, with how far each of its pieces has come.</summary>
/// <param name="Id">Its number in the yard, from 1.</param>
/// <param name="Made">The day it was made.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Steps">One state for each of the plan's pieces, in their order.</param>
/// <param name="HardwareDone">True once the hardware has been counted out.</param>
public sealed record KeptPlan(int Id, DateOnly Made, Plan Plan, IReadOnlyList<StepState> Steps, bool HardwareDone)
{
    /// <summary>True while something of it waits to be done.</summary>
    public bool Open => Steps.Contains(StepState.Waiting) || (!HardwareDone && Plan.Hardware.Any(fill => fill.FromYard + fill.ToBuy > 0));
}
