using System.Diagnostics;
using System.Text;
using Microsoft.Data.Sqlite;
using Offcuts.Commands;
using Offcuts.Core.Faults;
using Offcuts.Store;

namespace Offcuts.Tests.Hostile;

/// <summary>One input, and what it is fed to.</summary>
/// <param name="Kind">What it is, as the page says it.</param>
/// <param name="Commands">The commands that read it, in order.</param>
internal sealed record HostileInput(string Kind, IReadOnlyList<string[]> Commands)
{
    /// <summary>The yard's own file, altered; null where the yard is a right one.</summary>
    public string? Yard { get; init; }

    /// <summary>Lines typed on the full screen instead of commands; null where there are none.</summary>
    public Func<HostileScreen>? Screen { get; init; }
}

/// <summary>
/// Feeds the program what it must not stumble over, by its own command line, and judges: an exit status of its own (no failure of the program itself), within
/// two seconds of work, nothing saved where it was refused, no file but where it was told, nothing on the terminal that steers it, no formula in a CSV.
/// </summary>
internal sealed class HostileRun : IDisposable
{
    /// <summary>No input may take longer.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(2);

    private static readonly string[] Looks = ["list", "today", "check", "history", "ledger"];

    private readonly string _root = Directory.CreateTempSubdirectory("offcuts-hostile-").FullName;
    private readonly string _inside;
    private readonly string _whole;
    private readonly string _transfer;
    private int _made;
    private TimeSpan _longest;

    public HostileRun()
    {
        _inside = Directory.CreateDirectory(Path.Combine(_root, "inside")).FullName;
        _whole = Path.Combine(_root, "whole.offcuts");
        _transfer = Path.Combine(_root, "transfer.hand");
        foreach (var line in new[] { "2x4 8' x6 fair nails @rack", "2x10 12', 11'4 stamped @rack", "foam 2-1/2x12 II 8' x3", "panel tie x140 @shed" }) Must("add", "--new", line);
        Must("stage", "new", "walls");
        Must("stage", "need", "walls", "stud: 2x4 7' x4");
        Must("price", "set", "2x4 8' 4.18");
        Must("plan", "--save", "--time", "1");
        Must("cut", "--all");
        string code;
        using (var yard = YardFile.Open(_whole, TimeProvider.System)) code = yard.Pieces()[0].Code.Text;
        Must("hand", "over", code, "--anyway", "--to", "Jo", "--gift", "--file", _transfer);
    }

    /// <summary>The kinds of input.</summary>
    public static IReadOnlyList<string> Kinds { get; } =
    [
        "stock CSV", "cuts CSV", "prices CSV", "CSV files of a plan", "system sheet", "wall sheet", "label layout", "catalogue line", "need or price typed", "code or scanned text",
        "hand-over file", "hand-over file with a right hash", "picture", "lines typed on the screen", "yard with altered bytes", "yard with altered content", "kept plan altered",
    ];

