using System.Globalization;
using System.Text.Json;

namespace Offcuts.Benchmarks.Evidence;

/// <summary>
/// The table of a page on mutation testing from the tool's JSON reports (its open schema, version 2): of each file how many mutants
/// were killed, by a failing test or by running on without end, and how many survived or were reached by no test.
/// </summary>
internal static class MutantTable
{
    private sealed record Row(string File, int Killed, int TimedOut, int Survived, int Uncovered)
    {
        public int Valid => Killed + TimedOut + Survived + Uncovered;

        public override string ToString() => string.Create(
            CultureInfo.InvariantCulture, $"| {File} | {Valid} | {Killed} | {TimedOut} | {Survived} | {Uncovered} | {100.0 * (Killed + TimedOut) / Valid:0.0} |");
    }

    /// <summary>The table; where two reports tell of one file, the later one counts.</summary>
    public static IEnumerable<string> Of(IEnumerable<string> reports)
    {
        var rows = new SortedDictionary<string, Row>(StringComparer.Ordinal);
        foreach (var report in reports)
        {
            using var document = JsonDocument.Parse(File.ReadAllText(report));
            foreach (var file in document.RootElement.GetProperty("files").EnumerateObject())
            {
                var statuses = file.Value.GetProperty("mutants").EnumerateArray().Select(mutant => mutant.GetProperty("status").GetString()).ToArray();
                int Count(string status) => statuses.Count(one => one == status);
                var name = file.Name.Replace('\\', '/').Split("Offcuts.Matching/")[^1];
                var row = new Row(name, Count("Killed"), Count("Timeout"), Count("Survived"), Count("NoCoverage"));
                if (row.Valid > 0) rows[name] = row;
            }
        }

        var all = new Row("**all**", rows.Values.Sum(row => row.Killed), rows.Values.Sum(row => row.TimedOut), rows.Values.Sum(row => row.Survived), rows.Values.Sum(row => row.Uncovered));
        return ["| file | mutants | killed | ran on without end | survived | not reached | score, % |", "| --- | --- | --- | --- | --- | --- | --- |", .. rows.Values.Append(all).Select(row => row.ToString())];
    }
}
