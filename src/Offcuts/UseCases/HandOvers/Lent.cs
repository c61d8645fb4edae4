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
    /// The piece of this yard that comes in a file, or none. It once went by a hand-over of this yard, under that code, be it straight to the yard that sends it
    /// or by others between; that hand-over may have been taken back here since: the piece is the same all the same.
    /// </summary>
    public Piece? Here(TransferPiece sent) => sent.Origins.Reverse()
        .Where(origin => Went(origin.Transfer).Contains(origin.Was))
        .Select(origin => yard.Piece(origin.Was))
        .FirstOrDefault(own => own is not null && own.Material.Equals(sent.Piece.Material));

    /// <summary>The hand-over that ends with its coming back: the last of those it went by, or where that is none any more, the last that has it away.</summary>
    public HandOver? Loan(Code code, TransferPiece sent)
    {
        var away = gone.Where(one => one.Items.Any(item => item.Code == code && item.Away > 0)).ToArray();
        return sent.Origins.Reverse().Select(origin => away.FirstOrDefault(one => one.Transfer == origin.Transfer)).FirstOrDefault(one => one is not null) ?? away.LastOrDefault();
    }

    private IReadOnlySet<Code> Went(string transfer)
    {
        if (!_went.TryGetValue(transfer, out var codes)) _went[transfer] = codes = yard.EverWent(transfer).ToHashSet();
        return codes;
    }
}
