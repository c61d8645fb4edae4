using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Store;

namespace Offcuts.Benchmarks.Crash;

/// <summary>
/// Kills the real program at random moments while it works on a yard, and looks each time whether the yard is whole, whether what was saved
/// before is there row by row, whether what was confirmed is saved, and whether what was not is there whole or not at all.
/// </summary>
internal sealed class CrashRun(string program, int first)
{
    private const int KillsOnOneYard = 25;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private readonly ConcurrentDictionary<string, CrashCount> _counts = new();
    private readonly ConcurrentDictionary<string, double> _usual = new();
    private readonly ConcurrentQueue<string> _wrong = new();

    /// <summary>What went wrong, in the order in which it was found.</summary>
    public IReadOnlyCollection<string> Wrong => _wrong;

    /// <summary>The counts, job by job.</summary>
    public IEnumerable<(string Job, CrashCount Count)> Counts => CrashJob.All.Where(job => _counts.ContainsKey(job.Name)).Select(job => (job.Name, _counts[job.Name]));

    /// <summary>Kills so many, or for so long, says how it went, and gives 1 where anything was wrong.</summary>
    public static int Run(Options options, int kills)
    {
        var run = new CrashRun(options.Program ?? Path.Combine(AppContext.BaseDirectory, "offcuts.dll"), options.First);
        var watch = Stopwatch.StartNew();
        run.Kill(kills, TimeSpan.FromSeconds(options.Seconds ?? 24 * 3600));
        string[] lines =
        [
            .. run.Table(),
            "",
            string.Create(CultureInfo.InvariantCulture, $"Wrong in any way: {run.Wrong.Count}. It took {watch.Elapsed.TotalMinutes:0} minutes; first seed {options.First}."),
            "",
            .. Machine.Lines(),
        ];
        foreach (var line in lines) Console.WriteLine(line);
        foreach (var wrong in run.Wrong) Console.Error.WriteLine($"WRONG: {wrong}");
        if (options.Page) TrustPage.Put("crash", lines);
        return run.Wrong.Count == 0 ? 0 : 1;
    }

