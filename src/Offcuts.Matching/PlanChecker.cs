using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Matching;

/// <summary>
/// Derives everything that a plan claims again, from the problem and the plan alone, and says what is wrong. Shares no code with
/// the methods or the score: only the words of the trade, among them the yard value and the use rules.
/// </summary>
public static class PlanChecker
{
    /// <summary>Every fault in the plan, each a sentence for a programmer; empty for a right plan.</summary>
    public static IReadOnlyList<string> Faults(Problem problem, Plan plan)
    {
        var check = new Check(problem, plan);
        check.Stages();
        check.Sources();
        foreach (var piece in plan.Pieces) check.Piece(piece);
        check.Fills();
        check.Hardware();
        check.Tiers();
        check.Savings();
        check.Wishes();
        return check.Faults;
    }

    // Copies that a row asks for: from wherever, or from one piece.
    private sealed record Slot(RequiredCut Row, int Count, Code? Piece);

    // A planned cut with what it is taken from.
    private sealed record Laid(PlannedCut Cut, PlannedPiece Piece, Span Span);

    private sealed class Check(Problem problem, Plan plan)
    {
        private readonly List<Laid> _laid = [];
        private readonly RipCheck _ripping = new(problem);
        private long _givenUp;
        private int _sawCuts;
        private int _rips;

        public List<string> Faults { get; } = [];

        public void Stages()
        {
            if (!plan.Stages.SequenceEqual(problem.Stages.Select(stage => stage.Name))) Faults.Add("the stages are not the problem's");
        }

        public void Sources()
        {
            var last = -1;
            foreach (var piece in plan.Pieces)
            {
                if (piece.Source is null == piece.Bought is null) Faults.Add("a piece is either of the yard or bought");
                if (piece.Source is not { } source) continue;
                var index = problem.Pieces.ToList().FindIndex(one => ReferenceEquals(one, source) || (!one.Code.IsNone && one.Equals(source)));
                if (index < 0) Faults.Add($"{Name(piece)} is not on hand");
                else if (index <= last) Faults.Add($"{Name(piece)} is used twice or out of the yard's order");
                last = Math.Max(last, index);
            }

            var bought = plan.Pieces.SkipWhile(piece => piece.Bought is null).ToArray();
            if (bought.Any(piece => piece.Bought is null)) Faults.Add("a yard piece stands after a bought one");
            var prices = bought.Where(piece => piece.Bought is not null).Select(piece => piece.Bought!).ToArray();
            if (!prices.SequenceEqual(prices.OrderBy(price => price.Material).ThenBy(price => price.Length))) Faults.Add("bought pieces are not by material and length");
            if (prices.Length > 0 && !problem.Buy) Faults.Add("something is bought though nothing may be");
            foreach (var price in prices.Distinct())
            {
                if (!problem.Prices.Of(price.Material).Contains(price)) Faults.Add($"{price.Material} {price.Length} is not in the price book");
                if (prices.Count(one => one == price) > price.Limit) Faults.Add($"more of {price.Material} {price.Length} is bought than can be had");
            }
        }

        public void Piece(PlannedPiece piece)
        {
            var kerf = problem.Settings.Kerf(piece.Material).Units;
            var spans = piece.Source?.Spans() ?? [new Span(Length.Zero, piece.Bought!.Length)];
            var cutsOf = spans.Select(_ => new List<PlannedCut>()).ToArray();
            if (piece.Cuts.Count == 0) Faults.Add($"{Name(piece)} has no cut");
            if (!piece.Cuts.Select(cut => cut.Start).SequenceEqual(piece.Cuts.Select(cut => cut.Start).Order())) Faults.Add($"{Name(piece)}: cuts are out of order");
            foreach (var cut in piece.Cuts)
            {
                var at = spans.ToList().FindIndex(span => span.Start <= cut.Start && cut.Start.Units + cut.Length.Units <= span.End.Units);
                if (at < 0) Faults.Add($"{Name(piece)}: the cut {cut.Cut} at {cut.Start} leaves its span");
                else cutsOf[at].Add(cut);
            }

            var remainders = new List<PlannedRemainder>();
            var saws = 0;
            for (var s = 0; s < spans.Count; s++)
            {
                if (cutsOf[s].Count > 0) saws += OneSpan(piece, spans[s], [.. cutsOf[s].OrderBy(cut => cut.Start)], kerf, remainders);
            }

            if (!piece.Remainders.SequenceEqual(remainders)) Faults.Add($"{Name(piece)}: the remainders are not what is left");
            if (!piece.Untouched.SequenceEqual(spans.Where((_, s) => cutsOf[s].Count == 0))) Faults.Add($"{Name(piece)}: the untouched spans are not those without cuts");
            saws += Rips(piece);
            if (piece.SawCuts != saws) Faults.Add($"{Name(piece)}: {piece.SawCuts} saw cuts are said, {saws} are needed");
            _sawCuts += saws;
        }

