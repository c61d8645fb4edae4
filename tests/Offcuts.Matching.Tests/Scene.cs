using System.Globalization;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Tests;

/// <summary>Short ways to write a yard, a stage and a price in a test. Lengths as people write them.</summary>
internal static class Scene
{
    public static readonly Material Stud = MaterialReader.Read("2x4").Value;

    public static Length L(string text) => Length.Parse(text).Value;

    /// <summary>Settings without a kerf, for published examples, which know none.</summary>
    public static YardSettings NoKerf { get; } = YardSettings.Usual with
    {
        Kerfs = YardSettings.Usual.Kerfs.Add(MaterialFamily.Lumber, Length.Zero).Add(MaterialFamily.Stick, Length.Zero),
    };

    public static Piece Board(string length, int number = 1) => new() { Code = CodeOf(number), Material = Stud, Length = L(length) };

    /// <summary>A code that depends on its number alone.</summary>
    public static Code CodeOf(int number)
    {
        var random = new Random(number);
        return Code.Draw(random.Next);
    }

    public static RequiredCut Cut(string length, int count = 1, string stage = "wall", string name = "cut", string? longest = null) => new()
    {
        Stage = stage,
        Name = name,
        Material = Stud,
        Shortest = L(length),
        Longest = L(longest ?? length),
        Count = count,
    };

    public static StorePrice Price(string length, long cents, int? limit = null, bool treated = false) =>
        new() { Material = Stud, Length = L(length), Price = new Money(cents), Limit = limit, Treated = treated };

    /// <summary>A request whose stages come in the order in which the cuts name them.</summary>
    public static MatchRequest Request(IEnumerable<Piece> yard, IEnumerable<RequiredCut> cuts, params StorePrice[] prices) => new()
    {
        Pieces = [.. yard],
        Stages = [.. cuts.GroupBy(cut => cut.Stage).Select(group => new Stage(group.Key, null, [.. group], []))],
        Prices = new PriceBook(prices),
    };

    public static Plan Match(MatchRequest request, MatchLimits? limits = null) =>
        Matcher.Match(Problem.Create(request).Value, limits ?? MatchLimits.None);

    /// <summary>All that a person can tell of a plan, in one text.</summary>
    public static string Text(Plan plan) => string.Join('\n', plan.Pieces.Select(piece =>
        $"{piece.Source?.Code.ToString() ?? "buy"} {piece.Length}: {string.Join(", ", piece.Cuts.Select(cut => $"{cut.Stage}/{cut.Cut} {cut.Start} {cut.Length}"))}"
        + $" rest {string.Join(", ", piece.Remainders.Select(rest => $"{rest.Start} {rest.Length} {rest.Kept}"))} saws {piece.SawCuts}"))
        + string.Create(CultureInfo.InvariantCulture, $"\n{Figures(plan)}");

    public static string Figures(Plan plan) =>
        $"unfilled {string.Join(' ', plan.Tiers.UnfilledByStage)} spend {plan.Tiers.Spend} given up {plan.Tiers.ValueGivenUp}";
}
