using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>What is free, in words.</summary>
public static class FreeText
{
    /// <summary>The answer in a line or two: how much may go, what it is worth, how sure that is.</summary>
    public static IEnumerable<string> Answer(WhatIsFree free, YardSettings settings)
    {
        var pieces = free.Free.ToArray();
        var counted = free.Bins.Sum(bin => bin.Free);
        var worth = pieces.Aggregate(Money.Zero, (sum, piece) => sum + piece.Worth) + free.Bins.Aggregate(Money.Zero, (sum, bin) => sum + bin.Worth);
        yield return $"Free to go, all of it together: {Words.Count(pieces.Length, "piece")} of {free.Pieces.Count}{(counted > 0 ? $", {Words.Count(counted, "counted thing")}" : "")}; worth {worth.ToText(settings.CurrencySign)} to you";
        yield return free.Proven
            ? $"Proven: without them your stages get no worse, in what is filled ({(free.Unfilled == 0 ? "all of it" : $"{free.Unfilled} stay open either way")}) and in what is spent beside the plans that are kept ({free.Spend.ToText(settings.CurrencySign)})"
            : "NOT PROVEN that your stages get no worse without them:";
        foreach (var doubt in free.Doubts) yield return "  " + doubt;
    }

    /// <summary>What it would cost to let certain pieces go as well.</summary>
    /// <param name="with">What is free with them there.</param>
    /// <param name="without">What is free with them gone.</param>
    /// <param name="codes">Which.</param>
    /// <param name="settings">Sign of money.</param>
    public static string Cost(WhatIsFree with, WhatIsFree without, IReadOnlyList<Code> codes, YardSettings settings)
    {
        var who = string.Join(", ", codes);
        var (more, money) = (without.Unfilled - with.Unfilled, without.Spend - with.Spend);
        var said = (more, money.Cents) switch
        {
            (0, 0) => "no stage gets worse: what else is free is told below",
            ( > 0, 0) => $"{Words.Count((int)more, "cut")} more would stay open",
            (0, > 0) => $"{money.ToText(settings.CurrencySign)} more would be spent",
            ( > 0, _) => $"{Words.Count((int)more, "cut")} more would stay open, with {without.Spend.ToText(settings.CurrencySign)} spent instead of {with.Spend.ToText(settings.CurrencySign)}",
            _ => "a better plan was found without it than with it, so neither is the best: give it more time",
        };
        return $"Without {who}: {said}{(with.Proven && without.Proven ? "" : " (not proven)")}";
    }

    /// <summary>Headings of <see cref="Row(PieceToGo, YardSettings)"/>.</summary>
    public static IReadOnlyList<string> Headings { get; } = ["Code", "Material", ">Length", "Marks", "Place", ">Worth", "Why it stays"];

    /// <summary>A piece in columns.</summary>
    public static IReadOnlyList<string> Row(PieceToGo piece, YardSettings settings) =>
    [
        piece.Piece.Code.ToString(), piece.Piece.Material.Name, Words.Size(piece.Piece, settings.Unit), Words.Marks(piece.Piece, settings.Unit), piece.Piece.Place,
        piece.Worth.ToText(settings.CurrencySign), piece.Why,
    ];

    /// <summary>A bin in the same columns.</summary>
    public static IReadOnlyList<string> Row(BinToGo bin, YardSettings settings) =>
    [
        bin.Bin.Code.ToString(), bin.Bin.Hardware.Name, $"{bin.Free} of {bin.Bin.Quantity} {bin.Bin.Hardware.Unit}", "", bin.Bin.Place,
        bin.Worth.ToText(settings.CurrencySign), bin.Why,
    ];
}