        // What is ripped, and the saw cuts that takes.
        private int Rips(PlannedPiece piece)
        {
            var ripped = piece.Cuts.Where(cut => cut.Rip is not null).ToArray();
            _rips += ripped.Length;
            if (ripped.Length > 0 && piece.Source is null) Faults.Add($"{Name(piece)} is bought to be ripped");
            foreach (var cut in ripped)
            {
                if (_ripping.Fault(piece.Material, cut) is { } fault) Faults.Add($"{Name(piece)}: the cut {cut.Cut}: {fault}");
                if (cut.Rip!.KeptAs is { } kept && piece.Source is { } source)
                    _givenUp -= YardValue.Of(cut.Length, source.Condition, problem.Prices.ForValue(kept, source.Treated), problem.Settings.Keep(kept)).Cents;
            }

            return ripped.Sum(cut => RipCheck.SawCuts(cut.Rip!));
        }

        private int OneSpan(PlannedPiece piece, Span span, PlannedCut[] cuts, long kerf, List<PlannedRemainder> remainders)
        {
            var next = span.Start.Units;
            foreach (var cut in cuts)
            {
                if (cut.Start.Units != next) Faults.Add($"{Name(piece)}: the cut {cut.Cut} starts at {cut.Start}, not right after the one before");
                next = cut.Start.Units + cut.Length.Units + kerf;
                _laid.Add(new Laid(cut, piece, span));
            }

            var end = cuts[^1].Start.Units + cuts[^1].Length.Units;
            var keep = problem.Settings.Keep(piece.Material);
            var prices = problem.Prices.ForValue(piece.Material, piece.Source?.Treated ?? piece.Bought!.Treated);
            var condition = piece.Source?.Condition ?? Condition.Sound;
            if (piece.Source is not null) _givenUp += YardValue.Of(span.Length, condition, prices, keep).Cents;
            if (next < span.End.Units)
            {
                var rest = Length.FromUnits(span.End.Units - next);
                remainders.Add(new PlannedRemainder(Length.FromUnits(next), rest, rest >= keep));
                if (rest >= keep) _givenUp -= YardValue.Of(rest, condition, prices, keep).Cents;
            }

            return end < span.End.Units ? cuts.Length : cuts.Length - 1;
        }

        public void Fills()
        {
            var rows = problem.Stages.SelectMany(stage => stage.Cuts).ToLookup(cut => (cut.Stage, cut.Name));
            var laid = _laid.ToLookup(one => (one.Cut.Stage, one.Cut.Cut));
            var needs = problem.Stages.SelectMany(stage => stage.Hardware).ToLookup(need => (need.Stage, need.Name));
            var left = plan.Unfilled.ToLookup(one => (one.Stage, one.Cut));
            foreach (var key in laid.Select(group => group.Key).Where(key => !rows.Contains(key))) Faults.Add($"nobody asked for the cut {key.Cut} of {key.Stage}");
            foreach (var key in left.Select(group => group.Key).Where(key => !rows.Contains(key) && !needs.Contains(key)))
                Faults.Add($"nobody asked for what is unfilled: {key.Cut} of {key.Stage}");
            foreach (var group in rows)
            {
                if (!Assignable([.. Slots([.. group])], [.. laid[group.Key]])) Faults.Add($"the cuts {group.Key.Name} of {group.Key.Stage} do not fit what was asked");
            }

            foreach (var key in rows.Select(group => group.Key).Union(needs.Select(group => group.Key)))
            {
                var wanting = rows[key].Sum(row => row.Count) - laid[key].Count()
                    + plan.Hardware.Where(fill => (fill.Need.Stage, fill.Need.Name) == key).Sum(fill => fill.Unfilled);
                var said = left[key].Sum(one => one.Count);
                if (wanting != said) Faults.Add($"{key.Name} of {key.Stage}: {wanting} are unfilled, {said} are said to be");
            }

            if (plan.Unfilled.Any(one => one.Count < 1 || one.Reason.Length == 0)) Faults.Add("something is unfilled without a count or a reason");
        }

