namespace Offcuts.Walls;

/// <summary>Numbers of courses, as they are written where a figure is opened.</summary>
internal static class Places
{
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
