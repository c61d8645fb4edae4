using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>A piece to fetch.</summary>
/// <param name="Number">Its number on the sheet, from 1.</param>
/// <param name="Code">Its code, or <c>new</c>.</param>
/// <param name="Material">What it is.</param>
/// <param name="Length">How long it is.</param>
/// <param name="First">What to do to it before it is cut, and whether it is ripped; empty for nothing.</param>
internal sealed record PickRow(string Number, string Code, string Material, string Length, string First);

/// <summary>The pieces at one place.</summary>
internal sealed record PickPlace(string Place, IReadOnlyList<PickRow> Rows);

/// <summary>One stretch of a piece, in words.</summary>
internal sealed record StretchRow(string Sign, string Start, string Length, string End, string What, string Stage);

/// <summary>One piece to cut.</summary>
internal sealed record CutPiece(int Number, string Head, string Marks, IReadOnlyList<string> Notes, PieceBar Bar, IReadOnlyList<StretchRow> Rows);

/// <summary>Cuts of one piece that are ripped alike.</summary>
internal sealed record RipRow(string Number, string Code, string Cuts, string Width, string Strip, string Becomes);

/// <summary>One line of the shopping list.</summary>
internal sealed record BuyRow(string Count, string What, string Each, string Cost, string About);

/// <summary>One need for hardware.</summary>
internal sealed record HardwareRow(string Name, string Stage, string Needed, string FromYard, string ToBuy, string Wanting);

/// <summary>Everything a cut sheet says, in words, before it is laid out as text or on paper.</summary>
internal sealed class CutSheetContent
{
    private readonly Plan _plan;
    private readonly KeptPlan? _kept;
    private readonly CutSheetOptions _options;

    // Why a piece that waits can't be cut as planned any more, by its place in the plan.
    private readonly Dictionary<int, string> _trouble = [];

    public CutSheetContent(Plan plan, KeptPlan? kept, CutSheetOptions options)
    {
        if (kept is not null && options.Now is { } now)
        {
            _trouble = PlanToday.Troubles(kept, now).ToDictionary(each => each.Index, each => each.Why);
            kept = PlanToday.Of(kept, now);
            plan = kept.Plan;
        }

        (_plan, _kept, _options) = (plan, kept, options);
        var all = plan.Pieces.Select((piece, i) => (Piece: piece, Index: i)).Where(each => StateOf(each.Index) == StepState.Waiting).ToArray();
        var waiting = all.Where(each => !_trouble.ContainsKey(each.Index)).ToArray();
        Alike = UsedAsTheyAre.Of(waiting, (Named, CodeOf), Parts, options.Settings);
        var told = Alike.SelectMany(group => group.Indexes).ToHashSet();
        Picks = [.. Pick(waiting), .. NotAsPlanned([.. all.Except(waiting)])];
        Pieces = [.. waiting.Where(each => !told.Contains(each.Index)).Select(each => Cut(each.Piece, each.Index))];
        Rips = [.. waiting.SelectMany(each => RipsOf(each.Piece, each.Index, toHeight: false))];
        ToHeight = [.. waiting.SelectMany(each => RipsOf(each.Piece, each.Index, toHeight: true))];
        PartsToHeight = HeightRows.Of(Parts, index => StateOf(index) == StepState.Waiting && !_trouble.ContainsKey(index), index => CodeOf(plan.Pieces[index]), options.Settings.Unit);
        Behind = [.. BehindYou(plan.Pieces)];
        Shopping = ShoppingList.Of(waiting.Select(each => each.Piece), HardwareClosed ? [] : plan.Hardware, options);
        Cautions = Core.Yard.Cautions.ForPlan(plan, code => TextRules.Harmless(options.CodeText(code)));
    }

    public string Title => TextRules.Harmless(_options.Title);

    /// <summary>True where it is to be told for which stage a cut is.</summary>
    public bool SeveralStages => _plan.Stages.Count > 1;

