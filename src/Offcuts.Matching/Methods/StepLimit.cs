namespace Offcuts.Matching.Methods;

/// <summary>How many steps a linear program may still take; whether it is over is asked every hundred steps.</summary>
internal sealed class StepLimit(int most, Func<bool>? over = null)
{
    private const int BetweenQuestions = 100;

    private int _taken;

    /// <summary>True where one more may be taken, which is counted.</summary>
    public bool Next() => _taken < most && (_taken++ % BetweenQuestions != 0 || over is null || !over());
}
