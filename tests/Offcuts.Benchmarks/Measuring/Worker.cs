using System.Diagnostics;
using System.Text.Json;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>
/// One contender in a process of its own for the whole run; starting one for every class takes longer than what is measured in it. Only one
/// works at a time, the others wait. One that dies, or has to be killed because it stays far over its time, loses what is left of its class;
/// the next class gets a new one.
/// </summary>
internal sealed class Worker(Options options, Contender contender) : IDisposable
{
    private Process? _process;

    /// <summary>Outcomes of the first instances of a class, so many as are asked for.</summary>
    public IReadOnlyList<Outcome> Work(InstanceClass one, double seconds, int count)
    {
        var process = _process ??= Start();
        var outcomes = new List<Outcome>();
        using (new Timer(_ => process.Kill(), null, TimeSpan.FromSeconds(60 + count * (3 * seconds + 30)), Timeout.InfiniteTimeSpan)) Hear(process, new Order(one.Name, seconds, count), outcomes);
        if (outcomes.Count == count) return outcomes;
        process.WaitForExit();
        for (var number = outcomes.Count + 1; number <= count; number++)
            outcomes.Add(Outcome.Nothing(one.Draw(number), 0, $"its process ended with {process.ExitCode}"));
        process.Dispose();
        _process = null;
        return outcomes;
    }

    private static void Hear(Process process, Order order, List<Outcome> outcomes)
    {
        try
        {
            process.StandardInput.WriteLine(JsonSerializer.Serialize(order));
            process.StandardInput.Flush();
        }
        catch (IOException)
        {
            // It died before it could be told: the same as one that dies at work.
            return;
        }

        while (outcomes.Count < order.Count && process.StandardOutput.ReadLine() is { } line)
        {
            if (line.StartsWith('{')) outcomes.Add(JsonSerializer.Deserialize<Outcome>(line)!);
        }
    }

    /// <summary>Lets it end by telling it nothing more.</summary>
    public void Dispose()
    {
        if (_process is null) return;
        _process.StandardInput.Close();
        if (!_process.WaitForExit(TimeSpan.FromSeconds(10))) _process.Kill();
        _process.Dispose();
    }

    private Process Start()
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardInput = true, RedirectStandardOutput = true, UseShellExecute = false };
        // Begun as "dotnet Offcuts.Benchmarks.dll", this process is the host, which needs to be told what to run.
        string[] program = Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? [typeof(Worker).Assembly.Location] : [];
        string[] folder = options.From is { } from ? ["--from", from] : [];
        foreach (var argument in (string[])[.. program, .. folder, "--child", contender.ToString()]) start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }
}
