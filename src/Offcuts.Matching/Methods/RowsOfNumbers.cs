using System.Runtime.Intrinsics;

namespace Offcuts.Matching.Methods;

/// <summary>Sums over rows of floating-point numbers, four at once whatever the machine takes, so that they come out alike on all.</summary>
internal static class RowsOfNumbers
{
    private const int AtOnce = 4;

    /// <summary>The product of two, as far as the second goes.</summary>
    public static double Dot(double[] row, ReadOnlySpan<double> other)
    {
        var (sums, i) = (Vector256<double>.Zero, 0);
        for (; i <= other.Length - AtOnce; i += AtOnce) sums += Vector256.Create(row.AsSpan(i)) * Vector256.Create(other[i..]);
        var sum = Vector256.Sum(sums);
        for (; i < other.Length; i++) sum += row[i] * other[i];
        return sum;
    }

    /// <summary>Adds one to another so many times.</summary>
    /// <returns>The sum of the squares of what comes out.</returns>
    public static double AddTimes(double[] to, double[] from, double factor, int count)
    {
        var factors = Vector256.Create(factor);
        var (sums, i) = (Vector256<double>.Zero, 0);
        for (; i <= count - AtOnce; i += AtOnce)
        {
            var added = Vector256.Create(to.AsSpan(i)) + factors * Vector256.Create(from.AsSpan(i));
            added.CopyTo(to, i);
            sums += added * added;
        }

        var sum = Vector256.Sum(sums);
        for (; i < count; i++)
        {
            to[i] += factor * from[i];
            sum += to[i] * to[i];
        }

        return sum;
    }
}
