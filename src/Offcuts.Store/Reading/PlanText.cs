using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <summary>
/// A plan as text and back, without loss: everything needed to print it and to carry it out, with the pieces and the prices as
/// they were when it was made.
/// </summary>
internal static class PlanText
{
    private const int Schema = 1;

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = new FieldNames(),
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    public static string Write(Plan plan) => JsonSerializer.Serialize(Json(plan), Options);

    public static string Write(PlannedPiece piece) => JsonSerializer.Serialize(Json(piece), Options);

    /// <summary>Throws <see cref="FormatException"/> where it is no plan.</summary>
    public static Plan ReadPlan(string text, Values values)
    {
        var json = Parse<PlanJson>(text);
        return new Plan
        {
            Stages = json.Stages,
            Tiers = new Tiers(
                Figure(json.Tiers.Unfilled), Array.ConvertAll(json.Tiers.UnfilledByStage, Figure), Figure(json.Tiers.SpendCents),
                Figure(json.Tiers.ValueGivenUpCents), json.Tiers.SawCuts)
            { SawCutsBound = json.Tiers.SawCutsBound, Rips = json.Tiers.Rips is { } rips ? Figure(rips) : null },
            Pieces = Array.ConvertAll(json.Pieces, piece => Piece(piece, values)),
            Hardware = Array.ConvertAll(json.Hardware, fill => new HardwareFill(
                new HardwareNeed(fill.Stage, fill.Name, values.Hardware(fill.Hardware, fill.Unit), fill.Count), fill.FromYard, fill.ToBuy, new Money(fill.Cents))),
            Unfilled = Array.ConvertAll(json.Unfilled, need => new Unfilled(need.Stage, need.Cut, need.Count, need.Reason)),
            Savings = new PlanSavings(new Money(json.Savings.AllNewCents), new Money(json.Savings.SpendCents), json.Savings.AllNewProven, json.Savings.Unpriced),
            Unpriced = json.Unpriced,
            Buys = json.Buys ?? true,
            Earlier = json.Earlier ?? false,
            LetGo = json.LetGo ?? [],
            Near = Array.ConvertAll(json.Near ?? [], near => new NearFoam(near.Asked, near.There, near.Pieces)),
            Wishes = new Wishes(
                Array.ConvertAll(json.Pins ?? [], pin => new Pin(Values.Code(pin.Code), pin.Stage, pin.Cut)),
                Array.ConvertAll(json.Spares ?? [], spare => new Spare(Values.Code(spare.Code), spare.Stage, spare.Cut))),
        };
    }

    /// <summary>Throws <see cref="FormatException"/> where it is no piece of a plan.</summary>
    public static PlannedPiece ReadPiece(string text, Values values) => Piece(Parse<PlannedPieceJson>(text), values);

