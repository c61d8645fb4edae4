using System.Globalization;
using Microsoft.Data.Sqlite;
using Offcuts.Commands;
using Offcuts.Store;

namespace Offcuts.Benchmarks.Crash;

/// <summary>A yard in a folder of its own that the program is killed on, made anew now and then. All invented.</summary>
internal sealed class CrashYard : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("offcuts-crash-").FullName;
    private int _made;

    public CrashYard()
    {
        Lines = FileOf("lines.txt", string.Concat(Enumerable.Range(0, 200).Select(i => $"2x4 {70 + i % 50}\" fair nails @north rack\n")));
        Stock = FileOf("stock.csv", "code,material,length,qty,condition,place\n" + string.Concat(Enumerable.Range(0, 300).Select(i => FormattableString.Invariant($",2x6,{60 + i % 90} in,,sound,bay {i % 9}\n"))));
        Renew();
    }

    /// <summary>The folder of the present yard.</summary>
    public string Folder { get; private set; } = "";

    /// <summary>The yard's file.</summary>
    public string Path => System.IO.Path.Combine(Folder, "yard.offcuts");

    /// <summary>200 lines to catalogue.</summary>
    public string Lines { get; }

    /// <summary>300 rows to import.</summary>
    public string Stock { get; }

    /// <summary>The number of the last backup that was asked for.</summary>
    public string LastBackup => BackupByHand?.Number.ToString(CultureInfo.InvariantCulture) ?? "1";

    /// <summary>That backup.</summary>
    public Backup? BackupByHand => new Backups(Path).All().FirstOrDefault(one => one.Kind == BackupKind.ByHand);

    /// <summary>
    /// True while something stands beside the yard that is there only while it, or a copy of it, is written. What a program killed before
    /// has left is older than <paramref name="since"/>.
    /// </summary>
    public bool IsWriting(DateTime since)
    {
        try
        {
            return New(Path + "-journal", since)
                || Directory.GetFiles(Folder, "*.restored-*").Any(file => New(file, since))
                || (Directory.Exists(Path + ".backups") && Directory.GetFiles(Path + ".backups", ".*.part").Any(file => New(file, since)));
        }
        catch (IOException)
        {
            return true;
        }
    }

    /// <summary>True while the journal of a change stands beside the yard.</summary>
    public bool IsChanging(DateTime since) => New(Path + "-journal", since);

    private static bool New(string file, DateTime since) => File.Exists(file) && File.GetLastWriteTimeUtc(file) > since;

    /// <summary>A piece of the yard by its code.</summary>
    public string AnyPiece(int number)
    {
        using var yard = YardFile.Open(Path, TimeProvider.System);
        var pieces = yard.Pieces();
        return pieces[number % pieces.Count].Code.Text;
    }

    /// <summary>What a scanner saw at a place: every third piece of the yard lies there now.</summary>
    public string Scanned(int number)
    {
        using var yard = YardFile.Open(Path, TimeProvider.System);
        return FileOf("scanned.txt", $"@hall {number}\n" + string.Concat(yard.Pieces().Where((_, i) => i % 3 == number % 3).Select(piece => piece.Code.Text + "\n")));
    }

    /// <summary>A small yard with a stage, prices and boards, in a new folder.</summary>
    public void Renew()
    {
        Directory.CreateDirectory(Folder = System.IO.Path.Combine(_root, $"yard-{_made++}"));
        Must("add", "--new", "2x4 92-5/8\" x10, 8' x8, 6' x6 @east bay");
        Must("add", "--new", "panel tie x200 @shed");
        Must("price", "set", "2x4 8' 4.18");
        Must("stage", "new", "bracing");
        Must("stage", "need", "bracing", "uprights: 2x4 7' x6");
        Must("stage", "need", "bracing", "kickers: 2x4 5' x4");
    }

    /// <summary>A file of an earlier version in place of the yard.</summary>
    public void Old(string released)
    {
        Directory.CreateDirectory(Folder = System.IO.Path.Combine(_root, $"yard-{_made++}"));
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA foreign_keys = OFF;" + File.ReadAllText(released);
        command.ExecuteNonQuery();
    }

    /// <summary>Runs the program's own command line inside this process, unharmed.</summary>
    public void Must(params string[] arguments)
    {
        var (status, error) = Try(arguments);
        if (status > 1) throw new InvalidOperationException($"{string.Join(' ', arguments)}: {status}: {error}");
    }

    /// <summary>The same, where it may be refused.</summary>
    public (int Status, string Error) Try(params string[] arguments)
    {
        var (output, error) = (new StringWriter(), new StringWriter());
        var world = Surroundings.Real() with { Out = output, Error = error, InIsTerminal = false, OutIsTerminal = false, Environment = _ => null, UserFolder = Folder };
        var status = CommandLine.Run([.. arguments, "--yard", Path], world, (_, _) => throw new InvalidOperationException("no screen here"));
        return (status, error.ToString());
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private string FileOf(string name, string text)
    {
        var path = System.IO.Path.Combine(_root, name);
        File.WriteAllText(path, text);
        return path;
    }
}