    /// <summary>Goes on until so many programs were killed before they had ended, or it took too long.</summary>
    public void Kill(int kills, TimeSpan longest)
    {
        var watch = Stopwatch.StartNew();
        var (left, number) = (kills, first);
        var workers = Math.Max(1, Environment.ProcessorCount);
        Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers }, worker =>
        {
            using var yard = new CrashYard();
            for (var since = 0; Volatile.Read(ref left) > 0 && watch.Elapsed < longest; since++)
            {
                var seed = Interlocked.Increment(ref number);
                try
                {
                    if (since % KillsOnOneYard == KillsOnOneYard - 1) yard.Renew();
                    if (Once(yard, seed)) Interlocked.Decrement(ref left);
                }
                catch (Exception error)
                {
                    _wrong.Enqueue($"kill {seed}: {error.Message}");
                    yard.Renew();
                    if (_wrong.Count > 50) return;
                }
            }
        });
    }

    /// <summary>The table of the page.</summary>
    public IEnumerable<string> Table()
    {
        yield return "| killed while | killed | of them while it wrote | saved and confirmed | saved, not yet told | not saved, nothing of it there | went on to its end | lost | not whole |";
        yield return "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |";
        foreach (var (job, count) in Counts) yield return Row(job, count);
        yield return Row("**all**", Counts.Aggregate(new CrashCount(), (sum, one) => sum.Plus(one.Count)));
    }

    private static string Row(string job, CrashCount count) =>
        string.Create(CultureInfo.InvariantCulture, $"| {job} | {count.Killed} | {count.Writing} | {count.Confirmed} | {count.SavedUntold} | {count.NotSaved} | {count.Ended} | {count.Lost} | {count.NotWhole} |");

    // True where the program was killed before it had ended.
    private bool Once(CrashYard yard, int seed)
    {
        var random = new Random(seed);
        var job = CrashJob.All[random.Next(CrashJob.All.Count)];
        if (job == CrashJob.Migrate) yard.Old(Releases[random.Next(Releases.Length)]);
        else if (job.First is { } before && yard.Try(before(yard, seed)).Status > 1) return false;
        if (job == CrashJob.CarryOut) _ = yard.Try("stage", "need", "bracing", $"more {seed}: 2x4 2' x2");

        if (job == CrashJob.Restore) yard.Must("add", "2x4 5'");

        if (job == CrashJob.BackUp && Directory.Exists(yard.Path + ".backups")) Directory.Delete(yard.Path + ".backups", recursive: true);

        // Without one the day's backup is made by the program that is killed.
        if (random.Next(4) == 0 && job != CrashJob.Restore && Directory.Exists(yard.Path + ".backups")) Directory.Delete(yard.Path + ".backups", recursive: true);
        var was = YardState.Of(yard.Path);
        var arguments = job.Command(yard, seed);
        var usual = _usual.GetOrAdd(job.Name, 0.6);
        var moment = random.Next(20) switch
        {
            0 => new KillMoment(KillFrom.Never, default),
            < 7 => new KillMoment(KillFrom.Start, TimeSpan.FromSeconds(usual * (0.3 + 0.8 * random.NextDouble()))),
            < 11 => new KillMoment(KillFrom.Writing, TimeSpan.FromMilliseconds(Math.Pow(10, -1.5 + 2.5 * random.NextDouble()))),
            < 14 => new KillMoment(KillFrom.Writing, TimeSpan.FromMilliseconds(200 * random.NextDouble())),
            _ => new KillMoment(KillFrom.Saved, TimeSpan.FromMilliseconds(Math.Pow(10, -2 + 3.5 * random.NextDouble()))),
        };
        var watchedWriting = false;
        var since = DateTime.UtcNow;
        var told = KilledProgram.Run(program, yard.Folder, [.. arguments, "--yard", yard.Path], moment, () => yard.IsWriting(since), () => yard.IsChanging(since));
        if (!told.WasKilled) _usual[job.Name] = usual * 0.7 + told.Took.TotalSeconds * 0.3;
        else watchedWriting = yard.IsWriting(since);

        var confirmed = job.Confirms.Length > 0 ? told.Out.Contains(job.Confirms, StringComparison.OrdinalIgnoreCase) : !told.WasKilled && told.Status <= 1;
        var count = _counts.GetOrAdd(job.Name, _ => new CrashCount());
        Judge(yard, job, seed, was, told, confirmed, watchedWriting, count);
        if (job == CrashJob.Migrate) yard.Renew();
        return told.WasKilled;
    }

    private static string[] Releases { get; } = Directory.GetFiles(Path.Combine(Path.GetDirectoryName(Pages.PathOf("."))!, "..", "Offcuts.Store.Tests", "Released"), "version_*.sql").Order(StringComparer.Ordinal).ToArray();

    private void Judge(CrashYard yard, CrashJob job, int seed, YardState was, Killed told, bool confirmed, bool writing, CrashCount count)
    {
        var faults = new List<string>();
        if (!told.WasKilled && told.Status > 1 && job.First is null) faults.Add($"ended with {told.Status}: {told.Error.Trim()}");

        var version = YardState.Of(yard.Path).Version;

        // As the next start would: a change that was cut off is rolled back by whoever opens the yard. A journal in which nothing stands yet
        // has nothing to roll back; it goes with the next change.
        using (var opened = YardFile.Open(yard.Path, TimeProvider.System)) _ = opened.ChangeNumber;
        var wrong = YardCheck.Of(yard.Path, Patience).Wrong;
        var broken = wrong.Count > 0;
        if (broken) faults.Add("not whole: " + string.Join("; ", wrong.Take(3).Select(fault => fault.Sentence)));
        foreach (var backup in new Backups(yard.Path).All().Take(2))
            if (YardCopy.Wrong(backup.Path, Patience) is { } damaged) faults.Add($"a backup is not whole: {damaged.Sentence}");

        var now = YardState.Of(yard.Path);
        var saved = Saved(yard, job, was, now with { Version = version }, faults);
        var lost = confirmed && !saved;
        if (lost) faults.Add("what was confirmed is not there");
        count.Add(told.WasKilled, writing, confirmed, saved, lost, broken);
        foreach (var fault in faults) _wrong.Enqueue($"kill {seed}, {job.Name}: {fault}");
    }

    // True where the change is there. What is there must be all of it, and nothing else may have changed.
    private static bool Saved(CrashYard yard, CrashJob job, YardState was, YardState now, List<string> faults)
    {
        if (job == CrashJob.Migrate)
        {
            // The columns that a newer version brings are there as well, so that rows are counted; a test compares them one by one.
            if (now.Entries != was.Entries || was.Rows.Keys.Any(key => !now.Rows.ContainsKey(key))) faults.Add("rows are lost");
            if (now.Version > was.Version && new Backups(yard.Path).All().All(one => one.Kind != BackupKind.Upgrade)) faults.Add("there is no backup of the older file");
            return now.Version == Migration.All[^1].Version;
        }

        if (job == CrashJob.Restore)
        {
            if (now.Difference(was) is null) return false;
            if (now.Difference(YardState.Of(yard.BackupByHand!.Path)) is not null) faults.Add("it is neither as before nor as the backup");
            var kept = new Backups(yard.Path).All().FirstOrDefault(one => one.Kind == BackupKind.Restore);
            if (kept is null || was.Difference(YardState.Of(kept.Path)) is not null) faults.Add("what was there before is not kept");
            return true;
        }

        if (!job.IsEntry)
        {
            if (now.Difference(was) is { } row) faults.Add($"{row} changed");
            return yard.BackupByHand is not null;
        }

        if (now.Entries == was.Entries)
        {
            if (now.Difference(was) is { } row) faults.Add($"{row} changed without an entry of the history");
            return false;
        }

        if (now.Entries != was.Entries + 1) faults.Add($"{now.Entries - was.Entries} entries more");
        if (job.Adds is { } adds)
        {
            if (now.Pieces != was.Pieces + adds) faults.Add($"{now.Pieces - was.Pieces} pieces of {adds}");
            if (was.Lacks(now) is { } row) faults.Add($"{row} was saved before and is lost or another");
        }

        return true;
    }
}

