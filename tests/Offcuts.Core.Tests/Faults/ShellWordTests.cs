using System.Diagnostics;
using Offcuts.Core.Faults;

namespace Offcuts.Core.Tests.Faults;

/// <summary>A name in a command that is proposed.</summary>
public sealed class ShellWordTests
{
    public static TheoryData<string, string> Names => new()
    {
        { "walls", "walls" },
        { "north-2", "north-2" },
        { "stem wall", "\"stem wall\"" },
        { "#3 pier", "\"#3 pier\"" },
        { "o'hara", "\"o'hara\"" },
        { "a;b", "\"a;b\"" },
        { "generic, invented", "\"generic, invented\"" },
        { "6\" curb", "'6\" curb'" },
        { "5$ shed", "'5$ shed'" },
        { "no `way`!", "'no `way`!'" },
        { "o'hara's 6\" curb", "'o'\\''hara'\\''s 6\" curb'" },
        { @"C:\our yard\a.b", "\"C:\\our yard\\a.b\"" },
        { @"a\\b", @"'a\\b'" },
        { @"a b\", @"'a b\'" },
        { "", "\"\"" },
    };

    [Theory]
    [MemberData(nameof(Names))]
    public void A_name_is_one_word(string name, string word) => ShellWord.Of(name).Should().Be(word);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_shell_gives_the_name_back(string name, string word)
    {
        if (OperatingSystem.IsWindows()) return;
        var start = new ProcessStartInfo("/bin/sh") { RedirectStandardOutput = true };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add($"printf '<%s>' {word}");

        using var shell = Process.Start(start)!;
        shell.StandardOutput.ReadToEnd().Should().Be($"<{name}>");
    }

    [Fact]
    public void What_could_steer_a_terminal_is_shown_without_harm() => ShellWord.Of("a\u001bb").Should().Be("\"a\\u001bb\"");
}
