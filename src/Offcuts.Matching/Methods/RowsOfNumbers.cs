using System.Numerics;

namespace Offcuts.Matching.Methods;

/// <summary>Sums over rows of floating-point numbers, several at once.</summary>
internal static class RowsOfNumbers
{
    /// <summary>The product of two, as far as the second goes.</summary>
    public static double Dot(double[] row, ReadOnlySpan<double> other)
    {
        var (sums, i) = (Vector<double>.Zero, 0);
        for (; i <= other.Length - Vector<double>.Count; i += Vector<double>.Count) sums += new Vector<double>(row, i) * new Vector<double>(other[i..]);
        var sum = Vector.Sum(sums);
        for (; i < other.Length; i++) sum += row[i] * other[i];
        return sum;
    }

    /// <summary>Adds one to another so many times.</summary>
    /// <returns>The sum of the squares of what comes out.</returns>
    public static double AddTimes(double[] to, double[] from, double factor, int count)
    {
        var factors = new Vector<double>(factor);
        var (sums, i) = (Vector<double>.Zero, 0);
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count)
        {
            var added = new Vector<double>(to, i) + factors * new Vector<double>(from, i);
            added.CopyTo(to, i);
            sums += added * added;
        }

        var sum = Vector.Sum(sums);
        for (; i < count; i++)
        {
            to[i] += factor * from[i];
            sum += to[i] * to[i];
        }

        return sum;
    }
}
