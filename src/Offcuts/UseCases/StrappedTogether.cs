using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>The label of a bundle stands for what is strapped together under it, so that nobody opens a lift of studs to say where it goes.</summary>
public static class StrappedTogether
{
    /// <summary>The codes, with those of the pieces in the place of that of a bundle that is whole; each once, however often it is named.</summary>
    public static IReadOnlyList<Code> Pieces(YardFile yard, IReadOnlyList<Code> codes)
    {
        if (codes.All(code => yard.Piece(code) is not null)) return [.. codes.Distinct()];
        var whole = yard.Bundles().Where(bundle => bundle.IsWhole).ToDictionary(bundle => bundle.Code, bundle => bundle.Pieces);
        return [.. codes.SelectMany(code => whole.TryGetValue(code, out var pieces) ? pieces : [code]).Distinct()];
    }
}
