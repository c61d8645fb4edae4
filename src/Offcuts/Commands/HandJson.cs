using System.Text.Json.Nodes;
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

    /// <summary>An array of texts.</summary>
    internal static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);
}
