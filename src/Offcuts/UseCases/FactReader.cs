using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Reads single facts as a person types them.</summary>
public static class FactReader
{
    /// <summary>sound, fair or poor.</summary>
    public static Result<Condition> Condition(string text) =>
        Enum.GetValues<Condition>().Cast<Condition?>().FirstOrDefault(one => Same(Words.Of(one!.Value), text)) is { } condition
            ? condition
            : YardFaults.ConditionUnknown(text.Trim());

    /// <summary>A use.</summary>
    public static Result<Use> Use(string text) =>
        Enum.GetValues<Use>().Cast<Use?>().FirstOrDefault(one => Same(Words.Of(one!.Value), text)) is { } use
            ? use
            : YardFaults.UseUnknown(text.Trim());

    /// <summary>yes or no.</summary>
    public static Result<bool> YesNo(string text) =>
        Same("yes", text) ? true : Same("no", text) ? false : YardFaults.YesNoUnknown(text.Trim());

    /// <summary><c>start..end; start..end</c> from the marked end, or none.</summary>
    public static Result<IReadOnlyList<Span>> BadSpots(string text, LengthUnit unit)
    {
        var spots = new List<Span>();
        if (Same("none", text)) return Result<IReadOnlyList<Span>>.Of(spots);
        foreach (var part in text.Split([';', ','], StringSplitOptions.RemoveEmptyEntries))
        {
            var ends = part.Split("..");
            if (ends.Length != 2) return YardFaults.BadSpotBackwards();
            var (start, end) = (Length.Parse(ends[0], unit), Length.Parse(ends[1], unit));
            if (!start.Ok || !end.Ok) return Result<IReadOnlyList<Span>>.Fail([.. start.Faults, .. end.Faults]);
            if (end.Value <= start.Value) return YardFaults.BadSpotBackwards();
            spots.Add(new Span(start.Value, end.Value));
        }

        return Result<IReadOnlyList<Span>>.Of(spots);
    }

    /// <summary><c>left; right</c>, or the left alone.</summary>
    public static Result<(Length Left, Length Right)> Trim(string text, LengthUnit unit)
    {
        var parts = text.Split(';');
        if (parts.Length > 2) return YardFaults.TrimUnreadable();
        var left = Length.Parse(parts[0], unit);
        var right = parts.Length == 2 ? Length.Parse(parts[1], unit) : Length.Zero;
        return left.Ok && right.Ok ? (left.Value, right.Value) : Result<(Length, Length)>.Fail([.. left.Faults, .. right.Faults]);
    }

    private static bool Same(string word, string text) => string.Equals(word, text.Trim(), StringComparison.OrdinalIgnoreCase);
}
