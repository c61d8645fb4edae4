using System.Runtime.CompilerServices;
using Offcuts.Screens;

namespace Offcuts.Tests;

/// <summary>
/// What the README shows of the program comes from the program: its picture is a golden screen, its keys are those that the
/// places declare. Run with <c>OFFCUTS_REWRITE_GOLDEN=1</c> to write both parts anew.
/// </summary>
public sealed class ReadmeTests
{
    private static string Root([CallerFilePath] string source = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(source)!, "..", ".."));

    private static string ReadmePath => Path.Combine(Root(), "README.md");

    [Fact]
    public void Its_picture_is_a_screen_of_the_program()
    {
        var golden = Path.Combine(Root(), "tests", "Offcuts.Tests", "Screens", "Golden", "plan-found-80x24.txt");
        var wanted = Kept("picture", $"```text\n{File.ReadAllText(golden).ReplaceLineEndings("\n").TrimEnd('\n')}\n```");

        Part("picture").Should().Be(wanted);
    }

    [Fact]
    public void Its_keys_are_those_the_places_declare()
    {
        var state = ShellModel.Start(new YardSnapshot());
        var rows = Enum.GetValues<Place>().Select(place => Row(place.ToString(), ShellKeys.OfPlace(state with { Place = place })));
        string[] table = ["| place | keys |", "| --- | --- |", .. rows, Row("Sheet of a wall or system", FormKeys.All), Row("everywhere", ShellKeys.Everywhere)];

        var wanted = Kept("keys", string.Join('\n', table));

        Part("keys").Should().Be(wanted);
    }

    [Fact]
    public void Every_command_is_named()
    {
        using var yard = new TryYard();
        var readme = File.ReadAllText(ReadmePath);
        var commands = yard.Must("--help").Lines.SkipWhile(line => line != "Commands:").Skip(1).TakeWhile(line => line.StartsWith("  ", StringComparison.Ordinal))
            .Select(line => line.Trim().Split(' ')[0])
            .ToArray();

        commands.Should().HaveCountGreaterThan(20);
        foreach (var command in commands) readme.Should().Contain($"`{command}`");
    }

    [Fact]
    public void The_check_of_the_whole_runs_exactly_its_test_command()
    {
        File.ReadAllText(ReadmePath).Should().Contain("```\ndotnet test\n```");
        File.ReadAllLines(Path.Combine(Root(), ".ci", "run")).Should().Contain("dotnet test 2>&1 | tee \"$log\"");
    }

    private static string Row(string place, IEnumerable<KeyUse> keys) =>
        $"| {place} | {string.Join(", ", keys.Where(key => key.Says.Length > 0).Select(key => $"{key.Shown} {key.Says}"))} |";

    private static string Part(string name)
    {
        var text = File.ReadAllText(ReadmePath).ReplaceLineEndings("\n");
        var (start, end) = Bounds(text, name);
        return text[start..end];
    }

    private static string Kept(string name, string wanted)
    {
        if (Environment.GetEnvironmentVariable("OFFCUTS_REWRITE_GOLDEN") == "1")
        {
            var text = File.ReadAllText(ReadmePath).ReplaceLineEndings("\n");
            var (start, end) = Bounds(text, name);
            File.WriteAllText(ReadmePath, text[..start] + wanted + text[end..]);
        }

        return wanted;
    }

    private static (int Start, int End) Bounds(string text, string name)
    {
        var mark = $"<!-- {name} -->\n";
        var start = text.IndexOf(mark, StringComparison.Ordinal) + mark.Length;
        start.Should().BeGreaterThan(mark.Length, $"the README has a part for its {name}");
        return (start, text.IndexOf($"\n<!-- end of {name} -->", start, StringComparison.Ordinal));
    }
}
