using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.Benchmarks.Crash;

/// <summary>
/// A person enters boards on the full screen, in a real terminal (tmux gives one), line after line, and the program is killed (SIGKILL) at a random moment of it. Whatever
/// the screen had shown as catalogued by then must be there. Then they start it again and go on in the same yard.
/// </summary>
internal sealed partial class TypingKills(string program)
{
    private const int BoardsOfAYard = 200;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan StartAtMost = TimeSpan.FromSeconds(90);

    private readonly string _socket = $"offcuts-typing-{Environment.ProcessId}";
    private readonly List<string> _wrong = [];
    private int _kills;
    private int _typed;
    private int _shown;
    private int _saved;
    private int _starts;
    private int _lost;
    private int _notWhole;

    /// <summary>Kills so often, says how it went, and gives 1 where anything was wrong.</summary>
    public static int Run(Options options, int kills)
    {
        var run = new TypingKills(options.Program ?? throw new InvalidOperationException("name the program with --program"));
        var watch = Stopwatch.StartNew();
        var longest = TimeSpan.FromSeconds(options.Seconds ?? 24 * 3600);
        for (var yard = 0; run._kills < kills && watch.Elapsed < longest && run._wrong.Count < 20; yard++) run.OneYard(options.First + yard, () => run._kills < kills && watch.Elapsed < longest);
        // A run that typed and was shown nothing tried nothing; a kill takes at most the line that was under way.
        if (run._shown == 0 || run._saved == 0 || run._shown < run._typed - (2 * run._kills)) run._wrong.Add($"{run._typed} lines were typed and {run._shown} shown as catalogued, {run._saved} saved: this run tried too little");
        string[] lines =
        [
            "| killed while lines are typed | lines sent | shown as catalogued | saved | shown and lost | yards not whole |",
            "| ---: | ---: | ---: | ---: | ---: | ---: |",
            string.Create(CultureInfo.InvariantCulture, $"| {run._kills} | {run._typed} | {run._shown} | {run._saved} | {run._lost} | {run._notWhole} |"),
            "",
            string.Create(CultureInfo.InvariantCulture, $"Wrong in any way: {run._wrong.Count}. It took {watch.Elapsed.TotalMinutes:0} minutes; first seed {options.First}."),
            "",
            .. Machine.Lines(),
        ];
        foreach (var line in lines) Console.WriteLine(line);
        foreach (var wrong in run._wrong) Console.Error.WriteLine($"WRONG: {wrong}");
        if (options.Page) TrustPage.Put("typing", lines);
        return run._wrong.Count == 0 ? 0 : 1;
    }

    // Kills on one yard until two hundred boards are in it.
    private void OneYard(int seed, Func<bool> more)
    {
        var folder = Directory.CreateTempSubdirectory("offcuts-typing-").FullName;
        var yard = Path.Combine(folder, "yard.offcuts");
        var random = new Random(seed);
        var (shown, kills) = (new HashSet<Code>(), 0);
        try
        {
            while (more() && shown.Count < BoardsOfAYard && kills < 40)
            {
                Type(yard, random, shown);
                kills++;
                _kills++;
                Judge(yard, shown, seed);
            }

            _shown += shown.Count;
            if (File.Exists(yard)) using (var open = YardFile.Open(yard, TimeProvider.System)) _saved += open.Pieces(onHandOnly: false).Count;
        }
        finally
        {
            Tmux("kill-server");
            Directory.Delete(folder, recursive: true);
        }
    }

    // Starts the screen, types line after line, and kills it some time after the first; what was shown by then is noted.
    private void Type(string yard, Random random, HashSet<Code> shown)
    {
        // A terminal server of its own for each start: one that is still ending would take the next session down with it.
        _starts++;
        Tmux("-f", "/dev/null", "new-session", "-d", "-x", "100", "-y", "30", $"exec '{program}' --yard '{yard}'");
        var pid = int.Parse(Tmux("display-message", "-p", "#{pane_pid}").Trim(), CultureInfo.InvariantCulture);
        var watch = Stopwatch.StartNew();
        while (!Screen().Contains("leave", StringComparison.Ordinal))
        {
            if (watch.Elapsed > StartAtMost) throw new InvalidOperationException("the screen does not come up: " + Screen());
            Thread.Sleep(50);
        }

        Tmux("send-keys", "F3");
        Thread.Sleep(100);
        watch.Restart();
        var until = TimeSpan.FromSeconds(0.5 + random.NextDouble() * 12);
        while (watch.Elapsed < until)
        {
            Tmux("send-keys", "-l", $"2x4 {60 + random.Next(60)}\" @rack {random.Next(9)}");
            Tmux("send-keys", "Enter");
            _typed++;

            // The next line is typed when this one is seen to be saved, as somebody does who looks; or after five seconds.
            var (before, next) = (shown.Count, watch.Elapsed + TimeSpan.FromSeconds(5));
            do Note(Screen(), shown);
            while (shown.Count == before && watch.Elapsed < next && watch.Elapsed < until);
        }

        // What stands on the screen until the very moment of the kill was shown to somebody.
        Note(Screen(), shown);
        Process.GetProcessById(pid).Kill();
        Note(Screen(), shown);
        Tmux("kill-server");
    }

    private void Judge(string yard, HashSet<Code> shown, int seed)
    {
        if (!File.Exists(yard))
        {
            if (shown.Count > 0) Wrong(ref _lost, shown.Count, $"yard {seed}: {shown.Count} were shown and there is no yard");
            return;
        }

        using (var open = YardFile.Open(yard, TimeProvider.System))
        {
            var there = open.Pieces(onHandOnly: false).Select(piece => piece.Code).ToHashSet();
            if (shown.Except(there).ToArray() is { Length: > 0 } lost) Wrong(ref _lost, lost.Length, $"yard {seed}: shown as catalogued and lost: {string.Join(", ", lost)}");
        }

        if (YardCheck.Of(yard, Patience).Wrong is { Count: > 0 } faults) Wrong(ref _notWhole, 1, $"yard {seed}: {faults[0].Sentence}");
    }

    private void Wrong(ref int counter, int by, string sentence)
    {
        counter += by;
        _wrong.Add(sentence);
    }

    private static void Note(string screen, HashSet<Code> shown)
    {
        foreach (Match match in Catalogued().Matches(screen))
            if (Code.Parse(match.Groups[1].Value).TryGet(out var code)) shown.Add(code);
    }

    private string Screen() => Tmux("capture-pane", "-p");

    private string Tmux(params string[] arguments)
    {
        var start = new ProcessStartInfo("tmux") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in (string[])["-L", $"{_socket}-{_starts}", .. arguments]) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output;
    }

    [GeneratedRegex(@"Catalogued ([0-9A-Z]{3} [0-9A-Z]{4}), ", RegexOptions.CultureInvariant)]
    private static partial Regex Catalogued();
}
