using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>What a stock file holds, in the order of its rows.</summary>
public sealed record Stock
{
    private readonly IReadOnlyDictionary<Code, string> _written;

    internal Stock(IReadOnlyList<StockRow<Piece>> pieces, IReadOnlyList<StockRow<Bin>> bins, IReadOnlyDictionary<Code, string> written)
    {
        (PieceRows, BinRows, _written) = (pieces, bins, written);
        Pieces = [.. pieces.Select(row => row.Value)];
        Bins = [.. bins.Select(row => row.Value)];
    }

    /// <summary>Every piece.</summary>
    public IReadOnlyList<Piece> Pieces { get; }

    /// <summary>Every bin of hardware.</summary>
    public IReadOnlyList<Bin> Bins { get; }

    /// <summary>Every piece with its line.</summary>
    public IReadOnlyList<StockRow<Piece>> PieceRows { get; }

    /// <summary>Every bin with its line.</summary>
    public IReadOnlyList<StockRow<Bin>> BinRows { get; }

    /// <summary>The text the file has for a code; for a code that is no stand-in, the code as a label shows it.</summary>
    public string WrittenCode(Code code) => _written.TryGetValue(code, out var text) ? text : code.ToString();
}

/// <summary>A thing of the stock and where the file has it.</summary>
/// <param name="Value">The thing.</param>
/// <param name="Line">Line on which its row begins, from 1.</param>
public sealed record StockRow<T>(T Value, int Line);
