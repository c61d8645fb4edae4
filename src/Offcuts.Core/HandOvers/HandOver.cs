using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.HandOvers;

/// <summary>On what terms something goes.</summary>
public enum HandOverKind
{
    /// <summary>For good, and for nothing.</summary>
    Gift,

    /// <summary>To come back.</summary>
    Loan,

    /// <summary>For money.</summary>
    Sale,
}

/// <summary>One piece, or so many counted things out of one bin, of a hand-over.</summary>
/// <param name="Code">The piece's code, or the bin's.</param>
/// <param name="Count">How many; 1 for a piece.</param>
/// <param name="Back">How many of them came back; 0 to <paramref name="Count"/>.</param>
/// <param name="Settled">How many of a loan are settled: they don't come back; 0 to what did not come back.</param>
/// <param name="SettledAs">What came in their place, in words and codes; empty where nothing did.</param>
public sealed record HandOverItem(Code Code, int Count = 1, int Back = 0, int Settled = 0, string SettledAs = "")
{
    /// <summary>Longest text of what came in their place.</summary>
    public const int LongestSettledAs = 500;

    /// <summary>The yard value of them together on the day they went; none in a hand-over from before that was written down for each.</summary>
    public Money? Worth { get; init; }

    /// <summary>Their weight together, 0 where it is not known; none in a hand-over from before that was written down for each.</summary>
    public long? WeightThousandthsLb { get; init; }

    /// <summary>How many are still away and expected back.</summary>
    public int Away => Count - Back - Settled;

    /// <summary>How many did not come back, expected or not.</summary>
    public int Gone => Count - Back;
}

/// <summary>On what terms, and to whom, something goes.</summary>
/// <param name="To">To whom, in the user's words.</param>
/// <param name="Kind">Gift, loan or sale.</param>
/// <param name="Price">What is paid, for a sale; else none.</param>
/// <param name="DueOn">For a loan, the day by which it is due back, where one was said.</param>
/// <param name="Due">For a loan, what else was agreed.</param>
public sealed record Terms(string To, HandOverKind Kind, Money? Price = null, DateOnly? DueOn = null, string Due = "")
{
    /// <summary>Longest text of what was agreed.</summary>
    public const int LongestDue = 500;

    /// <summary>Every fault in them.</summary>
    public IReadOnlyList<Fault> Faults()
    {
        var faults = new List<Fault>();
        if (To.Length == 0) faults.Add(HandFaults.ToWhom());
        PieceRules.CheckText(faults, "name", To, PieceRules.LongestName);
        PieceRules.CheckText(faults, "agreement", Due, LongestDue);
        if (Kind == HandOverKind.Sale != Price is not null) faults.Add(HandFaults.OneKind());
        if (Kind != HandOverKind.Loan && (DueOn is not null || Due.Length > 0)) faults.Add(HandFaults.DueWithoutLoan());
        if (Price is { } price && (price < Money.Zero || price > Money.Largest)) faults.Add(MeasureFaults.MoneyAbsurd(0));
        return faults;
    }
}

/// <summary>Something that went to somebody else's build.</summary>
/// <param name="Id">Its number in this yard, from 1.</param>
/// <param name="Transfer">The name by which both yards know it; see <see cref="Transfers"/>.</param>
/// <param name="Day">The day it went.</param>
/// <param name="Terms">On what terms, and to whom.</param>
/// <param name="Worth">Its yard value on that day.</param>
/// <param name="WeightThousandthsLb">Its weight, as far as it is known.</param>
/// <param name="ConfirmedOn">The day the other side's receipt came; none before.</param>
/// <param name="Items">What went, in the order of the list.</param>
public sealed record HandOver(
    int Id, string Transfer, DateOnly Day, Terms Terms, Money Worth, long WeightThousandthsLb, DateOnly? ConfirmedOn, IReadOnlyList<HandOverItem> Items)
{
    /// <summary>The weight.</summary>
    public Weight Weight => new(WeightThousandthsLb / 1000m);

    /// <summary>
    /// What of it did not come back was worth on the day it went; none where something came back whose value by itself was not written down.
    /// </summary>
    public Money? WorthGone => Returned(Worth.Cents, item => item.Worth?.Cents) is { } back ? new Money(Worth.Cents - back) : null;

    /// <summary>The weight of what did not come back, as far as it is known; none as with <see cref="WorthGone"/>.</summary>
    public Weight? WeightGone => Returned(WeightThousandthsLb, item => item.WeightThousandthsLb) is { } back ? new Weight((WeightThousandthsLb - back) / 1000m) : null;

    // How much of a sum over all things came back; counted things out of one bin share theirs evenly.
    private long? Returned(long all, Func<HandOverItem, long?> of)
    {
        if (IsAllBack) return all;
        var back = 0L;
        foreach (var item in Items.Where(item => item.Back > 0))
        {
            if ((of(item) ?? (Items.Count == 1 ? all : null)) is not { } together) return null;
            back += (long)((Int128)together * item.Back / item.Count);
        }

        return back;
    }

    /// <summary>True for a loan of which something is still away.</summary>
    public bool IsOut => Terms.Kind == HandOverKind.Loan && Items.Any(item => item.Away > 0);

    /// <summary>True where all of it came back, so that a gift or a sale was none in the end.</summary>
    public bool IsAllBack => Items.All(item => item.Back == item.Count);

    /// <summary>True for a loan that should have come back before this day.</summary>
    public bool IsLate(DateOnly today) => IsOut && Terms.DueOn < today;
}

/// <summary>A hand-over of another yard that was taken in.</summary>
/// <param name="Transfer">The name by which both yards know it.</param>
/// <param name="Day">The day it was taken in.</param>
/// <param name="Terms">On what terms, and from whom; a price is not kept.</param>
public sealed record TakenIn(string Transfer, DateOnly Day, Terms Terms);

/// <summary>What a piece brought along from the yard it came from.</summary>
/// <param name="Code">Its code here.</param>
/// <param name="Transfer">By which hand-over it came.</param>
/// <param name="Was">Its code there.</param>
/// <param name="History">What was done to it there, oldest first.</param>
public sealed record Brought(Code Code, string Transfer, Code Was, IReadOnlyList<PastEntry> History)
{
    /// <summary>By what it had gone before that, oldest first; nothing where it came straight from where it was catalogued.</summary>
    public IReadOnlyList<Origin> Earlier { get; init; } = [];
}

/// <summary>By which hand-over a piece once went, and its code in the yard it went from.</summary>
/// <param name="Transfer">The name by which both yards know the hand-over.</param>
/// <param name="Was">Its code there.</param>
public readonly record struct Origin(string Transfer, Code Was);

/// <summary>One thing that was done to a piece in another yard.</summary>
/// <param name="At">When, by that yard's clock.</param>
/// <param name="What">What, in that yard's words.</param>
public sealed record PastEntry(DateTimeOffset At, string What);