    /// <summary>An input drawn from a seed.</summary>
    public HostileInput Draw(string kind, int seed)
    {
        var random = new Random(seed);
        var text = new HostileText(random);
        string[] New() => random.Next(2) == 0 ? ["--new"] : [];
        switch (kind)
        {
            case "stock CSV": return new(kind, [["import", FileOf(text.Csv("stock")), .. New()], ["export", "-"]]);
            case "cuts CSV": return new(kind, [["stage", "import", FileOf(text.Csv("cuts")), .. New()], ["stage", "list"]]);
            case "prices CSV": return new(kind, [["price", "import", FileOf(text.Csv("prices")), .. New()], ["price", "list"], ["price", "export", "-"]]);
            case "CSV files of a plan": return new(kind, [["plan", "--stock", FileOf(text.Csv("stock")), "--cuts", FileOf(text.Csv("cuts")), "--prices", FileOf(text.Csv("prices")), "--json", "--time", "1"]]);
            case "system sheet": return new(kind, [["system", "import", FileOf(text.SystemSheet())], ["system", "list"]]);
            case "wall sheet": return new(kind, [["system", "import", FileOf(new HostileText(new Random(0)).SystemSheet())], ["wall", "import", "walls", FileOf(text.WallSheet())], ["wall", "list"]]);
            case "label layout": return new(kind, [["label", "print", FileHere("labels.pdf"), "--layout", FileOf(text.Layout())]]);
            case "catalogue line": return new(kind, [["add", text.CatalogueLine(), "--yes", .. New()], ["list"]]);
            case "need or price typed": return new(kind, [random.Next(2) == 0 ? ["stage", "need", "walls", text.NeedLine(), .. New()] : ["price", "set", text.PriceLine(), .. New()], ["stage", "show", "walls"]]);
            case "code or scanned text": return new(kind, [["show", text.Code()], ["count", FileOf(text.Scanned())], ["mark", "used", text.Code()], ["change", text.Code(), "--note", text.Harm()]]);
            case "hand-over file": return new(kind, [["hand", "take-in", FileOf(text.Altered(File.ReadAllBytes(_transfer)))]]);
            case "hand-over file with a right hash": return new(kind, [["hand", "take-in", FileOf(text.Transfer(File.ReadAllBytes(_transfer)))], ["list", "--json"], ["history"]]);
            case "picture": return new(kind, [["count", FileOf(new HostilePictures(random, text).Draw(), ".jpg")]]);
            case "lines typed on the screen": return new(kind, []) { Screen = () => HostileScreen.Drawn(seed) };
            case "kept plan altered": return new(kind, [["plans"], ["sheet"], ["today"], ["cut", "--all"], ["check"], ["undo"]]) { Yard = AlteredPlan(text) };
            case "yard with altered bytes": return new(kind, [.. Looks.Select(look => (string[])[look])]) { Yard = FileOf(text.Altered(File.ReadAllBytes(_whole))) };
            case "yard with altered content": return new(kind, [.. Looks.Select(look => (string[])[look]), ["export", "-", "--gone"], ["list", "--json"], ["plans"], ["wall", "list"]]) { Yard = AlteredContent(random, text) };
            default: throw new ArgumentOutOfRangeException(nameof(kind));
        }
    }

    /// <summary>Feeds it, and says what is wrong; nothing where all is as it should be.</summary>
    public IReadOnlyList<string> Feed(HostileInput input)
    {
        var yard = input.Yard ?? FileOf(File.ReadAllBytes(_whole), ".offcuts");
        var wrong = new List<string>();
        if (input.Screen is { } screen) Typed(screen, yard, wrong, again: false);
        foreach (var command in input.Commands)
        {
            if (command.Any(argument => argument.Contains('\0', StringComparison.Ordinal))) continue;
            var before = input.Yard is null ? Numbered(yard) : 0;
            var (status, output, error, took) = Run([.. command, "--yard", yard]);
            if (status is < 0 or > 3) wrong.Add($"{command[0]}: exit status {status}: {error}");
            if (took > Longest) wrong.Add($"{command[0]}: took {took.TotalSeconds:0.0} s");
            if (input.Yard is null && status > 1 && Numbered(yard) != before) wrong.Add($"{command[0]}: was refused and changed the yard");
            if (Steers(output) || Steers(error)) wrong.Add($"{command[0]}: a control character on the terminal");
            if (command is ["export", "-", ..] or ["price", "export", "-", ..] && Formula(output) is { } cell) wrong.Add($"{command[0]}: a formula in the CSV: {cell}");
        }

        if (Directory.GetFileSystemEntries(_root).FirstOrDefault(entry => entry != _inside && entry != _whole && entry != _transfer && entry != _whole + ".backups") is { } outside)
            wrong.Add($"a file outside its folder: {Path.GetFileName(outside)}");
        Clear();
        return wrong;
    }

