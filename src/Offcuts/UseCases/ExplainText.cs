using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.Matching;

namespace Offcuts.UseCases;

/// <summary>An explanation as lines for people; a line that begins with two spaces belongs to the one above.</summary>
public static class ExplainText
{
    private const int MostPieces = 12;

    private const int MostAlike = 3;

    /// <summary>All of it.</summary>
    /// <param name="why">The explanation.</param>
    /// <param name="plan">The plan that is explained.</param>
    /// <param name="settings">Unit and sign.</param>
    /// <param name="code">How a piece is called.</param>
    /// <param name="fromFiles">True where it was planned from files, whose stages are always planned together.</param>
    public static IEnumerable<string> Of(Explanation why, Plan plan, YardSettings settings, Func<Code, string> code, bool fromFiles = false)
    {
        var (cut, unit) = (why.Cut, settings.Unit);
        var unfilled = why.Unfilled.Sum(one => one.Count);
        var range = cut.Longest > cut.Shortest ? $" to {cut.Longest.ToText(unit)}" : "";
        yield return $"{cut.Name} ({cut.Stage}): {cut.Material} {cut.Shortest.ToText(unit)}{range}, {Words.Of(cut)}; {cut.Count} needed, {(unfilled == 0 ? "all filled" : $"{unfilled} unfilled")}";

        if (why.From.Count > 0) yield return "It is cut from";
        foreach (var alike in why.From.Select(one => (Piece: plan.Pieces[one.Piece], one.Copies)).GroupBy(one => (Code: one.Piece.Source?.Code ?? default, one.Piece.Material, one.Piece.Length, one.Piece.Bought?.Treated)))
        {
            var piece = alike.First().Piece;
            yield return $"  {(piece.Source is { } source ? code(source.Code) : alike.Count() == 1 ? "a new" : $"{alike.Count()} new")} {piece.Material} {piece.Length.ToText(unit)}: {alike.Sum(one => one.Copies)}{(piece.Material.Equals(cut.Material) ? "" : ", ripped")}";
        }

        foreach (var line in Pieces("Could have served too", why.Candidates.Where(one => one.WhyNot is null && !one.UsedFor.Any(used => used.Stage == cut.Stage && used.Cut == cut.Name)), Doing)) yield return line;
        foreach (var line in Alike("Could not serve it", why.Candidates.Where(one => one.WhyNot is not null))) yield return line;
        foreach (var alike in why.Instead.GroupBy(one => (one.Pinned, Costs: string.Join('\n', Difference(plan.Tiers, one.Tiers, settings.CurrencySign)))))
        {
            var codes = alike.Select(one => code(one.Piece.Code)).ToArray();
            yield return $"Without {(codes.Length > 1 ? "any one of " : "")}{string.Join(", ", codes)} for this cut{(alike.Key.Pinned ? ", to which it is pinned," : "")} the best plan would";
            foreach (var line in alike.Key.Costs.Split('\n')) yield return "  " + line;
        }

        if (why.Instead.FirstOrDefault(one => one.Better) is { } better)
        {
            yield return "That is better than the plan that is explained, which was not proven the best in its time";
            // As it was asked: without its stages the command would plan them all, and there a cut of that name may stand twice.
            var stages = fromFiles ? "" : string.Concat(plan.Stages.Select(stage => $" {ShellWord.Of(stage)}"));
            yield return $"  take it by leaving {code(better.Piece.Code)} alone for {cut.Name}: offcuts plan{stages} --spare {ShellWord.Of($"{code(better.Piece.Code)} for {cut.Stage}: {cut.Name}")}; or give the match more time: --time 60";
        }

        if (why.NotTried > 0) yield return $"{why.NotTried} more of its pieces {(why.NotTried == 1 ? "was" : "were")} not tried so; {why.Instead.Count} were";
        foreach (var open in why.Unfilled) yield return $"{open.Count} unfilled: {open.Reason}";
        if (why.Stopped) yield return "Stopped: not everything was tried";
        if (unfilled == 0 || (why.Stopped && why.Remedies.Count == 0)) yield break;
        yield return why.Remedies.Count == 0 ? "Nothing was found that would fill more of it" : "Each of these by itself would fill more of it";
        foreach (var remedy in why.Remedies) yield return $"  {remedy.Text} (fills {remedy.Fills}{string.Concat(remedy.Others.Select(Other))})";
        if (why.Remedies.Any(remedy => remedy.Kind is RemedyKind.LooserUse or RemedyKind.OtherTreatment)) yield return "Which use and treatment a cut needs is no question of fit. " + Cautions.Closing;

        static string Other(OtherFill other) => other.More > 0 ? $", and {other.More} of {other.Cut} ({other.Stage})" : $", and leaves {-other.More} more of {other.Cut} ({other.Stage}) unfilled{(other.Proven ? "" : ", which is not proven")}";

        string Named(Candidate one) => $"{code(one.Piece.Code)} {(one.Piece.Material.Equals(cut.Material) ? "" : $"{one.Piece.Material} ")}{one.Piece.Length.ToText(unit)}";

        IEnumerable<string> Pieces(string heading, IEnumerable<Candidate> candidates, Func<Candidate, string> about)
        {
            var all = candidates.ToArray();
            if (all.Length > 0) yield return heading;
            foreach (var one in all.Take(MostPieces)) yield return $"  {Named(one)}: {about(one)}";
            if (all.Length > MostPieces) yield return $"  and {all.Length - MostPieces} more";
        }

        // A yard has many pieces that will not do for one and the same reason.
        IEnumerable<string> Alike(string heading, IEnumerable<Candidate> candidates)
        {
            var reasons = candidates.GroupBy(one => one.WhyNot).ToArray();
            if (reasons.Length > 0) yield return heading;
            foreach (var alike in reasons)
            {
                var named = string.Join(", ", alike.Take(MostAlike).Select(Named));
                yield return $"  {named}{(alike.Count() > MostAlike ? $" and {alike.Count() - MostAlike} more" : "")}: {alike.Key}";
            }
        }
    }

