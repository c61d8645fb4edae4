using System.Globalization;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>The questions of the yard's place. Each says how many it is about; the answers go to those.</summary>
internal static class YardAsks
{
    private const string Letters = "123456789abcdeghijklmnopqrstuvwxyz";

    private const char FreeLetter = 'f';

    /// <summary>By which column; the one that holds now is offered the other way round.</summary>
    public static Ask Order(YardState state)
    {
        (char Letter, string Says, string Turned, YardOrder Order)[] all =
        [
            ('y', "as entered", "latest first", YardOrder.Entry),
            ('k', "code", "code, last first", YardOrder.Code),
            ('m', "material", "material, last first", YardOrder.Material),
            ('l', "longest first", "shortest first", YardOrder.Length),
            ('c', "soundest first", "poorest first", YardOrder.Condition),
            ('b', "most marks first", "fewest marks first", YardOrder.Marks),
            ('p', "place", "place, last first", YardOrder.Place),
        ];
        return new Ask.Choose(
            "Which order? The same column once more turns it round",
            [.. all.Select(one => new Choice(one.Letter, one.Order == state.Order && !state.Turned ? one.Turned : one.Says, Order: one.Order))]);
    }

    public static Ask State(IReadOnlyList<YardEntry> meant)
    {
        (char Letter, PieceState State)[] all =
        [
            ('u', PieceState.Used), ('s', PieceState.Scrapped), ('m', PieceState.Missing), ('h', PieceState.HandedOver), ('y', PieceState.InYard),
        ];
        var codes = Codes(meant);
        var question = meant is [{ Piece: { } one }] ? $"{one.Code} is {Words.State(one)}. What is it now?" : $"{Many(meant)}: what are they now?";
        return new Ask.Choose(
            question,
            [
                .. all.Where(each => meant.Any(entry => entry.Piece!.State != each.State)).Select(each => new Choice(each.Letter, Words.Of(each.State), new Errand.Mark(codes, each.State))),
                .. meant.Count >= Bundle.Fewest && meant.All(entry => entry.OnHand) ? new[] { new Choice('b', "strapped together under one label", Want: Want.Strap) } : [],
            ]);
    }

    public static Ask Judge(IReadOnlyList<YardEntry> meant)
    {
        var codes = Codes(meant);
        var question = meant is [{ Piece: { } one }] ? $"{one.Code} is {Words.Of(one.Condition)}. How is it now?" : $"{Many(meant)}: how are they now?";
        return new Ask.Choose(
            question,
            [.. Enum.GetValues<Condition>().Where(condition => meant.Any(entry => entry.Piece!.Condition != condition)).Select(condition => new Choice(Words.Of(condition)[0], Words.Of(condition), new Errand.Judge(codes, condition)))]);
    }

    public static Ask PutAt(IReadOnlyList<YardEntry> meant) => new Ask.Write(
        meant is [{ } one] ? $"Where does {one.Code} lie now?{(one.Place.Length > 0 ? $" It is at {one.Place}" : "")}" : $"{Many(meant)}: where do they lie now?",
        Topic.PutAt,
        "put at");

    public static Ask Strap(IReadOnlyList<YardEntry> meant) => new Ask.Write(
        $"{Many(meant)}: what is the bundle called, and where does it lie? A name, if it has one, then @ and the place; its label is printed with the next sheet",
        Topic.Strap,
        "bundle");

    /// <summary>The first stages, one key each; and free again, where one of them is reserved.</summary>
    public static Ask Reserve(IReadOnlyList<YardEntry> meant, IReadOnlyList<Stage> stages)
    {
        var codes = Codes(meant);
        IEnumerable<Choice> free = meant.Any(entry => entry.Piece!.State == PieceState.Reserved)
            ? [new Choice(FreeLetter, "free those that are reserved", new Errand.Free([.. meant.Where(entry => entry.Piece!.State == PieceState.Reserved).Select(entry => entry.Code)]))]
            : [];
        return new Ask.Choose(
            meant is [{ } one] ? $"Reserve {one.Code} for which stage?" : $"{Many(meant)}: reserve them for which stage?",
            [.. stages.Take(Letters.Length).Select((stage, i) => new Choice(Letters[i], stage.Name, new Errand.Reserve(codes, stage.Name))), .. free]);
    }

    /// <summary>The codes of these.</summary>
    public static IReadOnlyList<Code> Codes(IReadOnlyList<YardEntry> meant) => [.. meant.Select(entry => entry.Code)];

    private static string Many(IReadOnlyList<YardEntry> meant) => $"The {meant.Count.ToString("#,0", CultureInfo.InvariantCulture)} that are marked";
}