    public IReadOnlyList<string> Heading => [.. HeadingLines()];

    public IReadOnlyList<PickPlace> Picks { get; }

    public IReadOnlyList<CutPiece> Pieces { get; }

    /// <summary>Pieces alike that no saw touches: told together, and not among <see cref="Pieces"/>.</summary>
    public IReadOnlyList<AsTheyAre> Alike { get; }

    /// <summary>Cuts that are ripped to another material.</summary>
    public IReadOnlyList<RipRow> Rips { get; }

    /// <summary>Cuts that are sawn to the height of their course.</summary>
    public IReadOnlyList<RipRow> ToHeight { get; }

    /// <summary>Parts of cuts that are sawn to a height of their own.</summary>
    public IReadOnlyList<PartRow> PartsToHeight { get; }

    /// <summary>What stands above the list of rips.</summary>
    public static string RipLead =>
        "Each is sawn lengthwise out of its stretch above. Cut that off first, so that the board keeps its full width elsewhere; stretches side by side that are ripped alike are parted last. What is ripped has no grade until it is graded anew (common practice).";

    public IReadOnlyList<string> Behind { get; }

    public ShoppingList Shopping { get; }

    public IReadOnlyList<AppliedCaution> Cautions { get; }

    public bool Rounded => Pieces.SelectMany(piece => piece.Rows).Any(row => (row.Start + row.Length + row.End).Contains('~'));

    public IReadOnlyList<BuyRow> Buys => [.. Shopping.Rows.Select(Buy)];

