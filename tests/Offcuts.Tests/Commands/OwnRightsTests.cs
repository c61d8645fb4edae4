using System.Diagnostics;

namespace Offcuts.Tests.Commands;

/// <summary>
/// Whatever the program writes is its user's alone, even where the user's mask would let everybody in (umask 000). Rights of this kind are Unix's.
/// </summary>
public sealed class OwnRightsTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Every_file_and_folder_that_is_made_is_the_users_own()
    {
        if (OperatingSystem.IsWindows()) return;
        var made = Directory.CreateDirectory(Path.Combine(_yard.Folder, "made")).FullName;
        var yard = Path.Combine(made, "yard.offcuts");
        string[] commands =
        [
            "add --new \"2x4 8' x3 @rack\"", "stage new walls", "stage need walls \"stud: 2x4 7' x2\"", "price set \"2x4 8' 4.18\"",
            "plan --save --time 5", "sheet --pdf sheet.pdf", "export stock.csv", "price export prices.csv", "stage export cuts.csv", "label print labels.pdf", "label ruler ruler.pdf",
            "label blank 3 blanks.pdf", "cut --all", "ledger --export ledger.csv", "backup copy.offcuts", "check", "check --save saved",
            "hand over --free --to Jo --gift --file jo.offcuts-hand", "hand sheet 1 jo.pdf", "restore copy.offcuts --yes",
        ];
        var lines = commands.Select(command => $"dotnet '{Path.Combine(AppContext.BaseDirectory, "offcuts.dll")}' {command} --yard '{yard}' >> said 2>&1 || true");
        using var process = Process.Start(new ProcessStartInfo("sh", ["-c", $"umask 000; cd '{made}'; {string.Join("; ", lines)}"]))!;
        process.WaitForExit(240_000).Should().BeTrue();

        var files = Directory.GetFiles(made, "*", SearchOption.AllDirectories).Where(file => Path.GetFileName(file) != "said").ToArray();
        var folders = Directory.GetDirectories(made, "*", SearchOption.AllDirectories);
        files.Select(Path.GetFileName).Should().Contain(["yard.offcuts", "sheet.pdf", "stock.csv", "prices.csv", "cuts.csv", "labels.pdf", "ruler.pdf", "blanks.pdf", "ledger.csv", "copy.offcuts", "jo.offcuts-hand", "jo.pdf"], File.ReadAllText(Path.Combine(made, "said")));
        folders.Should().NotBeEmpty();
        foreach (var file in files) File.GetUnixFileMode(file).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite, file);
        foreach (var folder in folders) File.GetUnixFileMode(folder).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, folder);
    }

    [Fact]
    public void A_file_that_is_written_again_keeps_the_rights_it_had()
    {
        if (OperatingSystem.IsWindows()) return;
        _yard.Must("add", "2x4 8'");
        var path = _yard.FileOf("stock.csv", "old\n");
        const UnixFileMode Shared = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead;
        File.SetUnixFileMode(path, Shared);

        _yard.Must("export", path);

        File.ReadAllText(path).Should().Contain("2x4");
        File.GetUnixFileMode(path).Should().Be(Shared);
    }
}
