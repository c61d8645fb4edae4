namespace Offcuts.Screens;

/// <summary>A place's state with one typed line whose text is saved.</summary>
/// <typeparam name="TSelf">The state itself.</typeparam>
internal interface IHasLine<TSelf>
{
    /// <summary>The line.</summary>
    EntryLine Line { get; }

    /// <summary>The same with another line.</summary>
    TSelf With(EntryLine line);
}

/// <summary>Lines that were entered while one before them was on its way.</summary>
internal static class EnteredLines
{
    /// <summary>The next of them goes now, as if Enter were pressed on it; where none waits, what stands on the line is read.</summary>
    /// <param name="state">The state, the line before arrived.</param>
    /// <param name="read">Reads what stands on the line.</param>
    /// <param name="entered">What Enter does.</param>
    public static Turn<TState> Next<TState>(TState state, Func<TState, TState> read, Func<TState, Turn<TState>> entered)
        where TState : IHasLine<TState>
    {
        if (state.Line.TakeEntered() is not { } next) return new(read(state));
        var turn = entered(read(state.With(next.Line)));
        return turn with { State = turn.State.With(turn.State.Line.Followed(next.Since)) };
    }
}
