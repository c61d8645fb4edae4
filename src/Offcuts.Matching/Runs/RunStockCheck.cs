using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Matching.Runs;

/// <summary>What <see cref="RunChecker"/> derives of each piece by itself: whether it may be taken, and what its cuts leave of it.</summary>
internal sealed class RunStockCheck(RunProblem problem, RunPlan plan, Action<string> say)
{
    private readonly List<long> _saws = [];

    /// <summary>Cents of yard value given up for all pieces.</summary>
    public long GivenUp { get; private set; }

    /// <summary>Saw cuts across, piece by piece.</summary>
    public IReadOnlyList<long> Saws => _saws;

    /// <summary>Looks at all pieces.</summary>
    public void All()
    {
        Stock();
        foreach (var piece in plan.Pieces) Cutting(piece);
    }

    private void Stock()
    {
        var last = -1;
        foreach (var piece in plan.Pieces)
        {
            if (piece.Source is null == piece.Bought is null) say("a piece is either of the yard or bought");
            if (piece.Source is not { } source) continue;
            var index = problem.Pieces.ToList().FindIndex(one => ReferenceEquals(one, source));
            if (index < 0) say($"{source.Code} is not on hand");
            else if (index <= last) say($"{source.Code} is used twice or out of the yard's order");
            last = Math.Max(last, index);
            if (!source.OnHand || (source.State == PieceState.Reserved && source.ReservedFor != problem.Stage)) say($"{source.Code} is kept for something else");
            if (!problem.Settings.Rules.Allows(source.Condition, source.Stamped, source.Treated, problem.UseOf(source.Material), TreatedWish.Any))
                say($"{source.Code} is not allowed for its use");
        }

        var bought = plan.Pieces.Where(piece => piece.Bought is not null).Select(piece => piece.Bought!).ToArray();
        if (bought.Length > 0 && !problem.Buy) say("something is bought though nothing may be");
        if (plan.Pieces.SkipWhile(piece => piece.Bought is null).Any(piece => piece.Bought is null)) say("a yard piece stands after a bought one");
        foreach (var price in bought.Distinct())
        {
            if (!problem.Prices.Of(price.Material).Contains(price)) say($"{price.Name} is not in the price book");
            if (bought.Count(one => one == price) > price.Limit) say($"more of {price.Name} is bought than can be had");
        }
    }

    // Cuts and remainders of each span fill it up but for the saw.
    private void Cutting(PlannedPiece piece)
    {
        var kerf = problem.Settings.Kerf(piece.Material).Units;
        var keep = problem.Settings.Keep(piece.Material);
        var prices = problem.Prices.ForValue(piece.Material, piece.Source?.Treated ?? piece.Bought!.Treated);
        long Worth(long units) => YardValue.Of(Length.FromUnits(units), piece.Source?.Condition ?? Condition.Sound, prices, keep).Cents;
        var left = new List<PlannedRemainder>();
        var untouched = new List<Span>();
        var saws = 0L;
        var seen = 0;
        foreach (var span in piece.Source?.Spans() ?? [new Span(Length.Zero, piece.Length)])
        {
            var cuts = piece.Cuts.Where(cut => cut.Start >= span.Start && cut.Start + cut.Length <= span.End).OrderBy(cut => cut.Start).ToArray();
            seen += cuts.Length;
            if (cuts.Length == 0)
            {
                untouched.Add(span);
                continue;
            }

            if (piece.Source is not null) GivenUp += Worth(span.Length.Units);
            // Each border between cuts: the free stretch there, and how many of its two sides are sawn.
            var borders = new List<(long From, long To, int Sides)> { (span.Start.Units, cuts[0].Start.Units, 1) };
            for (var c = 1; c < cuts.Length; c++) borders.Add((cuts[c - 1].Start.Units + cuts[c - 1].Length.Units, cuts[c].Start.Units, 2));
            borders.Add((cuts[^1].Start.Units + cuts[^1].Length.Units, span.End.Units, -1));
            foreach (var (from, to, sides) in borders)
            {
                var free = to - from;
                if (sides == 2 && free < kerf) say($"{piece.Material}: two cuts lie nearer than the kerf at {Length.FromUnits(from)}");
                if (sides != 2 && free == 0) continue;
                var passes = sides == 2 && free > kerf ? 2 : 1;
                saws += passes;
                var rest = free - passes * kerf;
                if (rest <= 0) continue;
                left.Add(new PlannedRemainder(Length.FromUnits(sides == 1 ? from : from + kerf), Length.FromUnits(rest), rest >= keep.Units));
                if (rest >= keep.Units) GivenUp -= Worth(rest);
            }
        }

        if (seen != piece.Cuts.Count || seen == 0) say($"{piece.Material}: a cut leaves its span, or there is none");
        if (!piece.Cuts.SequenceEqual(piece.Cuts.OrderBy(cut => cut.Start))) say($"{piece.Material}: cuts are out of order");
        if (!piece.Remainders.SequenceEqual(left.OrderBy(rest => rest.Start))) say($"{piece.Material}: the remainders are not what is left");
        if (!piece.Untouched.SequenceEqual(untouched)) say($"{piece.Material}: the untouched spans are not those without cuts");
        var pattern = problem.Runs.FirstOrDefault(run => run.Joints == JointRule.OnPattern && run.Material.Equals(piece.Material))?.Lines.Interval;
        if (piece.LineSpacing != pattern) say($"{piece.Material}: its lines are not those of its runs");
        foreach (var rest in piece.Remainders) FirstLine(piece, rest);
        _saws.Add(saws);
    }

    // By walking along the piece from line to line.
    private void FirstLine(PlannedPiece piece, PlannedRemainder rest)
    {
        Length? expected = null;
        var known = piece.Source is { } source ? source.FirstLine?.Units : piece.LineSpacing is null ? null : 0;
        if (known is { } line && piece.LineSpacing is { } spacing)
        {
            while (line > rest.Start.Units) line -= spacing.Units;
            while (line < rest.Start.Units) line += spacing.Units;
            if (line <= rest.Start.Units + rest.Length.Units) expected = Length.FromUnits(line - rest.Start.Units);
        }
        else if (known is { } only && only >= rest.Start.Units && only <= rest.Start.Units + rest.Length.Units) expected = Length.FromUnits(only - rest.Start.Units);

        if (piece.FirstLineOf(rest.Start, rest.Length) != expected) say($"{piece.Material}: the first line of the remainder at {rest.Start} is not {expected}");
    }
}