    /// <summary>What one plan costs more or less than another, tier by tier.</summary>
    public static IEnumerable<string> Difference(Tiers plan, Tiers other, string sign)
    {
        var lines = new List<string>();
        var (unfilled, spend, value) = (other.Unfilled.Value - plan.Unfilled.Value, other.Spend.Value - plan.Spend.Value, other.ValueGivenUp.Value - plan.ValueGivenUp.Value);
        if (unfilled != 0) lines.Add($"leave {Math.Abs(unfilled)} {More(unfilled)} unfilled ({Sure(plan.Unfilled, other.Unfilled)})");
        if (spend != 0) lines.Add($"spend {Cash(spend)} {More(spend)} ({Sure(plan.Spend, other.Spend)})");
        var rips = (other.Rips?.Value ?? 0) - (plan.Rips?.Value ?? 0);
        if (rips != 0) lines.Add($"rip {Words.Count((int)Math.Abs(rips), "cut")} {More(rips)} out of wider pieces ({Sure(plan.Rips ?? default, other.Rips ?? default)})");
        if (value != 0) lines.Add($"give up {Cash(value)} {More(value)} of yard value ({Sure(plan.ValueGivenUp, other.ValueGivenUp)})");
        var saws = other.SawCuts - plan.SawCuts;
        if (saws != 0) lines.Add($"take {Words.Count(Math.Abs(saws), "saw cut")} {More(saws)}");
        return lines.Count > 0 ? lines : [$"be as good ({Sure(plan.ValueGivenUp, other.ValueGivenUp)})"];

        string Cash(long cents) => new Money(Math.Abs(cents)).ToText(sign);
        static string More(long difference) => difference > 0 ? "more" : "less";
        static string Sure(Figure a, Figure b) => a.Proven && b.Proven ? "proven" : "best found";
    }

    private static string Doing(Candidate one) => one.UsedFor.Count == 0
        ? "left whole"
        : "cut for " + string.Join(", ", one.UsedFor.GroupBy(cut => cut.Cut).Select(same => same.Count() == 1 ? same.Key : $"{same.Count()} x {same.Key}"));
}
