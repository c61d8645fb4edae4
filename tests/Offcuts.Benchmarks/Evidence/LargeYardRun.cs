using System.Diagnostics;
using System.Globalization;
using Offcuts.Benchmarks.Keys;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Benchmarks.Evidence;

/// <summary>A large yard opened, looked through, changed, copied and checked, each once and timed.</summary>
internal static class LargeYardRun
{
    /// <summary>Makes the yard, times it all, and gives 1 where anything came out wrong.</summary>
    public static int Run(Options options, int pieces)
    {
        var folder = Directory.CreateTempSubdirectory("offcuts-large-").FullName;
        try
        {
            var path = Path.Combine(folder, "yard.offcuts");
            var rows = new List<(string What, double Seconds)>();
            T Timed<T>(string what, Func<T> work)
            {
                var watch = Stopwatch.StartNew();
                var value = work();
                rows.Add((what, watch.Elapsed.TotalSeconds));
                return value;
            }

            Timed("entering them all, as one change", () =>
            {
                LargeYard.Write(path, pieces);
                return 0;
            });
            using (var yard = Timed("opening it, with the quick check at each start", () => YardFile.Open(path, TimeProvider.System)))
            {
                var all = Timed("reading every piece", () => yard.Pieces());
                Timed("a filter over them, by words and length", () => all.Count(piece => new YardFilter(["north", "2x4"], null, null, Length.Inches(72)).Admits(piece, LengthUnit.Inch)));
                Timed("one piece by its code", () => yard.Piece(all[^1].Code));
                yard.FinishesBackupLater = true;
                Timed("the first change of a day, with the copy for its backup before it", () => yard.Change("moved one", work => work.Update(all[0] with { Place = "loft" })).Value);
                Timed("that copy opened and checked, for which nobody waits", () =>
                {
                    yard.FinishBackup();
                    return yard.BackupTrouble is null ? 0 : throw new InvalidOperationException(yard.BackupTrouble.Sentence);
                });
                Timed("the next change", () => yard.Change("moved one", work => work.Update(all[1] with { Place = "loft" })).Value);
                Timed("taking it back", () => yard.Undo().Value);
            }

            var backup = Timed("a backup, copied, opened and checked", () => new Backups(path).Make(BackupKind.ByHand, DateOnly.FromDateTime(DateTime.Today), TimeSpan.FromSeconds(60)).Value);
            var found = Timed("check, each row against the history", () => YardCheck.Of(path, TimeSpan.FromSeconds(60)));
            Timed("going back to the backup, what was there kept", () => new Restoring(path, TimeSpan.FromSeconds(60)).From(backup.Path, DateOnly.FromDateTime(DateTime.Today)).Value);
            string[] lines =
            [
                string.Create(CultureInfo.InvariantCulture, $"{pieces:#,0} pieces, a file of {new FileInfo(path).Length / 1e6:0} MB:"),
                "",
                "| | seconds |",
                "| --- | ---: |",
                .. rows.Select(row => string.Create(CultureInfo.InvariantCulture, $"| {row.What} | {row.Seconds:0.00} |")),
                "",
                $"Found wrong by check: {found.Wrong.Count}.",
                "",
                .. Machine.Lines(),
            ];
            foreach (var line in lines) Console.WriteLine(line);
            if (options.Page) TrustPage.Put("large", lines);
            return found.Whole ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
