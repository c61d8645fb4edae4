using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The questions of the yard's place.</summary>
internal static class YardAsks
{
    private const string Letters = "123456789abcdefghijklmnopqrstuvwxyz";

    public static Ask Order { get; } = new Ask.Choose("Which order?",
    [
        new('y', "as entered", Order: YardOrder.Entry),
        new('m', "material", Order: YardOrder.Material),
        new('l', "longest first", Order: YardOrder.Length),
        new('p', "place", Order: YardOrder.Place),
        new('c', "soundest first", Order: YardOrder.Condition),
    ]);

    public static Ask State(Piece piece)
    {
        (char Letter, PieceState State)[] all =
        [
            ('u', PieceState.Used), ('s', PieceState.Scrapped), ('m', PieceState.Missing), ('h', PieceState.HandedOver), ('y', PieceState.InYard),
        ];
        return new Ask.Choose(
            $"{piece.Code} is {Words.State(piece)}. What is it now?",
            [.. all.Where(one => one.State != piece.State).Select(one => new Choice(one.Letter, Words.Of(one.State), new Errand.Mark(piece.Code, one.State)))]);
    }

    /// <summary>The first 35 stages: one key each.</summary>
    public static Ask Reserve(Piece piece, IReadOnlyList<Stage> stages) => new Ask.Choose(
        $"Reserve {piece.Code} for which stage?",
        [.. stages.Take(Letters.Length).Select((stage, i) => new Choice(Letters[i], stage.Name, new Errand.Reserve(piece.Code, stage.Name)))]);
}
