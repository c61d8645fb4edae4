using System.Text.Json;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Savings;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <content>Prices, settings and the ledger.</content>
public sealed partial class YardChange
{
    private Dictionary<(Material Material, Length Length, bool Treated), long>? _prices;

    private Dictionary<(Material Material, Length Length, bool Treated), long> Prices =>
        _prices ??= _reader.Prices().ToDictionary(known => Key(known.Price), known => known.Id);

    /// <summary>Adds a price, or sets the one of the same material, length and treatment. Faults: those of <see cref="BookRules"/>.</summary>
    public void SetPrice(StorePrice price)
    {
        if (Refused(BookRules.Faults(price))) return;
        var unit = (price.Material as Hardware)?.Unit ?? "";
        if (Prices.TryGetValue(Key(price), out var id))
        {
            Database.Run(
                "price_set",
                ("material", price.Material.Name),
                ("unit", unit),
                ("cents", price.Price.Cents),
                ("lead_days", price.LeadDays),
                ("most_available", price.Limit),
                ("supplier", price.Supplier),
                ("seen_on", Values.DayOrNull(price.Date)),
                ("id", id));
            return;
        }

        Prices[Key(price)] = Database.Number(
            "price_add",
            ("material", price.Material.Name),
            ("counted", price.Material is Hardware),
            ("unit", unit),
            ("length", price.Length.Units),
            ("treated", price.Treated),
            ("cents", price.Price.Cents),
            ("lead_days", price.LeadDays),
            ("most_available", price.Limit),
            ("supplier", price.Supplier),
            ("seen_on", Values.DayOrNull(price.Date)));
    }

    /// <summary>Removes a price. A fault where there is none.</summary>
    /// <param name="material">What is sold.</param>
    /// <param name="length">The store length; zero for hardware.</param>
    /// <param name="treated">Whether it is the price of treated.</param>
    public void RemovePrice(Material material, Length length, bool treated)
    {
        if (Prices.Remove((material, length, treated), out var id)) Database.Run("price_remove", ("id", id));
        else _faults.Add(StoreFaults.NoSuchPrice(material.Name));
    }

    /// <summary>Sets everything the user can set.</summary>
    public void SetSettings(YardSettings settings)
    {
        if (Refused(BookRules.Faults(settings))) return;
        Database.Run(
            "setting_set",
            ("unit", Words.Unit[settings.Unit]),
            ("currency_sign", settings.CurrencySign),
            ("tax", settings.TaxThousandthsOfPercent),
            ("kerf", settings.KerfElsewhere.Units),
            ("keep", settings.KeepElsewhere.Units),
            ("species", settings.Species.Name),
            ("specific_gravity", Values.Decimal(settings.Species.SpecificGravity)),
            ("foam_days", settings.FoamDays),
            ("covered_places", JsonSerializer.Serialize(settings.Covered)));
        foreach (var rule in settings.Rules.All)
            Database.Run("use_rule_set", ("worst", Words.Condition[rule.Worst]), ("needs_stamp", rule.NeedsStamp), ("use", Words.Use[rule.Use]));
        Database.Run("kerfs_remove");
        foreach (var (family, kerf) in settings.Kerfs) Database.Run("kerf_add", ("family", Words.Family[family]), ("kerf", kerf.Units));
        Database.Run("keeps_remove");
        foreach (var (material, keep) in settings.Keeps) Database.Run("keep_add", ("material", material), ("keep", keep.Units));
        Database.Run("keep_backs_remove");
        foreach (var (material, stays) in settings.KeepBacks) Database.Run("keep_back_add", ("material", material), ("length", stays.Length.Units), ("count", stays.Count));
    }

    /// <summary>Adds a line to the ledger. Faults: those of <see cref="BookRules"/>, and a plan that is not there.</summary>
    public void AddLedgerLine(LedgerLine line)
    {
        var faults = BookRules.Faults(line).ToList();
        if (line.PlanId != 0 && _reader.Plan(line.PlanId) is null) faults.Add(StoreFaults.NoSuchPlan(line.PlanId));
        if (Refused(faults)) return;

        Database.Run(
            "ledger_add",
            ("day", Values.Day(line.Day)),
            ("stage", line.Stage),
            ("plan", line.PlanId == 0 ? null : line.PlanId),
            ("all_new", line.AllNew.Cents),
            ("spent", line.Spent.Cents),
            ("board_feet", Values.Decimal(line.BoardFeet.Value)),
            ("panel", Values.Decimal(line.PanelFace.SquareMillimetres)),
            ("weight", Values.Decimal(line.Weight.Pounds)),
            ("wood_weight", Values.Decimal(line.WoodWeight.Pounds)),
            ("pieces_used", line.PiecesUsed),
            ("hardware_used", line.HardwareUsed));
    }

    private static (Material Material, Length Length, bool Treated) Key(StorePrice price) => (price.Material, price.Length, price.Treated);
}
