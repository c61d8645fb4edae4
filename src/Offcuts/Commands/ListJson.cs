using System.Globalization;
using System.Text.Json.Nodes;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Lists of the yard as JSON for scripts, each <c>{ "schema": 1, "..": [..] }</c>: lengths as exact decimals in millimetres, money in cents.</summary>
internal static class ListJson
{
    /// <summary>Stages in the order of the work: how many things each needs and lacks, and how many pieces are reserved for it.</summary>
    public static string OfStages(IEnumerable<StageInShort> stages) => YardJson.List("stages", stages.Select(stage => new JsonObject
    {
        ["name"] = stage.Stage.Name,
        ["date"] = Day(stage.Stage.Date),
        ["needs"] = stage.Needs,
        ["lacks"] = stage.Lacks,
        ["reserved"] = stage.Reserved,
    }));

    /// <summary>Every price. Hardware has no length; a price without a day is not old.</summary>
    public static string OfPrices(IEnumerable<StorePrice> prices, DateOnly today) => YardJson.List("prices", prices.Select(price => new JsonObject
    {
        ["material"] = price.Material.Name,
        ["length_mm"] = price.Length.IsZero ? null : price.Length.InMillimetres,
        ["price_cents"] = price.Price.Cents,
        ["treated"] = price.Treated,
        ["limit"] = price.Limit,
        ["lead_days"] = price.LeadDays,
        ["supplier"] = price.Supplier,
        ["seen"] = Day(price.Date),
        ["old"] = price.IsOld(today),
    }));

    /// <summary>Every kept plan, oldest first. The plan itself is what <c>sheet --json</c> prints.</summary>
    public static string OfPlans(IEnumerable<KeptPlan> plans) => YardJson.List("plans", plans.Select(kept => new JsonObject
    {
        ["plan"] = kept.Id,
        ["made"] = Day(kept.Made),
        ["stages"] = new JsonArray([.. kept.Plan.Stages.Select(stage => (JsonNode)stage)]),
        ["open"] = kept.Open,
        ["pieces"] = kept.Plan.Pieces.Count,
        ["waiting"] = kept.Count(StepState.Waiting),
        ["cut"] = kept.Count(StepState.Done) + kept.Count(StepState.DoneOtherwise),
        ["given_up"] = kept.Count(StepState.Dropped),
        ["unfilled"] = kept.Plan.Tiers.Unfilled.Value,
        ["spend_cents"] = kept.Plan.Tiers.Spend.Value,
        ["to_buy_cents"] = kept.ToBuyYet.Cents,
        ["buys"] = kept.Plan.Buys,
        ["status"] = kept.Plan is { Proven: true, Earlier: false } ? "proven" : "best-found",
    }));

    /// <summary>Labels that wait to be printed, in their order, and codes that were printed blank and have no piece yet.</summary>
    public static string OfLabels(YardFile yard) => YardJson.Write(new JsonObject
    {
        ["schema"] = 1,
        ["labels"] = new JsonArray([.. yard.LabelQueue().Select(code => Label(yard, code))]),
        ["blanks"] = new JsonArray([.. yard.BlankCodes().Select(code => (JsonNode)code.Text)]),
    });

    /// <summary>Entries of the history, newest first; <c>undoes</c> is the entry that it took back or did again.</summary>
    public static string OfHistory(IEnumerable<HistoryEntry> entries) => YardJson.List("entries", entries.Select(entry => new JsonObject
    {
        ["number"] = entry.Number,
        ["at"] = entry.At.ToString("O", CultureInfo.InvariantCulture),
        ["what"] = entry.What,
        ["undoes"] = entry.Undoes == 0 ? null : entry.Undoes,
        ["taken_back"] = entry.Undone,
    }));

    private static JsonNode Label(YardFile yard, Code code)
    {
        var (piece, bin) = (yard.Piece(code), yard.Bin(code));
        return new JsonObject
        {
            ["code"] = code.Text,
            ["material"] = piece?.Material.Name ?? bin?.Hardware.Name,
            ["length_mm"] = piece?.Length.InMillimetres,
            ["place"] = piece?.Place ?? bin?.Place,
        };
    }

    /// <summary>A day as it is written in JSON; null for none.</summary>
    public static JsonNode? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