/// <summary>How it went with one job.</summary>
internal sealed class CrashCount
{
    private readonly Lock _lock = new();

    public int Killed { get; private set; }

    public int Writing { get; private set; }

    public int Confirmed { get; private set; }

    public int SavedUntold { get; private set; }

    public int NotSaved { get; private set; }

    public int Ended { get; private set; }

    public int Lost { get; private set; }

    public int NotWhole { get; private set; }

    public void Add(bool killed, bool writing, bool confirmed, bool saved, bool lost, bool broken)
    {
        lock (_lock)
        {
            if (killed) Killed++;
            else Ended++;
            if (killed && writing) Writing++;
            if (killed && confirmed) Confirmed++;
            if (killed && saved && !confirmed) SavedUntold++;
            if (killed && !saved) NotSaved++;
            if (lost) Lost++;
            if (broken) NotWhole++;
        }
    }

    public CrashCount Plus(CrashCount other) => new()
    {
        Killed = Killed + other.Killed,
        Writing = Writing + other.Writing,
        Confirmed = Confirmed + other.Confirmed,
        SavedUntold = SavedUntold + other.SavedUntold,
        NotSaved = NotSaved + other.NotSaved,
        Ended = Ended + other.Ended,
        Lost = Lost + other.Lost,
        NotWhole = NotWhole + other.NotWhole,
    };
}
