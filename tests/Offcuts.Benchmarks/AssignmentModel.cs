using Google.OrTools.Sat;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.Benchmarks;

/// <summary>
/// The first three tiers of a small problem of one material as an assignment model for CP-SAT: does cut copy c lie on span s?
/// Written apart from the matcher: no patterns, no grouping. The value of a remainder is a table over what the span holds.
/// </summary>
internal static class AssignmentModel
{
    private const int MostSums = 20_000;

    /// <summary>Unfilled stage by stage, spend, value given up; none where CP-SAT does not prove them in its time, or the tables get too long.</summary>
    public static long[]? Solve(MatchRequest request, double seconds = 20)
    {
        var cuts = request.Stages.SelectMany((stage, s) => stage.Cuts.SelectMany(cut => Enumerable.Repeat((Cut: cut, Stage: s), cut.Count))).ToArray();
        var material = cuts[0].Cut.Material;
        var kerf = request.Settings.Kerf(material).Units;
        var spans = new List<(Piece? Piece, StorePrice? Price, long Length)>();
        foreach (var piece in request.Pieces.Where(piece => piece.OnHand)) spans.AddRange(piece.Spans().Select(span => ((Piece?)piece, (StorePrice?)null, span.Length.Units)));
        foreach (var price in request.Buy ? request.Prices.Of(material) : [])
            spans.AddRange(Enumerable.Repeat(((Piece?)null, (StorePrice?)price, price.Length.Units), Math.Min(price.Limit ?? cuts.Length, cuts.Length)));

        var model = new CpModel();
        var filled = cuts.Select(_ => new List<ILiteral>()).ToArray();
        var spend = LinearExpr.NewBuilder();
        var given = LinearExpr.NewBuilder();
        (StorePrice? Price, BoolVar Used)? before = null;
        foreach (var span in spans)
        {
            var used = model.NewBoolVar("");
            var whole = model.NewBoolVar("");
            var weight = LinearExpr.NewBuilder();
            var count = LinearExpr.NewBuilder();
            var wholeDoes = LinearExpr.NewBuilder();
            for (var c = 0; c < cuts.Length; c++)
            {
                var cut = cuts[c].Cut;
                var allowed = span.Piece is { } piece
                    ? request.Settings.Rules.Allows(piece, cut)
                    : request.Settings.Rules.Allows(Condition.Sound, true, span.Price!.Treated, cut.Use, cut.Treated);
                if (!allowed || cut.Shortest.Units > span.Length) continue;
                var lies = model.NewBoolVar("");
                filled[c].Add(lies);
                weight.AddTerm(lies, cut.Shortest.Units + kerf);
                count.AddTerm(lies, 1);
                if (cut.Shortest.Units <= span.Length && span.Length <= cut.Longest.Units) wholeDoes.AddTerm(lies, 1);
                model.AddImplication(lies, used);
            }

            model.Add(weight <= span.Length + kerf);
            model.Add(count >= used);
            model.Add(wholeDoes >= whole);
            model.Add(count <= 1).OnlyEnforceIf(whole);
            if (span.Price is { } price)
            {
                spend.AddTerm(used, price.Price.Cents);
                if (before is { } last && last.Price == price) model.AddImplication(used, last.Used);
                before = (price, used);
            }

            if (!GivenUp(request, material, model, span, whole, weight, given)) return null;
        }

        var figures = new List<long>();
        for (var s = 0; s < request.Stages.Count; s++)
        {
            var unfilled = LinearExpr.NewBuilder();
            for (var c = 0; c < cuts.Length; c++)
            {
                if (cuts[c].Stage != s) continue;
                var left = model.NewBoolVar("");
                model.AddExactlyOne([.. filled[c], left]);
                unfilled.AddTerm(left, 1);
            }

            if (!Minimise(model, unfilled, figures, seconds)) return null;
        }

        return Minimise(model, spend, figures, seconds) && Minimise(model, given, figures, seconds) ? [.. figures] : null;
    }

    // The value of what is left, by a product of cases over all sums that cuts can make.
    private static bool GivenUp(
        MatchRequest request, Material material, CpModel model, (Piece? Piece, StorePrice? Price, long Length) span,
        BoolVar whole, LinearExpr weight, LinearExprBuilder given)
    {
        var prices = request.Prices.ForValue(material, span.Piece?.Treated ?? span.Price!.Treated);
        var condition = span.Piece?.Condition ?? Condition.Sound;
        long Value(long units) => units <= 0 ? 0 : YardValue.Of(Length.FromUnits(units), condition, prices, request.Settings.Keep(material)).Cents;
        var before = span.Piece is null ? 0 : Value(span.Length);
        var kerf = request.Settings.Kerf(material).Units;
        var sums = new HashSet<long> { 0 };
        foreach (var cut in request.Stages.SelectMany(stage => stage.Cuts))
        {
            for (var i = 0; i < cut.Count; i++)
                sums.UnionWith(sums.Select(sum => sum + cut.Shortest.Units + kerf).Where(sum => sum <= span.Length + kerf).ToArray());
            if (sums.Count > MostSums) return false;
        }

        var total = model.NewIntVarFromDomain(Google.OrTools.Util.Domain.FromValues([.. sums]), "");
        model.Add(total == weight);
        var ordered = sums.Order().ToArray();
        var cost = model.NewIntVar(-1_000_000, 1_000_000, "");
        var index = model.NewIntVar(0, ordered.Length - 1, "");
        model.AddElement(index, ordered, total);
        var costs = ordered.Select(sum => sum == 0 ? 0 : before - Value(span.Length - sum)).ToArray();
        var cutCost = model.NewIntVar(-1_000_000, 1_000_000, "");
        model.AddElement(index, costs, cutCost);
        model.Add(cost == cutCost).OnlyEnforceIf(whole.Not());
        model.Add(cost == before).OnlyEnforceIf(whole);
        given.AddTerm(cost, 1);
        return true;
    }

    private static bool Minimise(CpModel model, LinearExpr figure, List<long> figures, double seconds)
    {
        model.Minimize(figure);
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:1 random_seed:7 max_deterministic_time:{seconds}") };
        if (solver.Solve(model) != CpSolverStatus.Optimal) return false;
        var value = (long)Math.Round(solver.ObjectiveValue);
        model.Add(figure <= value);
        figures.Add(value);
        return true;
    }
}
