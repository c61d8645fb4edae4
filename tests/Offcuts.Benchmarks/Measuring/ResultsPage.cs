using System.Diagnostics;
using System.Globalization;
using System.Text;
using Offcuts.Benchmarks.Evidence;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>The page of results: one table a class, the three contenders side by side, the goal beside the sums.</summary>
internal sealed class ResultsPage(Options options)
{
    private const int MostRows = 12;

    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private readonly string[] _machine = [.. Machine.Lines()];
    private readonly Dictionary<Contender, long> _held = [];
    private readonly StringBuilder _summary = new();
    private readonly StringBuilder _tables = new();

    /// <summary>Adds a class and hands back its text.</summary>
    public string Add(InstanceClass one, IReadOnlyDictionary<Contender, IReadOnlyList<Outcome>> outcomes, IReadOnlyList<string> wrong)
    {
        foreach (var (who, of) in outcomes) _held[who] = of.Select(outcome => outcome.HeldBytes).Append(_held.GetValueOrDefault(who)).Max();
        var matcher = outcomes[Contender.Matcher];
        var sums = Sums.Of(matcher, outcomes);
        var (model, hand) = (outcomes.GetValueOrDefault(Contender.Model, []), outcomes.GetValueOrDefault(Contender.Hand, []));
        _summary.AppendLine(Invariant($"| {one.Name} | {sums.Proven} of {matcher.Count} | {sums.Median:0.00} / {sums.Worst:0.00} | {sums.WorstFirst:0.00} / {sums.WorstGood:0.00} | {sums.WorstGaps} | {sums.PeakMegabytes:0} | {model.Count(outcome => outcome.Proven)} | {(hand.Count == 0 ? 0 : Sums.Of(hand, outcomes).AsGood)} | {one.Goal} |"));

        var text = new StringBuilder();
        text.AppendLine(Invariant($"## {one.Title} (`{one.Name}`)")).AppendLine();
        text.AppendLine(Invariant($"{one.Source} {Limit(one)} Goal: {one.Goal}.")).AppendLine();
        if (matcher.Count <= MostRows) Rows(text, matcher, model, hand);
        text.AppendLine("| all together | proven | tiers 1, 2 proven | as good as the best of three | median s | worst s | worst s to a first / good plan | widest gap of spend / value given up, % | peak MB |");
        text.AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var who in outcomes.Keys)
        {
            var of = Sums.Of(outcomes[who], outcomes);
            text.AppendLine(Invariant($"| {Name(who)} | {of.Proven} of {matcher.Count} | {of.ProvenSpend} | {of.AsGood} | {of.Median:0.00} | {of.Worst:0.00} | {(who == Contender.Matcher ? Invariant($"{of.WorstFirst:0.00} / {of.WorstGood:0.00}") : "-")} | {of.WorstGaps} | {of.PeakMegabytes:0} |"));
        }

