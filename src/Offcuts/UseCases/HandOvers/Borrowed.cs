using System.Globalization;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What another build lent to this one, as it was taken in. Counted things lie among this yard's own from then on: of them only what was taken in is known.</summary>
/// <param name="Loan">From whom, since when, and until when.</param>
/// <param name="Pieces">The pieces that are borrowed by it, on hand or not, and those that were and went back since.</param>
public sealed record Borrowed(TakenIn Loan, IReadOnlyList<Piece> Pieces)
{
    /// <summary>Who lent it.</summary>
    public string From => Loan.Terms.To.Length > 0 ? Loan.Terms.To : Nobody;

    /// <summary>What of it did not go back yet. It is owed even where it was lent on, cut up or used since.</summary>
    public IReadOnlyList<Piece> Owed { get; init; } = [];

    /// <summary>What of it still is in this yard as it came, and so can go back.</summary>
    public IReadOnlyList<Piece> Here => [.. Owed.Where(piece => piece.OnHand)];

    /// <summary>How many are owed and not on hand.</summary>
    public int Away => Owed.Count - Here.Count;

    /// <summary>True where something of it is owed still though its day is over.</summary>
    public bool IsLate(DateOnly today) => Owed.Count > 0 && Loan.Terms.DueOn < today;

    /// <summary>Who handed over, where the file names nobody.</summary>
    public const string Nobody = "another yard";

    /// <summary>Everything that was taken in as a loan, oldest first.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="gone">What went from it, where that was read already.</param>
    public static IReadOnlyList<Borrowed> In(YardFile yard, IReadOnlyList<HandOver>? gone = null)
    {
        var taken = yard.TakenIn();
        if (taken.All(one => one.Terms.Kind != HandOverKind.Loan)) return [];
        var whose = new Whose(taken, gone ?? yard.HandOvers(), yard.Arrivals());
        var lent = yard.PiecesFromElsewhere().Select(piece => (Piece: piece, Loan: whose.Loan(piece.Code))).Where(one => one.Loan.By is not null).ToLookup(one => one.Loan.By!.Transfer);
        return
        [
            .. taken.Where(one => one.Terms.Kind == HandOverKind.Loan).Select(one => new Borrowed(one, [.. lent[one.Transfer].Select(each => each.Piece)])
            {
                Owed = [.. lent[one.Transfer].Where(each => each.Loan.Open).Select(each => each.Piece)],
            }),
        ];
    }

    /// <summary>How long it is lent: <c>, on loan until 2026-12-24</c>; empty where it is no loan.</summary>
    public static string Until(Terms terms) => terms.Kind != HandOverKind.Loan ? "" : $", on loan{(terms.DueOn is { } due ? $" until {Day(due)}" : "")}{(terms.Due.Length > 0 ? $" ({terms.Due})" : "")}";

    /// <summary>It in lines: who lent it until when, and each piece with what became of it.</summary>
    /// <param name="today">Tells what is late.</param>
    /// <param name="unit">How lengths are written.</param>
    public IEnumerable<string> Lines(DateOnly today, LengthUnit unit)
    {
        var late = IsLate(today) ? "LATE: " : "";
        var what = Pieces.Count > 0 ? $"{Here.Count} of {Words.Count(Pieces.Count, "piece")} here{(Away > 0 ? $", {Away} more still owed" : "")}" : "only counted things";
        yield return $"Borrowed {Day(Loan.Day)} from {From}{Until(Loan.Terms)}: {late}{what}";
        foreach (var piece in Pieces) yield return $"   {piece.Code}  {piece.Material}  {Words.Size(piece, unit)}  {Words.State(piece)}";
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
