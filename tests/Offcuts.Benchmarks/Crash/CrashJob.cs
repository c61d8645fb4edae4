namespace Offcuts.Benchmarks.Crash;

/// <summary>Something that the program is killed at.</summary>
/// <param name="Name">What it is, as the page says it.</param>
/// <param name="Command">The arguments, from the yard's folder and a number that is another one each time.</param>
/// <param name="Confirms">Words that the program says only once it is saved; empty where only its exit status says so.</param>
/// <param name="Adds">How many pieces it adds where it is saved; null where it changes others.</param>
internal sealed record CrashJob(string Name, Func<CrashYard, int, string[]> Command, string Confirms, int? Adds = null)
{
    /// <summary>True where a saved one is an entry of the history.</summary>
    public bool IsEntry { get; init; } = true;

    /// <summary>Done once before, unharmed, so that there is something to kill it at.</summary>
    public Func<CrashYard, int, string[]>? First { get; init; }

    /// <summary>What is done to a yard that a stage was planned for.</summary>
    public static CrashJob CarryOut { get; } = new("carrying out a plan", (_, _) => ["cut", "--all"], "") { First = (_, _) => ["plan", "--save", "--time", "3"] };

    /// <summary>Brings a yard of an earlier version to this one.</summary>
    public static CrashJob Migrate { get; } = new("bringing an older file up to date", (_, _) => ["list"], "") { IsEntry = false };

    /// <summary>Makes a backup.</summary>
    public static CrashJob BackUp { get; } = new("a backup by hand", (_, _) => ["backup"], "is made and checked") { IsEntry = false };

    /// <summary>Goes back to a backup.</summary>
    public static CrashJob Restore { get; } = new("going back to a backup", (yard, _) => ["restore", yard.LastBackup], "the yard is as it was") { IsEntry = false, First = (_, _) => ["backup"] };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<CrashJob> All { get; } =
    [
        new("cataloguing a line", (_, i) => ["add", $"2x4 {80 + i % 40}\", 9' x3 fair nails @rack {i % 7}"], "catalogued", Adds: 4),
        new("cataloguing 200 lines", (yard, _) => ["add", "--lines", yard.Lines, "--yes"], "catalogued", Adds: 200),
        new("importing 300 rows", (yard, _) => ["import", yard.Stock], "mported", Adds: 300),
        new("changing a piece", (yard, i) => ["change", yard.AnyPiece(i), "--place", $"spot {i}"], ""),
        new("keeping a plan", (_, _) => ["plan", "--save", "--time", "3"], "") { First = null },
        CarryOut,
        new("undo", (_, _) => ["undo"], "") { First = (_, i) => ["add", $"2x6 {60 + i % 40}\""] },
        new("redo", (_, _) => ["redo"], "") { First = (_, _) => ["undo"] },
        new("accepting a count", (yard, i) => ["count", yard.Scanned(i), "--accept"], ""),
        new("handing over", (yard, i) => ["hand", "over", yard.AnyPiece(i), "--to", "Jo", "--gift", "--anyway", "--file", Path.Combine(yard.Folder, $"jo-{i}.hand")], ""),
        BackUp,
        Restore,
        Migrate,
    ];
}