        foreach (var trouble in outcomes.SelectMany(of => of.Value.Where(outcome => outcome.Trouble.Length > 0).GroupBy(outcome => outcome.Trouble)
            .Select(group => $"{Name(of.Key)}: {group.Key} ({group.Count()} of {matcher.Count})")))
            text.AppendLine().Append(trouble).AppendLine(".");
        foreach (var sentence in wrong) text.AppendLine().Append("**WRONG: ").Append(sentence).AppendLine("**");
        _tables.Append(text).AppendLine();
        return text.ToString();
    }

    /// <summary>Writes the page where it belongs: a whole run to the project's own, any other only where it is told to.</summary>
    public void Write(IReadOnlyList<string> violations)
    {
        if ((options.Out ?? (options.Whole ? Pages.PathOf("RESULTS.md") : null)) is not { } file) return;
        var text = new StringBuilder("# How well the matcher does").AppendLine().AppendLine();
        text.AppendLine($"Made by one command, not edited: `dotnet run -c Release --project tests/Offcuts.Benchmarks -- {(options.Full ? "--full" : "--quick")}`{(options.Whole ? "" : " with classes, limits or seeds of its own")}.").AppendLine();
        text.AppendJoin(Environment.NewLine, _machine).AppendLine();
        text.AppendLine(Invariant($"- The whole run took {_watch.Elapsed.TotalMinutes:0.0} minutes."));
        text.AppendLine("- Instances one after the other. Each contender works through all classes in one process of its own; what it solves before its first yard and its first wall, a small yard and two small walls, is not counted. While one works the others wait.");
        text.AppendLine("- Seconds are wall-clock time of one call, model building included, in a process that has worked before: the first call of a program that was just started takes longer.");
        text.AppendLine(MemoryLine());
        text.AppendLine("- A figure is `value`, or `value > bound` where the two do not meet; of several stages the unfilled are summed. The three figures are cuts unfilled, cents spent, cents of yard value given up.");
        text.AppendLine("- A gap is what lies between value and bound, in percent of the value, `?` where no bound is claimed; where something is bought the value may be near 0 and the gap looks wide. A bound of the assignment model is its solver's own.");
        text.AppendLine("- A good plan is the first one that fills what the last one fills and is within 2 % of its spend, or of its value given up where nothing is spent.").AppendLine();
        text.AppendLine(violations.Count == 0
            ? "Checked in this run: no bound is above a value that is known by construction, from a file or from another contender's plan, and no value is below what is known to be least."
            : $"**{violations.Count} claims were found to be wrong in this run; they stand under their tables.**").AppendLine();
        string?[] beside = [Pages.Gist(AgreementRun.Page), Pages.Gist(RunAgreement.Page), Pages.Gist("MUTATION.md")];
        text.AppendLine("Whether what it claims is right was looked at by itself:").AppendLine();
        foreach (var gist in beside.OfType<string>()) text.AppendLine(gist);
        text.AppendLine();
        text.AppendLine("| class | matcher proves | median / worst s | worst s to a first / good plan | widest gap of spend / value given up, % | peak MB | model proves | by hand as good | goal |");
        text.AppendLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        text.Append(_summary).AppendLine().Append(_tables);
        File.WriteAllText(file, text.ToString().TrimEnd() + Environment.NewLine);
    }

    private string Limit(InstanceClass one) => options.Contenders.Contains(Contender.Model) && options.SecondsOf(one, Contender.Model) is var model && model < options.SecondsOf(one, Contender.Matcher)
        ? Invariant($"Limit {options.SecondsOf(one, Contender.Matcher):0.##} s each, for the assignment model {model:0.##} s.")
        : Invariant($"Limit {options.SecondsOf(one, Contender.Matcher):0.##} s each.");

    // What a process holds before it begins is told, since it is no longer that of a process that was just started.
    private string MemoryLine()
    {
        var held = string.Join(", ", _held.Select(of => Invariant($"{of.Value / 1e6:0} MB ({Name(of.Key)})")));
        return Memory.Anew
            ? $"- Memory is the largest resident memory of the contender's process during the calls of a class, counted anew for each call. The .NET runtime, the instance and what earlier calls left behind are in it; before a call that was at most {held}."
            : $"- Memory is the largest resident memory of the contender's process so far, all earlier classes included, since this system does not count it anew; what it held before a call was at most {held}.";
    }

    private static void Rows(StringBuilder text, IReadOnlyList<Outcome> matcher, IReadOnlyList<Outcome> model, IReadOnlyList<Outcome> hand)
    {
        text.AppendLine("| instance | matcher | s | s to a first / good plan | assignment model | s | by hand |");
        text.AppendLine("| --- | --- | --- | --- | --- | --- | --- |");
        for (var i = 0; i < matcher.Count; i++)
            text.AppendLine(Invariant($"| {matcher[i].Instance} | {Figures(matcher, i)} | {matcher[i].Seconds:0.00} | {matcher[i].FirstPlan:0.00} / {matcher[i].GoodPlan:0.00} | {Figures(model, i)} | {(model.Count == 0 ? "-" : Invariant($"{model[i].Seconds:0.00}"))} | {Figures(hand, i)} |"));
        text.AppendLine();
    }

    private static string Figures(IReadOnlyList<Outcome> outcomes, int i)
    {
        if (outcomes.Count == 0) return "-";
        var outcome = outcomes[i];
        if (!outcome.HasPlan) return "none";
        var unfilled = new Reached(outcome.Unfilled.Sum(stage => stage.Value), outcome.Unfilled.All(stage => stage.Bound is not null) ? outcome.Unfilled.Sum(stage => stage.Bound) : null);
        return $"{Figure(unfilled)}, {Figure(outcome.Spend)}, {(outcome.GivenUp is { } given ? Figure(given) : "?")}";
    }

    private static string Figure(Reached figure) => figure.Proven || figure.Bound is null
        ? Invariant($"{figure.Value}{(figure.Proven ? "" : "?")}")
        : Invariant($"{figure.Value} > {figure.Bound}");

    private static string Name(Contender who) => who switch
    {
        Contender.Matcher => "matcher",
        Contender.Model => "assignment model",
        _ => "by hand",
    };

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
