using System.Diagnostics;
using System.Globalization;

namespace Offcuts.Benchmarks.Keys;

/// <summary>
/// From the start of a built program to what it shows, in a real terminal: a window of tmux on a socket of its own, looked at again and again. The window and a shell
/// in it stand before the clock starts, as they do where a person types the program's name: the clock starts when Enter is pressed, and the shell becomes the
/// program. What looking takes, some milliseconds, is part of the figure.
/// </summary>
internal static class StartTimes
{
    private const int Rounds = 9;

    // Of the kernel: what a process has worked is told in hundredths of a second.
    private const double Ticks = 10;

    private const string Stands = "the window stands";

    // So that the terminal's own start is through.
    private static readonly TimeSpan Calm = TimeSpan.FromMilliseconds(300);

    private static string _socket = "";

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    /// <summary>Measures and prints; true where the median of the first pictures is within the goal, or where there is no tmux to measure with.</summary>
    public static bool Run(string program, string yard, double most)
    {
        _socket = $"offcuts-start-{Environment.ProcessId}";
        if (Tmux("-V") is null)
        {
            KeyTimes.Say("no tmux here: the start was not measured");
            return true;
        }

        var (first, list, worked) = (new List<double>(), new List<double>(), new List<double>());
        for (var round = 0; round <= Rounds; round++)
        {
            _socket = $"offcuts-start-{Environment.ProcessId}-{round}";
            Tmux("-f", "/dev/null", "new-session", "-d", "-x", "80", "-y", "24", $"printf '{Stands}'; read -r enter; exec '{program}' --yard '{yard}'");
            Until(Stopwatch.StartNew(), text => text.Contains(Stands, StringComparison.Ordinal));
            Thread.Sleep(Calm);
            var watch = Stopwatch.StartNew();
            Tmux("send-keys", "Enter");
            var picture = Until(watch, text => text.Contains("^Q leave", StringComparison.Ordinal));
            var work = Worked();
            var shown = Until(watch, text => text.Contains("^Q leave", StringComparison.Ordinal) && !text.Contains("Reading the yard", StringComparison.Ordinal));
            Tmux("kill-server");
            // The first fills the caches of the disk.
            if (round == 0) continue;
            first.Add(picture);
            list.Add(shown);
            worked.Add(work);
        }

        first.Sort();
        list.Sort();
        worked.Sort();
        KeyTimes.Say($"{Rounds} starts{Load()}: first picture median {Text(first[Rounds / 2])} ms, longest {Text(first[^1])} ms, the program had worked {Text(worked[Rounds / 2])} ms by then; the yard read and shown median {Text(list[Rounds / 2])} ms");
        return first[Rounds / 2] <= most;
    }

    // How many programs wanted a core in the last minute, where the system tells: on a busy machine a start takes as long as the others let it.
    private static string Load() => File.Exists("/proc/loadavg") ? $" at a load of {File.ReadAllText("/proc/loadavg").Split(' ')[0]}" : "";

    private static double Until(Stopwatch watch, Func<string, bool> shows)
    {
        while (watch.Elapsed < Longest)
        {
            if (Tmux("capture-pane", "-p") is { } text && shows(text)) return watch.Elapsed.TotalMilliseconds;
            Thread.Sleep(2);
        }

        return Longest.TotalMilliseconds;
    }

    // What the program has worked so far, on all its threads: on an idle machine it can't have taken much longer.
    private static double Worked()
    {
        if (Tmux("display-message", "-p", "#{pane_pid}")?.Trim() is not { Length: > 0 } id || !File.Exists($"/proc/{id}/stat")) return 0;
        var fields = File.ReadAllText($"/proc/{id}/stat");
        var after = fields[(fields.LastIndexOf(')') + 2)..].Split(' ');
        return (double.Parse(after[11], CultureInfo.InvariantCulture) + double.Parse(after[12], CultureInfo.InvariantCulture)) * Ticks;
    }

    private static string? Tmux(params string[] arguments)
    {
        try
        {
            var start = new ProcessStartInfo("tmux") { RedirectStandardOutput = true, RedirectStandardError = true };
            foreach (var argument in (string[])["-L", _socket, .. arguments]) start.ArgumentList.Add(argument);
            start.Environment.Remove("DisableRealDriverIO");
            using var process = Process.Start(start)!;
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? output : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static string Text(double milliseconds) => milliseconds.ToString("0", CultureInfo.InvariantCulture);
}
