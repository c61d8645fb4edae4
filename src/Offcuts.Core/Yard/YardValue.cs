using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Yard;

/// <summary>
/// What a usable length would cost to replace, discounted for being short and for its condition.
/// </summary>
/// <remarks>
/// With store lengths s1 &lt; .. &lt; sm at prices p1 .. pm, for a length l:
/// 0 below the keep length; p1 (l/s1)^2 up to s1; along the straight lines through (si, pi) up to sm; pm l/sm above;
/// times 1.0, 0.7 or 0.4 for sound, fair or poor; rounded half up to the cent once, at the end.
/// Squaring below s1 makes a long piece worth more whole than in parts.
/// </remarks>
public static class YardValue
{
    /// <summary>Tenths of its value that a piece keeps in its condition.</summary>
    public static int Tenths(Condition condition) => condition switch
    {
        Condition.Sound => 10,
        Condition.Fair => 7,
        _ => 4,
    };

    /// <summary>The value of one usable length. Zero where the material has no price. Exact until the one rounding.</summary>
    /// <param name="length">Usable length.</param>
    /// <param name="condition">Condition of the piece.</param>
    /// <param name="prices">Store prices by which it is valued, in any order; see <see cref="PriceBook.ForValue"/>.</param>
    /// <param name="keep">Shortest length worth a label.</param>
    public static Money Of(Length length, Condition condition, IReadOnlyList<StorePrice> prices, Length keep)
    {
        if (length < keep || length.IsZero) return Money.Zero;
        var points = prices.Where(price => !price.Length.IsZero).OrderBy(price => price.Length).ToArray();
        if (points.Length == 0) return Money.Zero;
        var (top, bottom) = Whole(length.Units, points);
        top *= Tenths(condition);
        bottom *= 10;
        return new Money((long)((2 * top + bottom) / (2 * bottom)));
    }

    // The value as a ratio of whole numbers of cents. A price is under 2^30 and a length under 2^39 units (Length.FromUnits),
    // so that even price x length x length x 20 stays under 2^113.
    private static (Int128 Top, Int128 Bottom) Whole(Int128 length, StorePrice[] points)
    {
        Int128 S(int i) => points[i].Length.Units;
        Int128 P(int i) => points[i].Price.Cents;

        if (length <= S(0)) return (P(0) * length * length, S(0) * S(0));
        for (var i = 1; i < points.Length; i++)
        {
            if (length > S(i)) continue;
            var step = S(i) - S(i - 1);
            return (P(i - 1) * step + (P(i) - P(i - 1)) * (length - S(i - 1)), step);
        }

        var last = points.Length - 1;
        return (P(last) * length, S(last));
    }
}
