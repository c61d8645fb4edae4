using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What is back from a loan, or is settled, as it is typed on one line.</summary>
public static class BackWords
{
    private const string Nothing = "nothing";

    /// <summary>What is back: codes one behind the other, and counted things behind commas: <c>K7F3MXX N4PX7AW, panel tie x40</c>.</summary>
    public static Result<(IReadOnlyList<Code> Pieces, IReadOnlyList<Counted> Counted)> Back(string typed, YardFile yard)
    {
        var (pieces, counted, faults, bins) = (new List<Code>(), new List<Counted>(), new List<Fault>(), yard.Bins());
        var away = yard.HandOvers().Where(one => one.Terms.Kind == HandOverKind.Loan).SelectMany(one => one.Items).ToLookup(item => item.Code, item => item.Away);
        foreach (var part in typed.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            // Codes first: the second group of one may begin with an X as a count does.
            var words = CodeWords.Joined(part.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToArray();
            if (!words.All(word => Code.Parse(word).Ok) && part.Contains(" x", StringComparison.OrdinalIgnoreCase))
            {
                if (CountedWords.Read(part, bins, bin => away[bin.Code].Sum()) is var read && read.TryGet(out var some)) counted.AddRange(some);
                else faults.AddRange(read.Faults);
                continue;
            }

            foreach (var word in words)
            {
                if (Code.Parse(word).TryGet(out var code)) pieces.Add(code);
                else faults.AddRange(Code.Parse(word).Faults);
            }
        }

        return faults.Count > 0 ? Result<(IReadOnlyList<Code>, IReadOnlyList<Counted>)>.Fail(faults) : (pieces, counted);
    }

    /// <summary>What does not come back, a colon, and what came in its place, or the word nothing.</summary>
    public static Result<SettleWish> Settled(string typed, YardFile yard)
    {
        var at = Colon(typed);
        if (at <= 0) return HandFaults.SettledUnreadable();
        var instead = typed[(at + 1)..].Trim();
        if (instead.Length == 0) return HandFaults.SettledUnreadable();
        return Back(typed[..at], yard).Then<SettleWish>(gone =>
            new SettleWish(gone.Pieces, gone.Counted, string.Equals(instead, Nothing, StringComparison.OrdinalIgnoreCase) ? [] : [instead]));
    }

    // A scanned label has a colon of its own.
    private static int Colon(string typed)
    {
        var at = typed.IndexOf(':', StringComparison.Ordinal);
        while (at >= 0 && typed[..(at + 1)].EndsWith(Code.QrPrefix, StringComparison.OrdinalIgnoreCase)) at = typed.IndexOf(':', at + 1);
        return at;
    }
}
