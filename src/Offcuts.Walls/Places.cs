using Offcuts.Core.Measures;

namespace Offcuts.Walls;

/// <summary>Places and numbers of courses, as they are written where a figure is opened.</summary>
internal static class Places
{
    /// <summary>A place on the axis of a leg's runs, from the leg's start on its outside face; before it with a minus.</summary>
    public static string At(LaidLeg leg, Length onAxis) => At(onAxis.Units - leg.AxisBefore.Units);

    /// <summary>So many units from a leg's start; before it with a minus.</summary>
    public static string At(long units) => (units < 0 ? "-" : "") + LengthText.Faithful(Length.FromUnits(Math.Abs(units)), LengthUnit.Inch);

    /// <summary>1, 2, 3, 5, 7, 8 is told as 1-3, 5, 7, 8.</summary>
    public static string Numbers(IReadOnlyList<int> numbers)
    {
        var parts = new List<string>();
        for (var i = 0; i < numbers.Count;)
        {
            var end = i;
            while (end + 1 < numbers.Count && numbers[end + 1] == numbers[end] + 1) end++;
            if (end - i < 2) end = i;
            parts.Add(end == i ? $"{numbers[i]}" : $"{numbers[i]}-{numbers[end]}");
            i = end + 1;
        }

        return string.Join(", ", parts);
    }
}
