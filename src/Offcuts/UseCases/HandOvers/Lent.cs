using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Which pieces of another yard's file are this yard's own, that went there before.</summary>
/// <param name="yard">The yard.</param>
/// <param name="gone">Everything that went from it.</param>
internal sealed class Lent(YardFile yard, IReadOnlyList<HandOver> gone)
{
    private readonly Dictionary<string, IReadOnlySet<Code>> _went = [];

    /// <summary>
    /// The piece of this yard that comes in a file, or none. It went by a hand-over that both know, under that code; that hand-over may have been
    /// taken back here since: the piece is the same all the same.
    /// </summary>
    public Piece? Here(TransferPiece sent) =>
        sent.CameBy.Length > 0 && Went(sent.CameBy).Contains(sent.Was) && yard.Piece(sent.Was) is { } own && own.Material.Equals(sent.Piece.Material) ? own : null;

    /// <summary>The hand-over that ends with its coming back: the one it came by, or where that is none any more, the last that has it away.</summary>
    public HandOver? Loan(Code code, string cameBy)
    {
        var away = gone.Where(one => one.Items.Any(item => item.Code == code && item.Away > 0)).ToArray();
        return away.FirstOrDefault(one => one.Transfer == cameBy) ?? away.LastOrDefault();
    }

    private IReadOnlySet<Code> Went(string transfer)
    {
        if (!_went.TryGetValue(transfer, out var codes)) _went[transfer] = codes = yard.EverWent(transfer).ToHashSet();
        return codes;
    }
}