    public IReadOnlyList<(string Label, string Amount)> Sums =>
        Shopping.TaxThousandthsOfPercent == 0
            ? [("together, without tax", Cash(Shopping.Cost))]
            :
            [
                ("together", Cash(Shopping.Cost)),
                ($"tax {(Shopping.TaxThousandthsOfPercent / 1000m).ToString("0.###", CultureInfo.InvariantCulture)} %", Cash(Shopping.Tax)),
                ("to pay", Cash(Shopping.Total)),
            ];

    public IReadOnlyList<string> Near => [.. _plan.Near.Select(near => $"{PlanReasons.NearFoamBought(near.Pieces, near.There, near.Asked)}.")];

    public bool HardwareDone => _kept?.HardwareDone ?? false;

    /// <summary>True once the hardware is counted out or given up: then none of it is bought.</summary>
    public bool HardwareClosed => _kept is { HardwareWaits: false };

    public IReadOnlyList<HardwareRow> Hardware =>
    [
        .. _plan.Hardware.Select(fill => new HardwareRow(
            TextRules.Harmless(Named(fill.Need)),
            TextRules.Harmless(fill.Need.Stage), Count(fill.Need.Count), Count(fill.FromYard), Count(fill.ToBuy), Count(fill.Unfilled))),
    ];

    /// <summary>What the wall takes of counted things, for its pieces are all that the plan itself makes.</summary>
    public IReadOnlyList<HardwareRow> WallHardware =>
    [
        .. (_options.Filled?.Hardware ?? []).Select(one => new HardwareRow(
            TextRules.Harmless(one.Name), TextRules.Harmless(string.Join(", ", _plan.Stages)), Many(one.Needed), Many(one.FromYard), "", Many(one.Lacking))),
    ];

    /// <summary>What stands above it.</summary>
    public string WallHardwareLead =>
        $"What the wall {TextRules.Harmless(_options.Filled?.Wall ?? "")} still takes, ties with those that joints ask for. It is counted out with what else its stage needs, not by this plan; it is put there with: offcuts wall enter {ShellWord.Of(_options.Filled?.Wall ?? "")}";

    // A need that was entered without a name of its own is called as the thing is.
    private static string Named(HardwareNeed need) =>
        string.Equals(need.Name, need.Hardware.Name, StringComparison.OrdinalIgnoreCase) ? need.Name : $"{need.Hardware.Name}, {need.Name}";

    public IReadOnlyList<string> NotFilled =>
    [
        .. _plan.Unfilled.Select(open => $"{open.Count} x {TextRules.Harmless(open.Cut)} ({TextRules.Harmless(open.Stage)}): {TextRules.Harmless(open.Reason)}"),
        .. (_kept?.NotMade ?? []).GroupBy(cut => (cut.Stage, cut.Cut))
            .Select(same => $"{Count(same.Count())} x {TextRules.Harmless(same.Key.Cut)} ({TextRules.Harmless(same.Key.Stage)}): {PlanReasons.CameOutWrong()}"),
        .. _trouble.SelectMany(each => _plan.Pieces[each.Key].Cuts.Select(cut => (cut.Stage, cut.Cut, Code: CodeOf(_plan.Pieces[each.Key]), Why: each.Value))).GroupBy(one => one)
            .Select(same => $"{Count(same.Count())} x {TextRules.Harmless(same.Key.Cut)} ({TextRules.Harmless(same.Key.Stage)}): {PlanReasons.PieceNotAsPlanned(same.Key.Code, same.Key.Why)}"),
        .. (_kept?.LetGo ?? []).GroupBy(cut => (cut.Stage, cut.Cut))
            .Select(same => $"{Count(same.Count())} x {TextRules.Harmless(same.Key.Cut)} ({TextRules.Harmless(same.Key.Stage)}): {PlanReasons.PieceLetGo()}"),
    ];

    public IReadOnlyList<string> Worth => [.. PlanWorth.Of(_plan, _options.Settings), .. OldPrices()];

    // The all-new figure rests on the prices of everything the plan uses, bought or not.
    private IEnumerable<string> OldPrices()
    {
        var used = _plan.Pieces.Select(piece => piece.Material).Concat(_plan.Pieces.SelectMany(piece => piece.Cuts.Select(piece.MaterialOf))).Concat(_plan.Hardware.Select(fill => fill.Need.Hardware)).ToHashSet();
        return PriceBook.OldSentence(_options.Prices.Old(_options.Printed, used, _options.Settings.Unit)) is { } old ? [TextRules.Harmless(old)] : [];
    }

    private IReadOnlyList<NotchedPart> Parts => _options.Filled?.Parts ?? [];

    private StepState StateOf(int index) => _kept is { } kept ? kept.Steps[index].State : StepState.Waiting;

    private IEnumerable<string> HeadingLines()
    {
        if (_options.Note.Length > 0) yield return TextRules.Harmless(_options.Note);
        yield return _kept is { } kept
            ? $"Plan {kept.Id.ToString(CultureInfo.InvariantCulture)}, made {Day(kept.Made)}; printed {Day(_options.Printed)}."
            : $"Printed {Day(_options.Printed)}.";
        var stages = _plan.Stages.Select(stage => TextRules.Harmless(stage) + (_options.StageDates.TryGetValue(stage, out var date) ? $" ({Day(date)})" : ""));
        if (_plan.Stages.Count > 0) yield return $"For {string.Join(", ", stages)}.";
        if (_kept is { Open: false } ended && (ended.RestGivenUp || ended.HardwareDropped))
            yield return ended.HardwareDone || ended.PiecesCut.Any() ? "THE REST IS GIVEN UP: nothing of it waits any more." : "GIVEN UP: nothing of it waits any more.";
        if (_trouble.Count > 0)
            yield return $"NOT AS PLANNED ANY MORE: {string.Join(", ", _trouble.Select(each => $"{CodeOf(_plan.Pieces[each.Key])} ({each.Value})"))}. Match the rest again.";
        if (_options.NotAsked.Length > 0) yield return $"NOT ASKED FOR ANY MORE: {TextRules.Harmless(_options.NotAsked)}. The stage needs that no more, or of another length or material: match the rest again.";
        if (!_plan.Buys) yield return "As wished, nothing is bought.";
        if (!_plan.Wishes.Empty) yield return $"As wished: {TextRules.Harmless(_plan.Wishes.ToText(_options.CodeText))}.";
    }

    private PickPlace[] Pick((PlannedPiece Piece, int Index)[] waiting) =>
    [
        .. waiting
            .GroupBy(each => each.Piece.Source is { } source ? source.Place : null, StringComparer.OrdinalIgnoreCase)
            .OrderBy(group => group.Key is null).ThenBy(group => group.Key is "").ThenBy(group => group.Key, StringComparer.OrdinalIgnoreCase)
            .Select(group => new PickPlace(
                group.Key switch
                {
                    null => "new, from the store",
                    "" => "no place noted",
                    var place => TextRules.Harmless(place),
                },
                [.. group.OrderBy(each => each.Piece.Material).ThenBy(each => each.Index).Where(each => NewOf(each) is not { } alike || alike.Indexes[0] == each.Index).Select(PickOf)])),
    ];

    private PickRow PickOf((PlannedPiece Piece, int Index) each) => NewOf(each) is { } alike
        ? new("", $"{Count(alike.Indexes.Count)} new", Named(each.Piece), Text(each.Piece.Length), "used as they are")
        : new(Count(each.Index + 1), CodeOf(each.Piece), Named(each.Piece), Text(each.Piece.Length), ToDo(each.Piece));

    // New ones that are used as they are have no label to be told apart by, so that they are fetched by their count.
    private AsTheyAre? NewOf((PlannedPiece Piece, int Index) each) => each.Piece.Source is null ? Alike.FirstOrDefault(alike => alike.Indexes.Contains(each.Index)) : null;

    private IEnumerable<PickPlace> NotAsPlanned((PlannedPiece Piece, int Index)[] troubled)
    {
        if (troubled.Length == 0) yield break;
        yield return new PickPlace("not to be fetched: not as planned any more", [.. troubled.Select(each => new PickRow(
            Count(each.Index + 1), CodeOf(each.Piece), Named(each.Piece), Text(each.Piece.Length), _trouble[each.Index]))]);
    }

    private CutPiece Cut(PlannedPiece piece, int index)
    {
        var bar = PieceBar.Of(piece);
        var place = piece.Source is { Place.Length: > 0 } source ? $", at {TextRules.Harmless(source.Place)}" : "";
        return new CutPiece(
            index + 1,
            $"{CodeOf(piece)}, {Named(piece)}, {Text(piece.Length)}{place}",
            piece.Source is { } own ? string.Join(", ", LabelContent.MarksOf(own)) : "",
            [.. Notes(piece, index)],
            bar,
            [.. bar.Stretches.Where(stretch => stretch.Kind != StretchKind.Kerf).Select(stretch => Row(piece, stretch))]);
    }

    // Cuts alike side by side share a row: their strips are alike too.
    private IEnumerable<RipRow> RipsOf(PlannedPiece piece, int index, bool toHeight)
    {
        for (var i = 0; i < piece.Cuts.Count;)
        {
            var (first, alike) = (piece.Cuts[i], 1);
            while (i + alike < piece.Cuts.Count && (piece.Cuts[i + alike].Rip, piece.Cuts[i + alike].Length) == (first.Rip, first.Length)) alike++;
            if (first.Rip is { } rip && HeightRows.IsToHeight(piece, first) == toHeight)
            {
                var letters = string.Join(' ', Enumerable.Range(i, alike).Select(PieceBar.Letter));
                yield return new RipRow(
                    Count(index + 1), CodeOf(piece), letters, Text(rip.Width) + (toHeight ? "" : $" ({TextRules.Harmless(rip.Into.Name)})"), rip.Strip.IsZero ? "none" : Text(rip.Strip), Becomes(rip, first.Length, alike));
            }

            i += alike;
        }
    }

    private string Becomes(PlannedRip rip, Length length, int strips)
    {
        if (rip.Strip.IsZero) return "";
        if (rip.KeptAs is not { } kept) return "scrap";
        var label = strips == 1 ? $"keep {Text(length)} as {TextRules.Harmless(kept.Name)}, new label" : $"keep {Count(strips)} of {Text(length)} as {TextRules.Harmless(kept.Name)}, new labels";
        return rip.SawCuts == 1 ? label : $"rip to {Text(rip.KeptWidth!.Value)}, {label}";
    }

    private StretchRow Row(PlannedPiece piece, Stretch stretch)
    {
        var (start, length, end) = (Text(stretch.Start), Text(stretch.Length), Text(stretch.End));
        var cut = stretch.Kind == StretchKind.Cut ? piece.Cuts[stretch.Index] : null;
        var sawnOff = FreeingCuts.Of(piece, _options.Settings) is { Count: > 0 } edges && edges.Any(at => at == stretch.Start || at == stretch.End);
        var (sign, what) = stretch.Kind switch
        {
            StretchKind.Cut => (PieceBar.Letter(stretch.Index).ToString(), TextRules.Harmless(cut!.Cut) + (cut.Rip is null ? "" : HeightRows.IsToHeight(piece, cut) ? $", {Text(cut.Rip.Width)} high" : ", ripped")),
            StretchKind.Kept => ("=", "keep, new label"),
            StretchKind.Scrap => (".", "scrap"),
            StretchKind.Untouched => ("-", stretch.Length >= _options.Settings.Keep(piece.Material) ? "keep, new label" : "scrap"),
            StretchKind.Bad => ("x", sawnOff ? "bad, saw off" : "bad, scrap"),
            _ => ("/", sawnOff ? "trim off" : "scrap"),
        };
        return new StretchRow(sign, start, length, end, what, cut is null ? "" : TextRules.Harmless(cut.Stage));
    }

    private IEnumerable<string> Notes(PlannedPiece piece, int index)
    {
        if (First(piece) is { Length: > 0 } first) yield return $"Before cutting: {first}.";
        yield return Saws(piece, index);
        if (piece.Source?.FirstLine is { } line) yield return $"First pattern line {Text(line)} from the marked end.";
        if (piece.Source is { } source && LabelContent.TreatmentOf(source) is { Length: > 0 } treatment) yield return $"It is {treatment}.";
        if (piece.Source is { Note.Length: > 0 } noted) yield return $"Note: {TextRules.Harmless(noted.Note)}";
    }

    private string Saws(PlannedPiece piece, int index)
    {
        var lengthwise = piece.Cuts.Sum(cut => cut.Rip?.SawCuts ?? 0);
        var freeing = FreeingCuts.Of(piece, _options.Settings);
        var all = piece.SawCuts + freeing.Count;
        var inPart = Parts.Any(part => part.Piece == index);
        if (all == 0) return inPart ? "A part of it is cut to height, see below; else it is used as it is." : "No saw cut: it is used as it is.";
        string Part(int count) => count == all ? "" : $"{Count(count)} of them ";
        var what = new List<string>();
        if (lengthwise > 0) what.Add($"{Part(lengthwise)}lengthwise");
        if (freeing.Count > 0) what.Add($"{Part(freeing.Count)}to take off what is bad or trimmed, at {Listed([.. freeing.Select(Text)])}");
        return string.Join(", ", what.Prepend(SawCutsText.Cuts(all))) + (inPart ? ", and a part of it is cut to height, see below." : ".");
    }

    private static string Listed(string[] parts) => parts.Length == 1 ? parts[0] : $"{string.Join(", ", parts[..^1])} and {parts[^1]}";

    // New pieces alike that were given up one behind the other are told together: nobody looks for any of them.
    private IEnumerable<string> BehindYou(IReadOnlyList<PlannedPiece> pieces)
    {
        bool NotBought(int i) => i < pieces.Count && pieces[i].Source is null && StateOf(i) == StepState.Dropped;
        for (var i = 0; i < pieces.Count;)
        {
            var alike = 1;
            while (NotBought(i) && NotBought(i + alike) && pieces[i + alike].Material.Equals(pieces[i].Material) && pieces[i + alike].Length == pieces[i].Length && pieces[i + alike].Bought!.Treated == pieces[i].Bought!.Treated) alike++;
            if (StateOf(i) != StepState.Waiting)
            {
                yield return (alike > 1 ? $"{i + 1} to " : "") + Finished(pieces[i], i + alike - 1);
                foreach (var line in CameBack(i)) yield return line;
            }

            i += alike;
        }
    }

    private string Finished(PlannedPiece piece, int index) => $"{index + 1}: {CodeOf(piece)}, {Named(piece)}, {Text(piece.Length)}: " + StateOf(index) switch
    {
        StepState.Done => "cut as planned",
        StepState.DoneOtherwise => "cut, but not as planned",
        _ => _kept?.WasLetGo(index) is true ? "given up: it was let go" : "given up: dropped, or matched again",
    };

    // One line each, from the marked end on, so that no code is ever broken in two.
    private IEnumerable<string> CameBack(int index) => _options.CameBack.TryGetValue(index, out var pieces)
        ? pieces.Select(piece => $"  kept: {(piece.Material.Equals(_plan.Pieces[index].Material) ? "" : $"{TextRules.Harmless(piece.Material.Name)} ")}{Text(piece.Length)}, label {TextRules.Harmless(_options.CodeText(piece.Code))}")
        : [];

    private BuyRow Buy(ShoppingRow row)
    {
        var about = new List<string>();
        if (row.Price is { Date: { } seen } price) about.Add(price.IsOld(_options.Printed) ? $"OLD PRICE, seen {Day(seen)}" : $"price of {Day(seen)}");
        else if (row.Price is not null) about.Add("price without a date");
        if (row.Price is { Supplier.Length: > 0 } sold) about.Add($"from {TextRules.Harmless(sold.Supplier)}");
        if (row.OrderBy is { } order) about.Add(order < _options.Printed ? $"order by {Day(order)}: TOO LATE for {Day(row.Needed!.Value)}" : $"order by {Day(order)}");
        else if (row.Price?.LeadDays is { } lead) about.Add($"takes {Count(lead)} {(lead == 1 ? "day" : "days")}");
        var length = row.Length.IsZero ? "" : $" {Text(row.Length)}";
        var each = row.Price is { } known && known.Price * row.Count == row.Cost ? Cash(known.Price) : "";
        return new BuyRow(Count(row.Count), $"{TextRules.Harmless(row.Material.Name)}{(row.Treated ? " treated" : "")}{length}", each, Cash(row.Cost), string.Join("; ", about));
    }

    // Whoever fetches it learns where it goes next.
    private static string ToDo(PlannedPiece piece) => string.Join("; ", ((string[])
    [
        First(piece),
        piece.Cuts.Any(cut => cut.Rip is not null && !HeightRows.IsToHeight(piece, cut)) ? "to be ripped" : "",
        piece.Cuts.Any(cut => HeightRows.IsToHeight(piece, cut)) ? "to be cut to height" : "",
    ]).Where(part => part.Length > 0));

    private static string First(PlannedPiece piece) => piece.Source switch
    {
        { Nails: true, Concrete: true } => "pull the nails and scrape off the concrete",
        { Nails: true } => "pull the nails",
        { Concrete: true } => "scrape off the concrete",
        _ => "",
    };

    private string CodeOf(PlannedPiece piece) => piece.Source is { } source ? TextRules.Harmless(_options.CodeText(source.Code)) : "new";

    private static string Named(PlannedPiece piece) =>
        TextRules.Harmless(piece.Material.Name) + (piece.Source?.Treated ?? piece.Bought!.Treated ? " treated" : "");

    private string Text(Length length) => length.ToText(_options.Settings.Unit);

    private string Cash(Money money) => money.ToText(_options.Settings.CurrencySign);

    private static string Many(long count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
