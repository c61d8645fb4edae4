using System.Text.Json.Nodes;
using Offcuts.Core.HandOvers;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What goes to another build as JSON for scripts: lengths in millimetres, money in cents, weights in pounds.</summary>
internal static class HandJson
{
    /// <summary>What is free, and why the rest stays.</summary>
    public static string Write(WhatIsFree free) => YardJson.Write(new JsonObject
    {
        ["schema"] = 1,
        ["proven"] = free.Proven,
        ["doubts"] = Texts(free.Doubts),
        ["unfilled"] = free.Unfilled,
        ["spend_cents"] = free.Spend.Cents,
        ["pieces"] = new JsonArray([.. free.Pieces.Select(piece => (JsonNode)new JsonObject
        {
            ["code"] = piece.Piece.Code.Text,
            ["material"] = piece.Piece.Material.Name,
            ["length_mm"] = piece.Piece.Length.InMillimetres,
            ["worth_cents"] = piece.Worth.Cents,
            ["free"] = piece.IsFree,
            ["why"] = piece.Why,
        })]),
        ["bins"] = new JsonArray([.. free.Bins.Select(bin => (JsonNode)new JsonObject
        {
            ["code"] = bin.Bin.Code.Text,
            ["material"] = bin.Bin.Hardware.Name,
            ["qty"] = bin.Bin.Quantity,
            ["free"] = bin.Free,
            ["worth_cents"] = bin.Worth.Cents,
            ["why"] = bin.Why,
        })]),
        ["notes"] = Texts(free.Notes),
    });

    /// <summary>Every hand-over, and apart from them what is borrowed from others, oldest first.</summary>
    public static string Write(IEnumerable<HandOver> all, IEnumerable<Borrowed> borrowed, DateOnly today) => YardJson.Write(new JsonObject
    {
        ["schema"] = 1,
        ["hand_overs"] = new JsonArray([.. Nodes(all, today)]),
        ["borrowed"] = new JsonArray([.. borrowed.Select(one => (JsonNode)new JsonObject
        {
            ["day"] = Day(one.Loan.Day),
            ["from"] = one.From,
            ["due_on"] = Day(one.Loan.Terms.DueOn),
            ["due"] = one.Loan.Terms.Due,
            ["late"] = one.IsLate(today),
            ["pieces"] = new JsonArray([.. one.Pieces.Select(piece => (JsonNode)new JsonObject { ["code"] = piece.Code.Text, ["material"] = piece.Material.Name, ["length_mm"] = piece.Length.InMillimetres, ["owed"] = one.Owed.Contains(piece), ["here"] = one.Here.Contains(piece) })]),
        })]),
    });

    /// <summary>The same, each by itself.</summary>
    public static IEnumerable<JsonNode> Nodes(IEnumerable<HandOver> all, DateOnly today) => all.Select(one => (JsonNode)new JsonObject
    {
        ["number"] = one.Id,
        ["day"] = Day(one.Day),
        ["kind"] = one.Terms.Kind.ToString().ToLowerInvariant(),
        ["to"] = one.Terms.To,
        ["price_cents"] = one.Terms.Price?.Cents,
        ["due_on"] = Day(one.Terms.DueOn),
        ["due"] = one.Terms.Due,
        ["late"] = one.IsLate(today),
        ["worth_cents"] = one.Worth.Cents,
        ["weight_lb"] = one.Weight.Pounds,
        ["worth_gone_cents"] = one.WorthGone?.Cents,
        ["weight_gone_lb"] = one.WeightGone?.Pounds,
        ["confirmed_on"] = Day(one.ConfirmedOn),
        ["items"] = new JsonArray([.. one.Items.Select(item => (JsonNode)new JsonObject { ["code"] = item.Code.Text, ["count"] = item.Count, ["back"] = item.Back, ["settled"] = item.Settled, ["settled_as"] = item.SettledAs })]),
    });

    /// <summary>What of the free things another build can use.</summary>
    public static string Write(TheirMatch match) => YardJson.Write(new JsonObject
    {
        ["schema"] = 1,
        ["saved_cents"] = match.Saved.Cents,
        ["prices"] = match.TheirPrices ? "theirs" : "ours",
        ["proven"] = match.Proven,
        ["pieces"] = new JsonArray([.. match.Pieces.Select(one => (JsonNode)new JsonObject { ["code"] = one.Piece.Code.Text, ["material"] = one.Piece.Material.Name, ["length_mm"] = one.Piece.Length.InMillimetres, ["for"] = one.For })]),
        ["hardware"] = new JsonArray([.. match.Counted.Select(one => (JsonNode)new JsonObject { ["code"] = one.Bin.Text, ["count"] = one.Count })]),
        ["unfilled"] = Texts(match.Unfilled),
        ["unpriced"] = Texts(match.Unpriced),
    });

    /// <summary>Loads in their order; what stays behind, with why.</summary>
    public static string Write(LoadLists lists) => YardJson.Write(new JsonObject
    {
        ["schema"] = 1,
        ["trips"] = new JsonObject { ["value"] = lists.Trips.Value, ["bound"] = lists.Trips.Bound },
        ["loads"] = new JsonArray([.. lists.Loads.Select(load => (JsonNode)new JsonObject
        {
            ["bed"] = load.Bed.Name,
            ["weight_lb"] = load.Weight.Pounds,
            ["things"] = new JsonArray([.. load.Things.Select(thing => (JsonNode)Thing(thing))]),
        })]),
        ["left"] = new JsonArray([.. lists.Left.Select(left =>
        {
            var thing = Thing(left.Thing);
            thing["why"] = left.Why;
            return (JsonNode)thing;
        })]),
        ["volume_not_known"] = new JsonArray([.. lists.Unmeasured.Select(thing => (JsonNode)Thing(thing))]),
        ["weights"] = Texts(lists.Sources),
    });

    private static JsonObject Thing(ListedThing thing) => new() { ["code"] = thing.Code.Text, ["what"] = thing.What, ["weight_lb"] = thing.WeightThousandthsLb / 1000m };

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>An array of texts.</summary>
    internal static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);
}
