using System.Globalization;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>What another build lent to this one, as it was taken in. Counted things lie among this yard's own from then on: of them only what was taken in is known.</summary>
/// <param name="Loan">From whom, since when, and until when.</param>
/// <param name="Pieces">The pieces that came by it and did not go by another hand-over since, on hand or not.</param>
public sealed record Borrowed(TakenIn Loan, IReadOnlyList<Piece> Pieces)
{
    /// <summary>Who lent it.</summary>
    public string From => Loan.Terms.To.Length > 0 ? Loan.Terms.To : Nobody;

    /// <summary>What of it still is in this yard as it came, and so can go back.</summary>
    public IReadOnlyList<Piece> Here => [.. Pieces.Where(piece => piece.OnHand)];

    /// <summary>Who handed over, where the file names nobody.</summary>
    public const string Nobody = "another yard";

    /// <summary>Everything that was taken in as a loan, oldest first.</summary>
    public static IReadOnlyList<Borrowed> In(YardFile yard) =>
        [.. yard.TakenIn().Where(one => one.Terms.Kind == HandOverKind.Loan).Select(one => new Borrowed(one, [.. yard.BroughtBy(one.Transfer).Select(yard.Piece).OfType<Piece>()]))];

    /// <summary>How long it is lent: <c>, on loan until 2026-12-24</c>; empty where it is no loan.</summary>
    public static string Until(Terms terms) => terms.Kind != HandOverKind.Loan ? "" : $", on loan{(terms.DueOn is { } due ? $" until {Day(due)}" : "")}{(terms.Due.Length > 0 ? $" ({terms.Due})" : "")}";

    /// <summary>It in lines: who lent it until when, and each piece with what became of it.</summary>
    /// <param name="today">Tells what is late.</param>
    /// <param name="unit">How lengths are written.</param>
    public IEnumerable<string> Lines(DateOnly today, LengthUnit unit)
    {
        var late = Here.Count > 0 && Loan.Terms.DueOn < today ? "LATE: " : "";
        var what = Pieces.Count > 0 ? $"{Here.Count} of {Words.Count(Pieces.Count, "piece")} here" : "only counted things";
        yield return $"Borrowed {Day(Loan.Day)} from {From}{Until(Loan.Terms)}: {late}{what}";
        foreach (var piece in Pieces) yield return $"   {piece.Code}  {piece.Material}  {Words.Size(piece, unit)}  {Words.State(piece)}";
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
