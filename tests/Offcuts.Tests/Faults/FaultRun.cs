using System.Diagnostics;
using System.Globalization;
using Offcuts.Store;

namespace Offcuts.Tests.Faults;

/// <summary>What went wrong with the disk, and what came of it.</summary>
/// <param name="Kind">What, as the page says it.</param>
/// <param name="Confirmed">True where the program said that it is saved.</param>
/// <param name="Saved">True where it is there.</param>
/// <param name="Struck">True where anything went wrong at all: a call was reported as failed, or the program stopped at the limit.</param>
/// <param name="Faults">What must not be; empty where all is as it should be.</param>
internal sealed record FaultOutcome(string Kind, bool Confirmed, bool Saved, bool Struck, IReadOnlyList<string> Faults);

/// <summary>
/// Runs the real program on a yard while its file system goes wrong at a drawn moment: calls that fail or do half, by a library that is loaded before the C library, and
/// a limit of how large a file may get (RLIMIT_FSIZE), with the program told or killed by it. After each, the yard must open and be whole, what was there before must be
/// there, what was confirmed must be there, and what was refused must not. Linux, with a C compiler.
/// </summary>
internal sealed class FaultRun : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("offcuts-faults-").FullName;
    private readonly string _program;
    private readonly string _library;
    private readonly string _whole;
    private readonly long _entries;

    /// <param name="program">The program: a file that runs, or its .dll.</param>
    public FaultRun(string program)
    {
        _program = program;
        _library = Path.Combine(_root, "fault.so");
        var (status, said) = Run("cc", ["-shared", "-fPIC", "-O1", "-o", _library, Path.Combine(AppContext.BaseDirectory, "fault.c"), "-ldl"], []);
        if (status != 0) throw new InvalidOperationException($"cc: {said}");
        _whole = Path.Combine(_root, "whole.offcuts");
        foreach (var line in new[] { "2x4 8' x60 fair nails @rack", "2x10 12' x20 @barn", "panel tie x140 @shed" }) Must("add", "--new", "--yes", line, "--yard", _whole);
        Must("undo", "--yard", _whole);
        Must("redo", "--yard", _whole);
        using var yard = YardFile.Open(_whole, TimeProvider.System);
        _entries = yard.ChangeNumber;
    }

    /// <summary>True where it can be run here.</summary>
    public static bool Possible => OperatingSystem.IsLinux() && (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, "cc")));

    /// <summary>The kinds of fault. No call that cuts a file short is among them: in the journal mode of a yard a change makes none.</summary>
    public static IReadOnlyList<string> Kinds { get; } =
    [
        "read-error", "read-short", "write-error", "write-full", "write-torn", "flush-error", "remove-error", "locks-refused", "slow", "size-limit", "killed-by-size-limit",
    ];

    /// <summary>One of them, at a moment drawn from a seed.</summary>
    public FaultOutcome Once(string kind, int seed)
    {
        var random = new Random(seed);
        var folder = Directory.CreateDirectory(Path.Combine(_root, $"{kind}-{seed}")).FullName;
        var yard = Path.Combine(folder, "yard.offcuts");
        File.Copy(_whole, yard);
        string[] command = random.Next(4) switch
        {
            0 => ["add", "--yes", $"2x4 {60 + random.Next(40)}\" @rack"],
            1 => ["add", "--yes", "2x4 " + string.Join(", ", Enumerable.Range(40, 60 + random.Next(100)).Select(i => $"{i}\"")) + " note: " + new string('n', 300)],
            2 => ["undo"],
            _ => ["price", "set", $"2x4 {6 + random.Next(9)}' {1 + random.Next(20)}"],
        };

        // Most calls of one change are within the first few; the large one makes hundreds.
        var at = 1 + (int)Math.Pow(10, random.NextDouble() * (kind.StartsWith("read", StringComparison.Ordinal) ? 2.3 : 1.6));
        var environment = new Dictionary<string, string> { ["DOTNET_EnableWriteXorExecute"] = "0", ["DOTNET_EnableDiagnostics"] = "0" };
        var log = Path.Combine(folder, "struck");
        string[] shell;
        if (kind.EndsWith("size-limit", StringComparison.Ordinal))
        {
            // In blocks of 512 bytes; the journal and the file both run into it, at a size between nothing and a good deal more than there is.
            var blocks = (long)(random.NextDouble() * (new FileInfo(_whole).Length + 300_000) / 512);
            shell = ["-c", $"{(kind == "size-limit" ? "trap '' XFSZ; " : "")}ulimit -c 0; ulimit -f {blocks.ToString(CultureInfo.InvariantCulture)}; exec \"$@\"", "sh", .. Program(), .. command, "--yard", yard];
        }
        else
        {
            environment["LD_PRELOAD"] = _library;
            environment["OFFCUTS_FAULT"] = kind;
            environment["OFFCUTS_FAULT_FILE"] = "yard.offcuts";
            environment["OFFCUTS_FAULT_LOG"] = log;
            environment["OFFCUTS_FAULT_AT"] = at.ToString(CultureInfo.InvariantCulture);
            if (random.Next(2) == 0) environment["OFFCUTS_FAULT_ONCE"] = "1";
            shell = ["-c", "exec \"$@\"", "sh", .. Program(), .. command, "--yard", yard];
        }

        var (status, said) = Run("sh", shell, environment);
        var struck = kind.EndsWith("size-limit", StringComparison.Ordinal) ? status != 0 : File.Exists(log);
        var outcome = Judged(kind, seed, yard, status, said) with { Struck = struck };
        Directory.Delete(folder, recursive: true);
        return outcome;
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private FaultOutcome Judged(string kind, int seed, string path, int status, string said)
    {
        var faults = new List<string>();
        var killed = status > 128;
        if (status is not (0 or 3) && !(killed && kind == "killed-by-size-limit")) faults.Add($"{kind} {seed}: exit status {status}: {said}");
        if (said.Contains("SQLite", StringComparison.Ordinal) || said.Contains("Exception", StringComparison.Ordinal)) faults.Add($"{kind} {seed}: not in our words: {said}");
        long entries;
        try
        {
            using var yard = YardFile.Open(path, TimeProvider.System);
            entries = yard.ChangeNumber;
        }
        catch (YardUnavailableException error)
        {
            return new FaultOutcome(kind, status == 0, Saved: false, Struck: true, [.. faults, $"{kind} {seed}: the yard does not open: {error.Message}"]);
        }

        if (YardCheck.Of(path, TimeSpan.FromSeconds(5)).Wrong is { Count: > 0 } wrong) faults.Add($"{kind} {seed}: not whole: {wrong[0].Sentence}");
        if (entries != _entries && entries != _entries + 1) faults.Add($"{kind} {seed}: {entries - _entries} entries more");
        var saved = entries == _entries + 1;
        if (status == 0 && !saved) faults.Add($"{kind} {seed}: confirmed and lost: {said}");
        if (status == 3 && saved && kind != "remove-error") faults.Add($"{kind} {seed}: refused and saved all the same: {said}");
        if (kind == "slow" && status != 0) faults.Add($"{kind} {seed}: a slow folder is no reason: {said}");
        foreach (var backup in new Backups(path).All())
            if (YardCheck.Of(backup.Path, TimeSpan.FromSeconds(5)).Wrong is { Count: > 0 } damaged) faults.Add($"{kind} {seed}: a backup is not whole: {damaged[0].Sentence}");
        return new FaultOutcome(kind, status == 0, saved, Struck: false, faults);
    }

    private string[] Program() => _program.EndsWith(".dll", StringComparison.Ordinal) ? ["dotnet", _program] : [_program];

    private void Must(params string[] arguments)
    {
        var (status, said) = Run("sh", ["-c", "exec \"$@\"", "sh", .. Program(), .. arguments], []);
        if (status != 0) throw new InvalidOperationException($"{string.Join(' ', arguments)}: {said}");
    }

    private static (int Status, string Said) Run(string program, string[] arguments, Dictionary<string, string> environment)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        foreach (var (name, value) in environment) start.Environment[name] = value;
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, (output + error.Result).Trim());
    }
}
