using System.Diagnostics;
using System.Text.RegularExpressions;

namespace Offcuts.Store.Tests;

/// <summary>What the page of the yard file says can be asked without this program, asked so: by the <c>sqlite3</c> program where it is installed, and by any reader of SQLite.</summary>
public sealed class ByHandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public ByHandTests()
    {
        using var yard = Yards.Open(Path);
        yard.Do(Samples.Everything);
    }

    private string Path => _folder["yard.offcuts"];

    private static string[] Questions
    {
        get
        {
            var page = File.ReadAllText(System.IO.Path.Combine(AppContext.BaseDirectory, "Pages", "yard-file.md")).ReplaceLineEndings("\n");
            var sql = Regex.Match(page, "```sql\n(.*?)```", RegexOptions.Singleline).Groups[1].Value;
            return [.. Regex.Replace(sql, "^--.*\n", "", RegexOptions.Multiline).Split(";\n", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        }
    }

    [Fact]
    public void Every_question_of_the_page_has_an_answer()
    {
        Questions.Should().HaveCount(7);
        foreach (var question in Questions) Yards.Ask(Path, question).Should().NotBeNull(question);
    }

    [Fact]
    public void The_sqlite3_program_answers_them_too_and_finds_the_yard_whole()
    {
        if (Sqlite3("--version") is null) return;

        Sqlite3(Path, "PRAGMA integrity_check").Should().Be("ok\n");
        foreach (var question in Questions) Sqlite3("-readonly", Path, question).Should().NotBeNullOrEmpty(question);
    }

    public void Dispose() => _folder.Dispose();

    // What it prints; null where there is no such program.
    private static string? Sqlite3(params string[] arguments)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo("sqlite3", arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var output = process.StandardOutput.ReadToEnd();
            var error = process.StandardError.ReadToEnd();
            process.WaitForExit();
            error.Should().BeEmpty();
            return output;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
