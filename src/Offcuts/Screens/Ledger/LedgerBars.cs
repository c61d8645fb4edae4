using Offcuts.Core.Measures;

namespace Offcuts.Screens;

/// <summary>
/// Money drawn to one scale. Every sign is a plain letter with a meaning of its own, so that the bars read without colour and where
/// lines can't be drawn.
/// </summary>
/// <param name="Least">The least amount that is drawn, in cents: 0 or below.</param>
/// <param name="Most">The greatest, above the least.</param>
/// <param name="Width">Columns of the drawing.</param>
internal sealed record LedgerBars(long Least, long Most, int Width)
{
    /// <summary>What the signs of <see cref="Stage"/> mean.</summary>
    public const string StageLegend = "$ spent and = saved are the cost all new; < spent over it";

    /// <summary>What the signs of <see cref="Step"/> mean.</summary>
    public const string TimeLegend = "- saved before, = saved then, < lost then, | nothing";

    private static readonly long[] Rounds = [1, 2, 5];

    /// <summary>A scale on which all these amounts, and nothing, can be drawn.</summary>
    public static LedgerBars For(IEnumerable<Money> amounts, int width)
    {
        var cents = amounts.Select(amount => amount.Cents).Append(0).ToArray();
        return new LedgerBars(cents.Min(), Math.Max(cents.Max(), cents.Min() + 1), Math.Max(10, width));
    }

    /// <summary>The column of an amount, from 0.</summary>
    public int Column(Money amount) => (int)Math.Round((amount.Cents - Least) * (decimal)(Width - 1) / (Most - Least));

    /// <summary>Of what would have been the cost all new: what was spent and what was saved.</summary>
    public string Stage(Money allNew, Money spent)
    {
        var bar = Blank();
        Fill(bar, Money.Zero, spent < allNew ? spent : allNew, '$');
        if (spent > allNew) Fill(bar, allNew, spent, '<');
        else Fill(bar, spent, allNew, '=');
        return Text(bar);
    }

    /// <summary>What had been saved before, and what came or went then.</summary>
    public string Step(Money before, Money after)
    {
        var bar = Blank();
        Fill(bar, Money.Zero, after < before ? after : before, '-');
        Fill(bar, before, after, after < before ? '<' : '=');
        return Text(bar);
    }

    /// <summary>Marks under which the amounts of <see cref="Marks"/> stand.</summary>
    public string Tape()
    {
        var tape = new string('─', Width).ToCharArray();
        foreach (var mark in Marks()) tape[Column(mark)] = '┴';
        return new string(tape);
    }

    /// <summary>The amounts of the marks, written over them as far as they fit.</summary>
    public string Figures(string sign)
    {
        var line = new string(' ', Width + 12).ToCharArray();
        var free = 0;
        foreach (var mark in Marks())
        {
            var text = mark.Cents % 100 == 0 ? mark.ToText(sign)[..^3] : mark.ToText(sign);
            var at = Math.Max(0, Column(mark) - text.Length / 2);
            if (at < free) continue;
            text.CopyTo(0, line, at, text.Length);
            free = at + text.Length + 2;
        }

        return new string(line).TrimEnd();
    }

    // Round amounts, none nearer than 12 columns to the next.
    private IEnumerable<Money> Marks()
    {
        var room = Math.Max(1, Width / 12);
        var step = Steps().First(step => (Most - Least) / step <= room);
        for (var at = Least / step * step; at <= Most; at += step)
            if (at >= Least) yield return new Money(at);
    }

    private static IEnumerable<long> Steps()
    {
        for (var ten = 1L; ; ten *= 10)
            foreach (var round in Rounds) yield return ten * round;
    }

    private char[] Blank() => new string(' ', Width).ToCharArray();

    // What is there at all takes a column at least.
    private void Fill(char[] bar, Money from, Money to, char sign)
    {
        if (from == to) return;
        var (a, b) = from < to ? (Column(from), Column(to)) : (Column(to), Column(from));
        for (var i = a; i < Math.Max(b, a + 1) && i < bar.Length; i++) bar[i] = sign;
    }

    private string Text(char[] bar)
    {
        var zero = Column(Money.Zero);
        if (bar[zero] == ' ') bar[zero] = '|';
        return new string(bar).TrimEnd();
    }
}
