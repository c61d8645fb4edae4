using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Offcuts.Tests.Commands;

/// <summary>What a shell is told when the program is ended by a signal: 128 and its number (POSIX; SIGHUP 1, SIGINT 2, SIGTERM 15).</summary>
public sealed class SignalTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Theory]
    [InlineData("HUP", 129)]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    public async Task A_match_that_is_stopped_says_the_best_so_far_and_ends_with_the_status_of_the_signal(string signal, int status)
    {
        using var process = Start("dotnet", Program, "plan", "--stock", Boards(), "--cuts", Cuts(), "--prices", Prices(), "--time", "300", "--json");
        var output = process.StandardOutput.ReadToEndAsync();

        await Task.Delay(TimeSpan.FromSeconds(4));
        Kill(process.Id, signal);

        process.WaitForExit(60_000).Should().BeTrue("the program ends long before its 300 seconds are over");
        process.ExitCode.Should().Be(status);
        (await output).Should().Contain("\"best-found\"");
    }

    [Fact]
    public async Task A_match_that_is_stopped_keeps_no_plan()
    {
        _yard.Must("import", Boards(coded: false));
        _yard.Must("stage", "import", Cuts());
        _yard.Must("price", "import", Prices());
        using var process = Start("dotnet", Program, "plan", "--save", "--time", "300", "--yard", _yard.YardPath);
        var output = process.StandardOutput.ReadToEndAsync();

        await Task.Delay(TimeSpan.FromSeconds(4));
        Kill(process.Id, "TERM");

        process.WaitForExit(60_000).Should().BeTrue("the program ends long before its 300 seconds are over");
        process.ExitCode.Should().Be(143);
        (await output).Should().Contain("Best found").And.EndWith("Not kept. Keep it with: offcuts plan --save\n");
        _yard.Must("plans").Lines.Should().ContainSingle().Which.Should().StartWith("no plan is kept yet");
    }

    // Two hundred feet of wall: what fills it is far from through when the signal comes. After five seconds the program would end by force, and say nothing.
    [Fact]
    public async Task A_wall_whose_filling_is_stopped_is_told_as_it_is_filled_by_then_and_nothing_is_kept()
    {
        _yard.Must("stage", "new", "walls");
        _yard.Must("price", "set", "foam 2-1/2x12 4' 15.00");
        _yard.Must("wall", "import", "walls", _yard.FileOf("long.txt", "wall             long\nsystem           generic, invented\nheight           10'\ncore             6\"\nclosed           no\nleg A: 200' end\n  outside right\n"));
        using var process = Start("dotnet", Program, "wall", "fill", "long", "--keep", "--time", "300", "--yard", _yard.YardPath);
        var output = process.StandardOutput.ReadToEndAsync();

        await Task.Delay(TimeSpan.FromSeconds(8));
        Kill(process.Id, "INT");

        process.WaitForExit(60_000).Should().BeTrue("the program ends long before its 300 seconds are over");
        process.ExitCode.Should().Be(130);
        (await output).Should().StartWith("Wall long of walls: 20 courses to fill").And.Contain("Not kept.");
        _yard.Run("wall", "fill", "long", "--kept").Status.Should().Be(2, "what was stopped is not kept");
    }

    [Theory]
    [InlineData("HUP", 129)]
    [InlineData("INT", 130)]
    [InlineData("TERM", 143)]
    public async Task The_full_screen_ends_with_the_status_of_the_signal_and_gives_the_terminal_back(string signal, int status)
    {
        var noted = Path.Combine(_yard.Folder, "pid");
        var run = $"stty rows 24 cols 80; echo $$ > '{noted}'; exec dotnet '{Program}' --yard '{_yard.YardPath}'";
        using var process = Start("script", "-qec", run, "/dev/null");
        var said = new StringBuilder();
        var reading = Task.Run(() => Listen(process.StandardOutput, said));
        WaitFor(() => Said().Contains("empty", StringComparison.Ordinal));

        Kill(int.Parse(File.ReadAllText(noted), CultureInfo.InvariantCulture), signal);

        process.WaitForExit(60_000).Should().BeTrue("the screen closes");
        process.ExitCode.Should().Be(status);
        await reading;
        Said().Should().Contain("\u001b[?1049l", "the screen that was there before comes back");

        string Said()
        {
            lock (said) return said.ToString();
        }
    }

    // The screen writes hardly any line ends, so every letter is taken as it comes.
    private static void Listen(StreamReader from, StringBuilder into)
    {
        var letters = new char[4096];
        while (from.Read(letters) is var read and > 0)
            lock (into) into.Append(letters, 0, read);
    }

    private static string Program => Path.Combine(AppContext.BaseDirectory, "offcuts.dll");

    // Whoever runs the tests in the background may have them ignore SIGINT; the program then would too.
    private static Process Start(params string[] command)
    {
        var start = new ProcessStartInfo("env") { RedirectStandardInput = true, RedirectStandardOutput = true, StandardOutputEncoding = Encoding.UTF8 };
        start.ArgumentList.Add("--default-signal=HUP,INT,TERM");
        foreach (var argument in command) start.ArgumentList.Add(argument);
        start.Environment.Remove("DisableRealDriverIO");
        start.Environment["TERM"] = "xterm-256color";
        return Process.Start(start)!;
    }

    private static void Kill(int process, string signal) =>
        Process.Start("kill", ["-s", signal, process.ToString(CultureInfo.InvariantCulture)]).WaitForExit();

    private static void WaitFor(Func<bool> there)
    {
        for (var waited = 0; !there(); waited++)
        {
            waited.Should().BeLessThan(1_800, "the screen shows within three minutes, on a machine that is busy too");
            Thread.Sleep(100);
        }
    }

    // A hundred and fifty boards and as many kinds of cuts, all of different lengths: nowhere near proven when the signal comes.
    private string Boards(bool coded = true) => _yard.FileOf("stock.csv", "code,material,length_mm\n" + string.Concat(
        Lengths(3000, 6000).Select((length, i) => (coded ? FormattableString.Invariant($"P{i}") : "") + FormattableString.Invariant($",2x4,{length}\n"))));

    private string Cuts() => _yard.FileOf("cuts.csv", "stage,cut,material,length_mm,qty\n" + string.Concat(
        Lengths(500, 1900).Select((length, i) => FormattableString.Invariant($"walls,c{i},2x4,{length},2\n"))));

    private string Prices() => _yard.FileOf("prices.csv", "material,length_mm,price\n2x4,2438.4,4.18\n2x4,3657.6,6.99\n");

    private static IEnumerable<int> Lengths(int from, int to)
    {
        var state = 20260601u;
        for (var i = 0; i < 150; i++)
        {
            state = unchecked(state * 1664525u + 1013904223u);
            yield return from + (int)(state >> 8) % (to - from);
        }
    }
}
