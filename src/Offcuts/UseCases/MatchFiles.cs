using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>A problem without a yard, from files that are open already; stock and prices may be left out.</summary>
public sealed record PlanFiles(Result<Stock>? Stock, Result<IReadOnlyList<Stage>> Cuts, Result<PriceBook>? Prices);

/// <summary>What to match of files: pieces are named as the stock file names them.</summary>
/// <param name="Buy">False where nothing may be bought.</param>
/// <param name="Pins">Pieces for certain cuts, as typed.</param>
/// <param name="Spares">Pieces to be left alone, as typed.</param>
public sealed record FilesWish(bool Buy, IReadOnlyList<string> Pins, IReadOnlyList<string> Spares);

/// <summary>Problems from files alone.</summary>
public static class MatchFiles
{
    /// <summary>The problem that is meant, or every fault of every file together.</summary>
    public static Result<Problem> Problem(PlanFiles files, YardSettings settings, FilesWish wish)
    {
        Fault[] faults =
        [
            .. files.Stock is { Ok: false } stock ? stock.Faults : [],
            .. files.Cuts.Ok ? [] : files.Cuts.Faults,
            .. files.Prices is { Ok: false } prices ? prices.Faults : [],
        ];
        if (faults.Length > 0) return Result<Problem>.Fail(faults);
        var known = files.Stock?.Value;
        return WishWords.Read(wish.Pins, wish.Spares, files.Cuts.Value, written => Written(known, written))
            .Then(wishes => Matching.Problem.Create(new MatchRequest
            {
                Pieces = known?.Pieces ?? [],
                Bins = known?.Bins ?? [],
                Stages = files.Cuts.Value,
                Prices = files.Prices?.Value ?? PriceBook.Empty,
                Settings = settings,
                Buy = wish.Buy,
                Wishes = wishes,
                CodeText = code => known?.WrittenCode(code) ?? code.ToString(),
            }));
    }

    private static Result<Code> Written(Stock? stock, string written)
    {
        var found = stock?.Pieces.FirstOrDefault(piece => stock.WrittenCode(piece.Code) == written.Trim());
        return found is null ? PlanFaults.NoSuchStockCode(written) : found.Code;
    }
}
