using Offcuts.Screens;

namespace Offcuts.Tests;

/// <summary>What is told where the program itself fails.</summary>
public sealed class CrashReportTests : IDisposable
{
    private readonly TryYard _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void It_says_in_a_line_what_failed_and_in_a_file_where()
    {
        var told = new StringWriter { NewLine = "\n" };

        CrashReport.Tell(Failure(), ["plan", "--save"], _folder.World(TextWriter.Null, told)).Should().Be(4);

        var lines = told.ToString().Split('\n');
        lines[0].Should().Be("offcuts failed and changed nothing more: the saw\\u001b[31m is blunt");
        lines[1].Should().StartWith("what was saved is whole; where it failed is told in ");
        var path = lines[1].Split(" told in ")[1];
        Path.GetDirectoryName(path).Should().Be(Path.Combine(_folder.Folder, "offcuts"));
        var text = File.ReadAllText(path);
        text.Should().Contain("when     2026-06-01 12:00:00 UTC").And.Contain("command  plan").And.Contain("InvalidOperationException").And.Contain(nameof(Failure));
        text.Should().NotContain("--save", "what stands behind a command may be anybody's own");
    }

    [Fact]
    public void What_was_typed_and_not_saved_stands_in_the_file_which_is_its_user_s_own()
    {
        var told = new StringWriter { NewLine = "\n" };
        TypedText[] typed = [new("the strip line", "2x10 11'4, 9'2 müller"), new("the sheet of shed", "wall  shed\nleg A: 12' end")];

        CrashReport.Tell(Failure(), [], _folder.World(TextWriter.Null, told), typed);

        var lines = told.ToString().Split('\n');
        lines[2].Should().Be("what was typed and not saved yet stands there too, to be typed again");
        var path = lines[1].Split(" told in ")[1];
        File.ReadAllText(path).ReplaceLineEndings("\n").Should().EndWith("  the strip line:\n    2x10 11'4, 9'2 müller\n  the sheet of shed:\n    wall  shed\n    leg A: 12' end\n");
        if (!OperatingSystem.IsWindows()) File.GetUnixFileMode(path).Should().Be(UnixFileMode.UserRead | UnixFileMode.UserWrite);
    }

    [Fact]
    public void Where_no_file_can_be_written_beside_the_yard_the_temporary_folder_takes_it()
    {
        File.WriteAllText(Path.Combine(_folder.Folder, "offcuts"), "a file where the folder would be");
        var told = new StringWriter();
        CrashReport.Tell(Failure(), [], _folder.World(TextWriter.Null, told));
        var path = told.ToString().TrimEnd().Split(" told in ")[1];
        File.ReadAllText(path).Should().Contain("command  the full screen");
        File.Delete(path);
    }

    private static InvalidOperationException Failure()
    {
        try
        {
            throw new InvalidOperationException("the saw\u001b[31m is blunt");
        }
        catch (InvalidOperationException error)
        {
            return error;
        }
    }
}
