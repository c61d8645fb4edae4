namespace Offcuts.UseCases;

/// <summary>How far a long piece of work has come.</summary>
/// <param name="What">What is being done, in a few words.</param>
/// <param name="Done">How much of it is done.</param>
/// <param name="Of">How much there is; 0 where that can't be said.</param>
public readonly record struct WorkProgress(string What, int Done, int Of);

/// <summary>Hears how far a change comes that may be long, and whether it is to stop. One that is stopped saves nothing.</summary>
/// <param name="tell">Called often, on the thread that works; it must be quick.</param>
/// <param name="stop">When to stop.</param>
public sealed class LongWork(Action<WorkProgress> tell, CancellationToken stop)
{
    /// <summary>Nobody hears of it and nothing stops it.</summary>
    public static LongWork Unheard { get; } = new(_ => { }, CancellationToken.None);

    /// <summary>Tells how far it has come. Throws <see cref="OperationCanceledException"/> where it is to stop.</summary>
    public void Tell(string what, int done, int of)
    {
        stop.ThrowIfCancellationRequested();
        tell(new WorkProgress(what, done, of));
    }

    /// <summary>For what asks by itself whether it is to stop.</summary>
    public CancellationToken Stop => stop;

    /// <summary>
    /// Works something out that touches no yard. Throws <see cref="OperationCanceledException"/> as soon as it is to stop; what can't be interrupted then
    /// ends by itself, and nobody hears of it.
    /// </summary>
    public T Apart<T>(Func<T> work)
    {
        if (!stop.CanBeCanceled) return work();
        var apart = Task.Run(work, CancellationToken.None);
        Task.WaitAny([apart], stop);
        // What was stopped in the last moment is not whole.
        stop.ThrowIfCancellationRequested();
        return apart.GetAwaiter().GetResult();
    }

    /// <summary>One after the other, told at each.</summary>
    public IEnumerable<T> Through<T>(string what, IReadOnlyList<T> all)
    {
        for (var i = 0; i < all.Count; i++)
        {
            Tell(what, i, all.Count);
            yield return all[i];
        }
    }
}
