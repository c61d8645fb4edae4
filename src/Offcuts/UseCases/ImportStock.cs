using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.Store.Interchange;

namespace Offcuts.UseCases;

/// <summary>
/// Takes a stock file into the yard as one change, all or nothing. Rows without a code get one and a label to print; a code
/// that the yard has already is refused with its line. Of a row without a code, so of a piece that is new, a whole panel
/// has its first pattern line at its end where nothing else is said; what was written out comes back as it was.
/// </summary>
public sealed class ImportStock(YardFile yard)
{
    /// <summary>What was done, in a few words, or every fault with its line. A name that is new is refused in its row unless it is meant.</summary>
    public Result<string> Import(Stream file, string fileName, bool newNames = false)
    {
        var read = StockFile.Read(file, fileName, CodePolicy.Checked, known: newNames ? null : yard.Names());
        if (!read.TryGet(out var stock)) return Result<string>.Fail(read.Faults);
        if (stock.Pieces.Count + stock.Bins.Count == 0) return FileFaults.NoRows().At(fileName, 1);
        var faults = Clashes(stock).Select(clash => YardFaults.CodeInUse(clash.Code.ToString()).AtCell(fileName, clash.Line, "code")).ToArray();
        var stages = yard.Stages();
        var strangers = stock.PieceRows
            .Where(row => row.Value.ReservedFor.Length > 0 && stages.Named(row.Value.ReservedFor) is null)
            .Select(row => YardFaults.StageGoesFirst(row.Value.ReservedFor).AtCell(fileName, row.Line, "reserved_for"));
        faults = [.. faults, .. strangers];
        if (faults.Length > 0) return Result<string>.Fail(faults);

        var unprinted = new List<Code>();
        var panels = new ChangeSystems(yard).WholePanels();
        var inFile = stock.Pieces.Select(piece => piece.Code).ToHashSet();
        return yard.Change($"imported {Words.Count(stock.Pieces.Count, "piece")} and {Words.Count(stock.Bins.Count, "bin")}", work =>
        {
            foreach (var piece in ParentsFirst(stock.Pieces)) work.Add((piece.Code.IsNone ? panels.Lined(piece) : piece) with { Code = Named(piece.Code), CutFrom = Known(piece.CutFrom) });
            foreach (var bin in stock.Bins) work.Put(bin with { Code = Named(bin.Code) });
            work.QueueLabels(unprinted);
        }).Then<string>(entry => unprinted.Count == 0 ? entry.What : $"{entry.What}; {Words.Count(unprinted.Count, "label")} to print");

        // An export leaves out what is used up, so the piece that another was cut from may be in neither.
        Code Known(Code parent) => inFile.Contains(parent) || yard.Piece(parent) is not null ? parent : default;

        Code Named(Code code)
        {
            if (!code.IsNone) return code;
            var drawn = yard.NewCode();
            unprinted.Add(drawn);
            return drawn;
        }
    }

    private IEnumerable<(Code Code, int Line)> Clashes(Stock stock)
    {
        var taken = yard.Pieces(onHandOnly: false).Select(piece => piece.Code).Concat(yard.Bins().Select(bin => bin.Code)).ToHashSet();
        return stock.PieceRows.Select(row => (row.Value.Code, row.Line))
            .Concat(stock.BinRows.Select(row => (row.Value.Code, row.Line)))
            .Where(row => !row.Code.IsNone && taken.Contains(row.Code))
            .OrderBy(row => row.Line);
    }

    // A child may stand above its parent in a file that somebody has sorted.
    private static IEnumerable<Piece> ParentsFirst(IReadOnlyList<Piece> pieces)
    {
        var byCode = pieces.Where(piece => !piece.Code.IsNone).ToDictionary(piece => piece.Code);
        var added = new HashSet<Code>();
        foreach (var piece in pieces)
        {
            var line = new Stack<Piece>();
            for (var next = piece; next is not null && !added.Contains(next.Code) && !line.Contains(next); next = byCode.GetValueOrDefault(next.CutFrom)) line.Push(next);
            foreach (var next in line)
                if (next.Code.IsNone || added.Add(next.Code)) yield return next;
        }
    }
}
