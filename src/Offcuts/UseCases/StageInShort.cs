using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>How far a stage has come, in figures.</summary>
/// <param name="Stage">The stage.</param>
/// <param name="Needs">Cuts and counted things that it needs in all.</param>
/// <param name="Lacks">Those that are not made yet.</param>
/// <param name="Reserved">Pieces in the yard that are kept for it.</param>
public sealed record StageInShort(Stage Stage, int Needs, int Lacks, int Reserved)
{
    /// <summary>Every stage of the yard, in the order of the work.</summary>
    public static IReadOnlyList<StageInShort> Of(YardFile yard)
    {
        var plans = yard.Plans();
        var reserved = yard.Pieces().Where(piece => piece.State == PieceState.Reserved).ToLookup(piece => piece.ReservedFor);
        return [.. yard.Stages().Select(stage => new StageInShort(stage, Count(stage), Count(StageNeeds.Lacking(stage, plans)), reserved[stage.Name].Count()))];
    }

    private static int Count(Stage stage) => stage.Cuts.Sum(cut => cut.Count) + stage.Hardware.Sum(need => need.Count);
}
