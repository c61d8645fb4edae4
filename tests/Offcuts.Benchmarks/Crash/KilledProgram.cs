using System.Diagnostics;
using System.Text;

namespace Offcuts.Benchmarks.Crash;

/// <summary>What a moment is counted from.</summary>
internal enum KillFrom
{
    /// <summary>Never killed.</summary>
    Never,

    /// <summary>The start of the program.</summary>
    Start,

    /// <summary>The first sight of a file that is there only while something is written.</summary>
    Writing,

    /// <summary>The moment the journal of a change is gone again: the change is saved, and soon told.</summary>
    Saved,
}

/// <summary>When the program is killed: so long after that.</summary>
internal readonly record struct KillMoment(KillFrom From, TimeSpan After);

/// <summary>What a program that was to be killed did.</summary>
/// <param name="WasKilled">False where it had ended by itself before.</param>
/// <param name="Status">Its exit status, where it was not killed.</param>
/// <param name="Out">What it had said by then.</param>
/// <param name="Error">What it had complained of by then.</param>
/// <param name="Took">How long it lived.</param>
internal sealed record Killed(bool WasKilled, int Status, string Out, string Error, TimeSpan Took);

/// <summary>Starts the real program as a process and kills it (SIGKILL: it hears nothing of it) at a moment.</summary>
internal static class KilledProgram
{
    public static Killed Run(string program, string folder, IReadOnlyList<string> arguments, KillMoment moment, Func<bool> writing, Func<bool> changing)
    {
        var start = new ProcessStartInfo(program.EndsWith(".dll", StringComparison.Ordinal) ? "dotnet" : program)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
            WorkingDirectory = folder,
        };
        if (program.EndsWith(".dll", StringComparison.Ordinal)) start.ArgumentList.Add(program);
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        var killed = Wait(process, watch, moment, writing, changing);
        if (killed) process.Kill();
        process.WaitForExit();
        return new Killed(killed && process.ExitCode == 137, process.ExitCode, output.Result, error.Result, watch.Elapsed);
    }

    // True where it is to be killed now.
    private static bool Wait(Process process, Stopwatch watch, KillMoment moment, Func<bool> writing, Func<bool> changing)
    {
        switch (moment.From)
        {
            case KillFrom.Never:
                process.WaitForExit();
                return false;
            case KillFrom.Start:
                return !process.WaitForExit(moment.After);
            case KillFrom.Writing:
                if (!Until(process, watch, writing)) return false;
                break;
            default:
                if (!Until(process, watch, changing) || !Until(process, watch, () => !changing())) return false;
                break;
        }

        var seen = watch.Elapsed;
        while (watch.Elapsed - seen < moment.After) Thread.SpinWait(200);
        return !process.HasExited;
    }

    private static bool Until(Process process, Stopwatch watch, Func<bool> there)
    {
        while (!there())
        {
            if (process.HasExited || watch.Elapsed > TimeSpan.FromMinutes(2)) return false;
            Thread.SpinWait(1000);
        }

        return true;
    }
}
