using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>
/// Whose a piece is that came from another yard: who lent it first and did not get it back. Coming once more, from somebody to whom it was lent on
/// from here, makes it nobody else's.
/// </summary>
/// <param name="taken">Every hand-over of another yard that was taken in.</param>
/// <param name="gone">Everything that went from this yard.</param>
/// <param name="arrivals">By what each piece came, one after the other.</param>
internal sealed class Whose(IReadOnlyList<TakenIn> taken, IReadOnlyList<HandOver> gone, ILookup<Code, string> arrivals)
{
    private readonly Dictionary<string, TakenIn> _taken = taken.ToDictionary(one => one.Transfer);
    private readonly ILookup<Code, (HandOver By, HandOverItem Item)> _gone = gone.SelectMany(by => by.Items.Select(item => (By: by, Item: item))).ToLookup(one => one.Item.Code);

    /// <summary>The loan by which it is borrowed, or where it went back, the last by which it was; none where it never was.</summary>
    public (TakenIn? By, bool Open) Loan(Code code)
    {
        TakenIn[] came = [.. arrivals[code].Select(transfer => _taken[transfer])];
        TakenIn[] loans = [.. came.Where((one, at) => one.Terms.Kind == HandOverKind.Loan && !CameAgain(came, at) && !OnlyReturned(code, came, at))];
        return loans.FirstOrDefault(one => !WentBack(code, one)) is { } open ? (open, true) : (loans.LastOrDefault(), false);
    }

    // Who hands the same piece over a second time had it back before: only the last time counts. Of two who are not named nobody knows whether they are one.
    private static bool CameAgain(TakenIn[] came, int at) => came[at].Terms.To.Length > 0 && came.Skip(at + 1).Any(later => Same(later.Terms.To, came[at].Terms.To));

    // Somebody had it from here, and from nobody else as far as is known: what comes from them is no loan of theirs, whatever their file calls it.
    private bool OnlyReturned(Code code, TakenIn[] came, int at) =>
        at > 0 && !came.Take(at).Any(before => Same(before.Terms.To, came[at].Terms.To)) && _gone[code].Any(one => Same(one.By.Terms.To, came[at].Terms.To) && one.By.Day <= came[at].Day);

    private bool WentBack(Code code, TakenIn loan) => _gone[code].Any(one => one.Item.Gone > 0 && Same(one.By.Terms.To, loan.Terms.To.Length > 0 ? loan.Terms.To : Borrowed.Nobody));

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
