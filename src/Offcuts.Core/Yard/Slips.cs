namespace Offcuts.Core.Yard;

/// <summary>How far two words are apart for a hand that slips.</summary>
internal static class Slips
{
    /// <summary>
    /// How many slips make one of the other: a letter too many, missing, wrong, or swapped with its neighbour. This is the optimal
    /// string alignment distance. Case counts.
    /// </summary>
    public static int Between(string a, string b)
    {
        var table = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) table[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) table[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var wrong = table[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                table[i, j] = Math.Min(wrong, Math.Min(table[i - 1, j], table[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    table[i, j] = Math.Min(table[i, j], table[i - 2, j - 2] + 1);
            }
        }

        return table[a.Length, b.Length];
    }
}
