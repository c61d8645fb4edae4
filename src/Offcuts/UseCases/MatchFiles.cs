using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
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

    /// <summary>
    /// The unit in which files tell their lengths: millimetres where those that stand between two marks of an inch rule (1/64 in) are whole
    /// tenths of a millimetre, else inches. A cut of 368 mm told in inches is rounded, and nobody can saw to it.
    /// </summary>
    public static LengthUnit UnitOf(PlanFiles files)
    {
        IReadOnlyList<Piece> pieces = files.Stock is { Ok: true } stock ? stock.Value.Pieces : [];
        IReadOnlyList<Stage> stages = files.Cuts.Ok ? files.Cuts.Value : [];
        IEnumerable<StorePrice> prices = files.Prices is { Ok: true } book ? book.Value.All : [];
        Length[] between =
        [
            .. pieces.Select(piece => piece.Length)
                .Concat(stages.SelectMany(stage => stage.Cuts).SelectMany(cut => (Length[])[cut.Shortest, cut.Longest]))
                .Concat(prices.Select(price => price.Length))
                .Where(length => length.Units % (Length.PerInch / 64) != 0),
        ];
        return between.Length > 0 && between.All(length => length.Units % (Length.PerMillimetre / 10) == 0) ? LengthUnit.Millimetre : LengthUnit.Inch;
    }

    private static Result<Code> Written(Stock? stock, string written)
    {
        var found = stock?.Pieces.FirstOrDefault(piece => stock.WrittenCode(piece.Code) == written.Trim());
        return found is null ? PlanFaults.NoSuchStockCode(written) : found.Code;
    }
}