    /// <summary>The longest that one command took since this was asked last.</summary>
    public TimeSpan TakeLongest()
    {
        var longest = _longest;
        _longest = default;
        return longest;
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    /// <summary>True where a text would steer a terminal. Lines end by LF, in CSV by CR LF.</summary>
    public static bool Steers(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).Any(letter => letter != '\n' && TextRules.IsControl(letter));

    /// <summary>The first cell that a spreadsheet would run, or null: it begins with one of these and is no plain number.</summary>
    public static string? Formula(string csv)
    {
        var quoted = false;
        var cell = new StringBuilder();
        foreach (var letter in csv + "\n")
        {
            if (letter == '"') quoted = !quoted;
            else if (!quoted && letter is ',' or '\n' or '\r')
            {
                var text = cell.ToString().TrimStart(' ');
                if (text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' && !decimal.TryParse(text, out _)) return text;
                cell.Clear();
            }
            else cell.Append(letter);
        }

        return null;
    }

    // What this thread has worked: whatever else the machine does makes no input slow. Where the system does not tell it, the clock on the wall.
    private static TimeSpan ProcessorTime()
    {
        const int threadTime = 3;
        return OperatingSystem.IsLinux() && clock_gettime(threadTime, out var time) == 0
            ? TimeSpan.FromSeconds(time.Seconds) + TimeSpan.FromMicroseconds(time.Nanoseconds / 1000.0)
            : Stopwatch.GetElapsedTime(0);
    }

    [System.Runtime.InteropServices.DllImport("libc")]
    [System.Runtime.InteropServices.DefaultDllImportSearchPaths(System.Runtime.InteropServices.DllImportSearchPath.System32)]
    private static extern int clock_gettime(int clock, out Moment time);

    private readonly record struct Moment(long Seconds, long Nanoseconds);

    private static long Numbered(string yard)
    {
        using var open = YardFile.Open(yard, TimeProvider.System);
        return open.ChangeNumber;
    }

    private (int Status, string Out, string Error, TimeSpan Took) Run(string[] arguments)
    {
        var (output, error) = (new StringWriter { NewLine = "\n" }, new StringWriter { NewLine = "\n" });
        var world = World(output, error);
        var began = ProcessorTime();
        int status;
        try
        {
            status = CommandLine.Run(arguments, world, (_, _) => throw new InvalidOperationException("no screen here"));
        }
        catch (Exception failed)
        {
            // What Program itself would tell as a failure of the program.
            status = Exit.Broken;
            error.WriteLine(TextRules.Harmless(failed.GetType().Name + ": " + failed.Message + failed.StackTrace?.Split('\n').FirstOrDefault(line => line.Contains("Offcuts.", StringComparison.Ordinal))));
        }

        var took = ProcessorTime() - began;
        if (took > _longest) _longest = took;
        return (status, output.ToString(), error.ToString(), took);
    }

    private void Must(params string[] arguments)
    {
        var (status, _, error, _) = Run([.. arguments, "--yard", _whole]);
        if (status > 1) throw new InvalidOperationException($"{string.Join(' ', arguments)}: {error}");
    }

    // What takes too long is typed once more: the first time may have built what only a first time needs.
    private void Typed(Func<HostileScreen> screen, string path, List<string> wrong, bool again)
    {
        var began = ProcessorTime();
        try
        {
            using var yard = YardFile.Open(path, TimeProvider.System);
            if (screen().Type(yard, World(TextWriter.Null, TextWriter.Null)) is { } steers) wrong.Add($"a control character on the screen: {TextRules.Harmless(steers)}");
        }
        catch (Exception failed)
        {
            wrong.Add($"the screen: {TextRules.Harmless(failed.GetType().Name + ": " + failed.Message + failed.StackTrace?.Split('\n').FirstOrDefault(line => line.Contains("Offcuts.", StringComparison.Ordinal)))}");
        }

        var took = ProcessorTime() - began;
        if (took > Longest && !again)
        {
            Typed(screen, FileOf(File.ReadAllBytes(_whole), ".offcuts"), wrong, again: true);
            return;
        }

        if (took > _longest) _longest = took;
        if (took > Longest) wrong.Add($"the screen: took {took.TotalSeconds:0.0} s");
    }

    private Surroundings World(TextWriter output, TextWriter error) =>
        Surroundings.Real() with { In = TextReader.Null, InBytes = () => Stream.Null, Out = output, Error = error, InIsTerminal = false, OutIsTerminal = false, Environment = _ => null, UserFolder = _inside };

    // The document of a kept plan, with something in it that no plan says; the row it stands in is right.
    private string AlteredPlan(HostileText text)
    {
        var path = FileOf(File.ReadAllBytes(_whole), ".offcuts");
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using var read = connection.CreateCommand();
        read.CommandText = "SELECT document FROM plan LIMIT 1";
        var document = text.Json((string)read.ExecuteScalar()!);
        using var triggers = connection.CreateCommand();
        triggers.CommandText = "SELECT group_concat('DROP TRIGGER ' || name, ';') FROM sqlite_schema WHERE type = 'trigger' AND tbl_name IN ('plan', 'plan_step')";
        using var alter = connection.CreateCommand();
        alter.CommandText = $"PRAGMA ignore_check_constraints = ON; {triggers.ExecuteScalar()}; UPDATE plan SET document = :document; UPDATE plan_step SET state = 'waiting', actual = NULL";
        alter.Parameters.AddWithValue(":document", document);
        alter.ExecuteNonQuery();
        return path;
    }

    // Rows that say what no program of ours would, put in behind the file's own rules.
    private string AlteredContent(Random random, HostileText text)
    {
        var path = FileOf(File.ReadAllBytes(_whole), ".offcuts");
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using var triggers = connection.CreateCommand();
        triggers.CommandText = "PRAGMA ignore_check_constraints = ON; SELECT name FROM sqlite_schema WHERE type = 'trigger'";
        var names = new List<string>();
        using (var reader = triggers.ExecuteReader())
            while (reader.Read()) names.Add(reader.GetString(0));
        (string Table, string[] Columns)[] targets =
        [
            ("piece", ["material", "bad_spots_320ths_mm", "place", "note", "treated_with", "from_stage"]), ("bin", ["hardware", "unit", "place", "note"]), ("stage", ["name", "begins_on"]),
            ("required_cut", ["name", "material", "use", "treated"]), ("price", ["material", "supplier", "seen_on"]), ("setting", ["currency_sign", "species", "specific_gravity", "covered_places"]),
            ("plan", ["document", "made_on"]), ("plan_step", ["actual", "state"]), ("ledger", ["stage", "board_feet", "day"]), ("history", ["what", "at"]), ("change", ["before", "after"]),
        ];
        using var alter = connection.CreateCommand();
        alter.CommandText = string.Concat(names.Select(name => $"DROP TRIGGER {name};"));
        alter.ExecuteNonQuery();
        for (var i = 1 + random.Next(3); i > 0; i--)
        {
            var (table, columns) = targets[random.Next(targets.Length)];
            using var set = connection.CreateCommand();
            set.CommandText = $"UPDATE {table} SET {columns[random.Next(columns.Length)]} = :harm";
            set.Parameters.AddWithValue(":harm", random.Next(4) == 0 ? new string('[', random.Next(200_000)) : text.Harm());
            try
            {
                set.ExecuteNonQuery();
            }
            catch (SqliteException)
            {
                // A name that must be another in each row.
            }
        }

        return path;
    }

    private string FileHere(string name) => Path.Combine(_inside, name);

    private string FileOf(string text) => FileOf(Encoding.UTF8.GetBytes(text));

    private string FileOf(byte[] bytes, string ending = ".txt")
    {
        var path = FileHere($"input-{_made++}{ending}");
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private void Clear()
    {
        foreach (var file in Directory.GetFiles(_inside)) File.Delete(file);
        foreach (var folder in Directory.GetDirectories(_inside)) Directory.Delete(folder, recursive: true);
    }
}