        // What a name asks for: so many from wherever, and each pinned copy from its piece. A pinned name stands once.
        private IEnumerable<Slot> Slots(RequiredCut[] rows)
        {
            var pins = problem.Wishes.Pins.Where(pin => pin.Stage == rows[0].Stage && pin.Cut == rows[0].Name).ToArray();
            if (pins.Length > 0 && (rows.Length > 1 || pins.Length > rows[0].Count)) Faults.Add($"{rows[0].Name} of {rows[0].Stage} can't be pinned so");
            foreach (var pin in pins) yield return new Slot(rows[0], 1, pin.Piece);
            foreach (var row in rows) yield return new Slot(row, row.Count - pins.Length, null);
        }

        // Each laid cut goes to one slot that it fits; a slot takes as many as it asks for. By augmenting paths.
        private bool Assignable(Slot[] rows, Laid[] laid)
        {
            var given = rows.Select(_ => new List<int>()).ToArray();
            return Enumerable.Range(0, laid.Length).All(one => Give(one, new bool[rows.Length]));

            bool Give(int one, bool[] seen)
            {
                for (var r = 0; r < rows.Length; r++)
                {
                    if (seen[r] || !Fits(rows[r], laid[one])) continue;
                    seen[r] = true;
                    if (given[r].Count < rows[r].Count)
                    {
                        given[r].Add(one);
                        return true;
                    }

                    for (var i = 0; i < given[r].Count; i++)
                    {
                        var other = given[r][i];
                        if (!Give(other, seen)) continue;
                        given[r][i] = one;
                        return true;
                    }
                }

                return false;
            }
        }

        private bool Fits(Slot slot, Laid laid)
        {
            var row = slot.Row;
            if (slot.Piece is { } pinned && laid.Piece.Source?.Code != pinned) return false;
            if (laid.Piece.Source is { } own && problem.Wishes.Spares.Any(spare =>
                spare.Piece == own.Code && (spare.Cut.Length == 0 || (spare.Cut == row.Name && spare.Stage == row.Stage)))) return false;
            var whole = laid.Cut.Start == laid.Span.Start && laid.Cut.Length == laid.Span.Length;
            var rip = laid.Cut.Rip;
            return laid.Cut.Use == row.Use
                && row.Material.Equals(rip?.Into ?? laid.Piece.Material)
                && (rip is null || (row.Rip && !row.Material.Equals(laid.Piece.Material)))
                && row.Material is not Sheet
                && (laid.Cut.Length == row.Shortest || (whole && laid.Cut.Length >= row.Shortest && laid.Cut.Length <= row.Longest))
                && (laid.Piece.Source is { } source
                    ? problem.Settings.Rules.Allows(source with { Stamped = rip is null && source.Stamped }, row)
                    : problem.Settings.Rules.Allows(Condition.Sound, stamped: true, laid.Piece.Bought!.Treated, row.Use, row.Treated));
        }