    private static T Parse<T>(string text)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(text, Options) ?? throw new FormatException("a plan is empty");
        }
        catch (JsonException error)
        {
            throw new FormatException("a plan can't be read", error);
        }
    }

    private static PlanJson Json(Plan plan) => new(
        Schema,
        [.. plan.Stages],
        new TiersJson(
            Json(plan.Tiers.Unfilled), [.. plan.Tiers.UnfilledByStage.Select(Json)], Json(plan.Tiers.Spend), Json(plan.Tiers.ValueGivenUp), plan.Tiers.SawCuts,
            plan.Tiers.SawCutsBound, plan.Tiers.Rips is { } rips ? Json(rips) : null),
        [.. plan.Pieces.Select(Json)],
        [.. plan.Hardware.Select(fill => new HardwareJson(
            fill.Need.Stage, fill.Need.Name, fill.Need.Hardware.Name, fill.Need.Hardware.Unit, fill.Need.Count, fill.FromYard, fill.ToBuy, fill.Price.Cents))],
        [.. plan.Unfilled.Select(need => new UnfilledJson(need.Stage, need.Cut, need.Count, need.Reason))],
        new SavingsJson(plan.Savings.AllNew.Cents, plan.Savings.Spend.Cents, plan.Savings.AllNewProven, [.. plan.Savings.Unpriced]),
        [.. plan.Unpriced],
        [.. plan.Wishes.Pins.Select(pin => new PinJson(pin.Piece.Text, pin.Stage, pin.Cut))],
        [.. plan.Wishes.Spares.Select(spare => new SpareJson(spare.Piece.Text, spare.Stage, spare.Cut))],
        plan.Near.Count == 0 ? null : [.. plan.Near.Select(near => new NearJson(near.Asked, near.There, near.Pieces))],
        plan.Buys ? null : false,
        plan.Earlier ? true : null,
        plan.LetGo.Count == 0 ? null : [.. plan.LetGo]);

    private static PlannedPieceJson Json(PlannedPiece piece) => new(
        piece.Source is { } source ? Json(source) : null,
        piece.Bought is { } bought ? Json(bought) : null,
        [.. piece.Cuts.Select(cut => new CutJson(
            cut.Stage, cut.Cut, cut.Start.Units, cut.Length.Units, Words.Use[cut.Use], cut.Rip is { } rip ? Json(rip) : null))],
        [.. piece.Remainders.Select(left => new RemainderJson(left.Start.Units, left.Length.Units, left.Kept))],
        Json(piece.Untouched),
        piece.SawCuts,
        piece.StripsLeft.Count == 0 ? null : [.. piece.StripsLeft.Select(strip => new StripJson(strip.Material.Name, strip.Start.Units, strip.Length.Units))],
        piece.LineSpacing?.Units);

    private static SourceJson Json(Piece piece) => new()
    {
        Code = piece.Code.Text,
        Material = piece.Material.Name,
        Length320thsMm = piece.Length.Units,
        Width320thsMm = piece.Width.Units,
        Condition = Words.Condition[piece.Condition],
        BadSpots320thsMm = Json(piece.BadSpots),
        TrimLeft320thsMm = piece.TrimLeft.Units,
        TrimRight320thsMm = piece.TrimRight.Units,
        Treated = piece.Treated,
        TreatedWith = piece.TreatedWith,
        Stamped = piece.Stamped,
        Nails = piece.Nails,
        Concrete = piece.Concrete,
        Oiled = piece.Oiled,
        Place = piece.Place,
        FromStage = piece.FromStage,
        CutFrom = piece.CutFrom.Text,
        FirstLine320thsMm = piece.FirstLine?.Units,
        Note = piece.Note,
        State = Words.State[piece.State],
        ReservedFor = piece.ReservedFor,
    };

    private static BoughtJson Json(StorePrice price) => new(
        price.Material.Name, price.Length.Units, price.Treated, price.Price.Cents, price.LeadDays, price.Limit, price.Supplier, Values.DayOrNull(price.Date));

    private static RipJson Json(PlannedRip rip) => new(rip.Into.Name, rip.Width.Units, rip.Strip.Units, rip.KeptAs?.Name);

    private static FigureJson Json(Figure figure) => new(figure.Value, figure.Bound);

    private static long[][] Json(IReadOnlyList<Span> spans) => [.. spans.Select(span => new[] { span.Start.Units, span.End.Units })];

    // A piece of no length, or neither of the yard nor bought, is no plan: nobody could draw or cut by it. Where a stretch lies is left to who draws it: refusing a
    // document refuses the yard.
    private static PlannedPiece Piece(PlannedPieceJson json, Values values)
    {
        var piece = Plain(json, values);
        if ((piece.Source is null) == (piece.Bought is null) || piece.LineSpacing is { IsZero: true }) throw new FormatException("a piece of a plan can't be");
        return piece.Length.IsZero ? throw new FormatException("a piece of a plan has no length") : piece;
    }

    private static PlannedPiece Plain(PlannedPieceJson json, Values values) => new()
    {
        Source = json.Source is { } source ? Source(source, values) : null,
        Bought = json.Bought is { } bought ? Bought(bought, values) : null,
        Cuts = Array.ConvertAll(json.Cuts, cut => new PlannedCut(
            cut.Stage, cut.Cut, Length.FromUnits(cut.Start320thsMm), Length.FromUnits(cut.Length320thsMm), Words.Use[cut.Use])
        {
            Rip = cut.Rip is { } rip ? Rip(rip, values) : null,
        }),
        Remainders = Array.ConvertAll(json.Remainders, left => new PlannedRemainder(
            Length.FromUnits(left.Start320thsMm), Length.FromUnits(left.Length320thsMm), left.Kept)),
        Untouched = Spans(json.Untouched320thsMm),
        SawCuts = json.SawCuts,
        LineSpacing = json.LineSpacing320thsMm is { } spacing ? Length.FromUnits(spacing) : null,
        StripsLeft = Array.ConvertAll(json.Strips ?? [], strip => new KeptStrip(
            values.Material(strip.Material), Length.FromUnits(strip.Start320thsMm), Length.FromUnits(strip.Length320thsMm))),
    };

    private static Piece Source(SourceJson json, Values values) => new()
    {
        Code = Values.Code(json.Code),
        Material = values.Material(json.Material),
        Length = Length.FromUnits(json.Length320thsMm),
        Width = Length.FromUnits(json.Width320thsMm),
        Condition = Words.Condition[json.Condition],
        BadSpots = Spans(json.BadSpots320thsMm),
        TrimLeft = Length.FromUnits(json.TrimLeft320thsMm),
        TrimRight = Length.FromUnits(json.TrimRight320thsMm),
        Treated = json.Treated,
        TreatedWith = json.TreatedWith,
        Stamped = json.Stamped,
        Nails = json.Nails,
        Concrete = json.Concrete,
        Oiled = json.Oiled,
        Place = json.Place,
        FromStage = json.FromStage,
        CutFrom = Values.Code(json.CutFrom),
        FirstLine = json.FirstLine320thsMm is { } line ? Length.FromUnits(line) : null,
        Note = json.Note,
        State = Words.State[json.State],
        ReservedFor = json.ReservedFor,
    };

    private static StorePrice Bought(BoughtJson json, Values values) => new()
    {
        Material = values.Material(json.Material),
        Length = Length.FromUnits(json.Length320thsMm),
        Treated = json.Treated,
        Price = new Money(json.Cents),
        LeadDays = json.LeadDays,
        Limit = json.Limit,
        Supplier = json.Supplier,
        Date = Values.DayOrNull(json.SeenOn),
    };

    private static PlannedRip Rip(RipJson json, Values values) => new(
        values.Material(json.Into),
        Length.FromUnits(json.Width320thsMm),
        Length.FromUnits(json.Strip320thsMm),
        json.KeptAs is { } kept ? values.Material(kept) : null);

    private static Figure Figure(FigureJson json) => new(json.Value, json.Bound);

    private static Span[] Spans(long[][] pairs) => Array.ConvertAll(pairs, pair => new Span(Length.FromUnits(pair[0]), Length.FromUnits(pair[1])));

    // SawCuts is saw_cuts, Length320thsMm is length_320ths_mm.
    private sealed class FieldNames : JsonNamingPolicy
    {
        public override string ConvertName(string name)
        {
            var text = new StringBuilder();
            for (var i = 0; i < name.Length; i++)
            {
                var begins = char.IsUpper(name[i]) || (char.IsDigit(name[i]) && !char.IsDigit(name[i - 1]));
                if (i > 0 && begins) text.Append('_');
                text.Append(char.ToLowerInvariant(name[i]));
            }

            return text.ToString();
        }
    }
}
