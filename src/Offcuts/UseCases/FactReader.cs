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
    public static Result<IReadOnlyList<Span>> BadSpots(string text, LengthUnit unit, Length end) =>
        Same("none", text) ? Result<IReadOnlyList<Span>>.Of([]) : BadSpotText.Read(text, unit, end);

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
