using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>How the program calls things, the same on the command line and on the screen.</summary>
public static class Words
{
    /// <summary>A state in a word or two.</summary>
    public static string Of(PieceState state) => state switch
    {
        PieceState.InYard => "in the yard",
        PieceState.Reserved => "reserved",
        PieceState.Used => "used",
        PieceState.HandedOver => "handed over",
        PieceState.Scrapped => "scrapped",
        PieceState.Missing => "missing",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    /// <summary>A piece's state, with the stage it is reserved for.</summary>
    public static string State(Piece piece) =>
        piece.State == PieceState.Reserved ? $"reserved for {piece.ReservedFor}" : Of(piece.State);

    /// <summary>A condition in a word.</summary>
    public static string Of(Condition condition) => MarkWords.Of(condition);

    /// <summary>A use in a word.</summary>
    public static string Of(Use use) => MarkWords.Of(use);

    /// <summary>What a cut is for, its wish for treated wood, and whether it may be ripped.</summary>
    public static string Of(RequiredCut cut)
    {
        var treated = cut.Treated switch
        {
            TreatedWish.Yes => ", treated",
            TreatedWish.No => ", untreated",
            _ => "",
        };
        return $"{Of(cut.Use)}{treated}{(cut.Rip ? ", rip" : "")}";
    }

    /// <summary>The marks of a piece that matter to whoever picks it up: condition, treatment, nails, concrete, oil, stamp.</summary>
    public static string Marks(Piece piece)
    {
        var marks = new List<string> { Of(piece.Condition) };
        if (piece.Treated) marks.Add(piece.TreatedWith.Length > 0 ? $"treated ({piece.TreatedWith})" : "treated");
        marks.AddRange(MarkWords.OnIt(piece.Nails, piece.Concrete, piece.Oiled, piece.Stamped));
        return string.Join(", ", marks);
    }

    /// <summary>The same with what can't be used of it: bad spots and end trims.</summary>
    public static string Marks(Piece piece, LengthUnit unit)
    {
        var spots = string.Join(", ", piece.BadSpots.Select(spot => $"{spot.Start.ToText(unit)}..{spot.End.ToText(unit)}"));
        var trims = piece.TrimLeft.IsZero && piece.TrimRight.IsZero ? "" : $", trim {piece.TrimLeft.ToText(unit)}; {piece.TrimRight.ToText(unit)}";
        return $"{Marks(piece)}{(spots.Length > 0 ? $", bad {spots}" : "")}{trims}";
    }

    /// <summary>Where the first pattern line of a piece is, behind its length or its marks: <c>, line 1-7/8"</c>; empty where it has none or it is not known.</summary>
    public static string Line(Piece piece, LengthUnit unit) => piece.FirstLine is { } line ? $", line {line.ToText(unit)}" : "";

    /// <summary>A number of things, by their name for one: <c>1 piece</c>, <c>12 pieces</c>.</summary>
    public static string Count(int number, string one) => $"{number} {one}{(number == 1 ? "" : "s")}";

    /// <summary>A length, with the other side of a sheet behind it.</summary>
    public static string Size(Piece piece, LengthUnit unit) =>
        piece.Material is Sheet ? $"{piece.Length.ToText(unit)} x {piece.Width.ToText(unit)}" : piece.Length.ToText(unit);

    /// <summary>A plan's standing: how good it is, and how sure that is.</summary>
    public static string Standing(Plan plan) => !plan.Proven ? "best found" : plan.Earlier ? "best of the yard as it was" : "proven best";
}
