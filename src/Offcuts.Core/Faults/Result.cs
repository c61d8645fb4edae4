using System.Diagnostics.CodeAnalysis;

namespace Offcuts.Core.Faults;

/// <summary>
/// Either a value or the faults that kept it from being made. Holds at least one fault when there is no value.
/// <c>default</c> is a failure without a sentence and is never handed out.
/// </summary>
public readonly struct Result<T>
{
    private readonly T? _value;
    private readonly IReadOnlyList<Fault>? _faults;

    private Result(T? value, IReadOnlyList<Fault>? faults) => (_value, _faults) = (value, faults);

    /// <summary>True where there is a value.</summary>
    public bool Ok => _faults is { Count: 0 };

    /// <summary>The value. Throws <see cref="InvalidOperationException"/> where there is none: ask <see cref="Ok"/> first.</summary>
    public T Value => Ok ? _value! : throw new InvalidOperationException($"No value: {Fault}");

    /// <summary>Every fault found; empty where there is a value.</summary>
    public IReadOnlyList<Fault> Faults => _faults ?? [new Fault("nothing was given")];

    /// <summary>The first fault. Throws where there is none.</summary>
    public Fault Fault => Faults[0];

    /// <summary>Takes the value out where there is one.</summary>
    public bool TryGet([NotNullWhen(true)] out T? value)
    {
        value = _value;
        return Ok;
    }

    /// <summary>Carries a good value on; hands faults through as they are.</summary>
    public Result<TNext> Then<TNext>(Func<T, Result<TNext>> next) => Ok ? next(_value!) : Result<TNext>.Fail(Faults);

    /// <summary>A success.</summary>
    public static Result<T> Of(T value) => new(value, []);

    /// <summary>A failure with at least one fault.</summary>
    public static Result<T> Fail(IReadOnlyList<Fault> faults) =>
        faults.Count > 0 ? new(default, faults) : throw new ArgumentException("A failure needs a fault", nameof(faults));

    /// <summary>A value is a success.</summary>
    public static implicit operator Result<T>(T value) => Of(value);

    /// <summary>A fault is a failure.</summary>
    public static implicit operator Result<T>(Fault fault) => Fail([fault]);
}