        public void Hardware()
        {
            var needs = problem.Stages.SelectMany(stage => stage.Hardware).ToArray();
            if (!plan.Hardware.Select(fill => fill.Need).SequenceEqual(needs)) Faults.Add("the hardware is not what was asked");
            foreach (var fill in plan.Hardware)
            {
                if (fill.FromYard < 0 || fill.ToBuy < 0 || fill.Unfilled < 0) Faults.Add($"{fill.Need.Name}: a count is negative");
                var price = problem.Prices.Of(fill.Need.Hardware);
                if (fill.ToBuy > 0 && (!problem.Buy || price is null)) Faults.Add($"{fill.Need.Name} can't be bought");
                if (fill.Price.Cents != (price?.Price.Cents ?? 0) * fill.ToBuy) Faults.Add($"{fill.Need.Name}: the price is not that of {fill.ToBuy}");
            }

            foreach (var group in plan.Hardware.GroupBy(fill => fill.Need.Hardware))
            {
                var inYard = problem.Bins.Where(bin => bin.Hardware.Equals(group.Key)).Sum(bin => bin.Quantity);
                if (group.Sum(fill => fill.FromYard) > inYard) Faults.Add($"more of {group.Key} is taken than the bins hold");
                if (problem.Prices.Of(group.Key) is { Limit: { } limit } && group.Sum(fill => fill.ToBuy) > limit) Faults.Add($"more of {group.Key} is bought than can be had");
            }
        }

        public void Tiers()
        {
            var tiers = plan.Tiers;
            for (var s = 0; s < problem.Stages.Count; s++)
            {
                var stage = problem.Stages[s];
                var wanting = stage.Cuts.Sum(cut => (long)cut.Count) - _laid.Count(laid => laid.Cut.Stage == stage.Name)
                    + plan.Hardware.Where(fill => fill.Need.Stage == stage.Name).Sum(fill => (long)fill.Unfilled);
                if (s >= tiers.UnfilledByStage.Count || tiers.UnfilledByStage[s].Value != wanting) Faults.Add($"{stage.Name}: {wanting} are unfilled, the tier says otherwise");
            }

            var spend = plan.Pieces.Sum(piece => piece.Bought?.Price.Cents ?? 0) + plan.Hardware.Sum(fill => (problem.Prices.Of(fill.Need.Hardware)?.Price.Cents ?? 0) * fill.ToBuy);
            Same("unfilled", tiers.Unfilled.Value, tiers.UnfilledByStage.Sum(figure => figure.Value));
            Same("spend", tiers.Spend.Value, spend);
            Same("value given up", tiers.ValueGivenUp.Value, _givenUp);
            Same("saw cuts", tiers.SawCuts, _sawCuts);
            if (problem.Stages.Any(stage => stage.Cuts.Any(cut => cut.Rip)) != tiers.Rips is not null) Faults.Add("rips are a tier where a cut may be ripped, and only there");
            var rips = tiers.Rips ?? Figure.Best(0);
            Same("rips", rips.Value, _rips);
            var saws = new Figure(tiers.SawCuts, tiers.SawCutsBound ?? 0);
            foreach (var figure in tiers.UnfilledByStage.Append(tiers.Unfilled).Append(tiers.Spend).Append(rips).Append(tiers.ValueGivenUp).Append(saws))
            {
                if (figure.Bound > figure.Value) Faults.Add($"a bound of {figure.Bound} is above the value {figure.Value}");
            }
        }

        public void Savings()
        {
            Same("savings' spend", plan.Savings.Spend.Cents, plan.Tiers.Spend.Value);
            var materials = problem.Stages.SelectMany(stage => stage.Cuts.Select(cut => cut.Material).Concat(stage.Hardware.Select(need => need.Hardware)))
                .Concat(plan.Pieces.Select(piece => piece.Material))
                .Concat(plan.Pieces.SelectMany(piece => piece.Cuts).Where(cut => cut.Rip?.KeptAs is not null).Select(cut => cut.Rip!.KeptAs!));
            var unpriced = materials.Where(material => problem.Prices.Of(material).Count == 0).Distinct().Order().Select(material => material.Name);
            if (!plan.Unpriced.SequenceEqual(unpriced)) Faults.Add("the materials without a price are not named right");
        }

        public void Wishes()
        {
            if (!plan.Wishes.Pins.SequenceEqual(problem.Wishes.Pins) || !plan.Wishes.Spares.SequenceEqual(problem.Wishes.Spares)) Faults.Add("the wishes are not the problem's");
        }

        private void Same(string what, long said, long found)
        {
            if (said != found) Faults.Add($"{what}: {said} is said, {found} is found");
        }

        private static string Name(PlannedPiece piece) =>
            piece.Source is { } source ? source.Code.ToString() : $"the bought {piece.Bought?.Material} {piece.Bought?.Length}";
    }
}
