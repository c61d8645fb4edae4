using System.Diagnostics;
using System.Text;
using Offcuts.Commands;

namespace Offcuts.Tests;

/// <summary>What one run of the program said.</summary>
internal sealed record Told(int Status, string Out, string Error)
{
    /// <summary>Standard output, line by line.</summary>
    public string[] Lines => Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>A yard in a folder of its own, and the program run on it. The clock stands at noon of 2026-06-01, UTC.</summary>
internal sealed class TryYard : IDisposable
{
    private readonly Dictionary<string, string?> _environment = new() { ["LANG"] = "C.UTF-8" };

    /// <summary>Sets a variable of the environment, or takes it out.</summary>
    public void Set(string name, string? value) => _environment[name] = value;

    public string Folder { get; } = Directory.CreateTempSubdirectory("offcuts-test-").FullName;

    public FixedClock Clock { get; init; } = new();

    public string YardPath => Path.Combine(Folder, "yard.offcuts");

    /// <summary>The doors to the outside as a test has them: nobody types, nobody reads along.</summary>
    public Surroundings World(TextWriter output, TextWriter error, string input = "") => new()
    {
        In = new StringReader(input),
        InBytes = () => new MemoryStream(Encoding.UTF8.GetBytes(input)),
        Out = output,
        Error = error,
        InIsTerminal = false,
        OutIsTerminal = false,
        Width = 80,
        Clock = Clock,
        Environment = name => _environment.GetValueOrDefault(name),
        UserFolder = Folder,
    };

    /// <summary>Runs a command inside this process, on this yard.</summary>
    public Told Run(params string[] arguments) => RunWith("", arguments);

    /// <summary>The same, with text on standard input.</summary>
    public Told RunWith(string input, params string[] arguments)
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var status = CommandLine.Run([.. arguments, "--yard", YardPath], World(output, error, input), (_, _) => throw new InvalidOperationException("no screen here"));
        return new Told(status, output.ToString(), error.ToString());
    }

    /// <summary>The same where a person types this and reads along.</summary>
    public Told AtTerminal(string typed, params string[] arguments)
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var world = World(output, error, typed) with { InIsTerminal = true };
        var status = CommandLine.Run([.. arguments, "--yard", YardPath], world, (_, _) => throw new InvalidOperationException("no screen here"));
        return new Told(status, output.ToString(), error.ToString());
    }

    /// <summary>Runs a command that must succeed.</summary>
    public Told Must(params string[] arguments)
    {
        var told = Run(arguments);
        told.Status.Should().Be(0, told.Error);
        return told;
    }

    /// <summary>Runs the built program as a process of its own; input is empty and no terminal.</summary>
    public Told RunProcess(IReadOnlyDictionary<string, string>? environment, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
            WorkingDirectory = Folder,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "offcuts.dll"));
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        foreach (var (name, value) in environment ?? new Dictionary<string, string>()) start.Environment[name] = value;
        start.Environment.Remove("DisableRealDriverIO");
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit(120_000).Should().BeTrue("the program ends");
        return new Told(process.ExitCode, output.ReplaceLineEndings("\n"), error.Result.ReplaceLineEndings("\n"));
    }

    /// <summary>Writes a file into the yard's folder and gives its path.</summary>
    public string FileOf(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose()
    {
        try
        {
            Directory.Delete(Folder, recursive: true);
        }
        catch (IOException)
        {
            // A process that is just ending may still hold a file; the system clears its temporary folder.
        }
    }
}

/// <summary>A clock that stands still until it is told to move.</summary>
internal sealed class FixedClock : TimeProvider
{
    private DateTimeOffset _now = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => _now;

    public void Pass(TimeSpan time) => _now += time;

    /// <summary>So much goes by whenever it is asked how long something took, on a fast machine as on a slow one; none where the machine's own time counts.</summary>
    public TimeSpan? Asked { get; init; }

    public override long TimestampFrequency => Asked is null ? base.TimestampFrequency : TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => Asked is { } step ? Interlocked.Add(ref _stamp, step.Ticks) : base.GetTimestamp();

    private long _stamp;
}
