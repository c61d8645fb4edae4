using System.Globalization;
using System.Text.RegularExpressions;
using Offcuts.Core.Yard;

namespace Offcuts.Tests.Screens;

/// <summary>
/// A person's whole work by its real keys, from an empty yard to the result. The keys stand in the folder of the stories, whose page says what each step means;
/// <c>.ci/stories</c> presses the same ones in a real terminal.
/// </summary>
[Collection(OnScreen.Name)]
public sealed partial class SharedStoryTests
{
    [Theory]
    [InlineData("boards")]
    [InlineData("corner")]
    [InlineData("relative")]
    public void A_story_is_told_to_its_end(string name) => ScreenRun.On(80, 24, run =>
    {
        Code[] blanks = [];
        var number = 0;
        foreach (var line in File.ReadLines(Path.Combine(Folder(), name + ".txt")))
        {
            number++;
            if (line.Length == 0 || line[0] == '#') continue;
            if (blanks.Length == 0) blanks = [.. run.Yard.BlankCodes()];
            var (what, rest) = line.IndexOf(' ', StringComparison.Ordinal) is > 0 and var at ? (line[..at], Filled(line[(at + 1)..], run, blanks)) : (line, "");
            Step(run, blanks, what, rest, $"line {number} of {name}: {line}");
        }

        run.Press("Ctrl+Q").HasLeft.Should().BeTrue("nothing is left unsaved at the end");
        run.Folder.Must("check");
    }, at: Offcuts.Screens.Place.Today);

    [Fact]
    public void Every_story_of_the_folder_is_told()
    {
        Directory.GetFiles(Folder(), "*.txt").Select(Path.GetFileNameWithoutExtension).Should().BeEquivalentTo("boards", "corner", "relative");
    }

    private static void Step(ScreenRun run, Code[] blanks, string what, string rest, string because)
    {
        switch (what)
        {
            case "press":
                foreach (var key in rest.Split(' '))
                {
                    if (key.Length == 1) run.Type(key);
                    else run.Press(key);
                }

                break;
            case "type":
                run.Type(rest);
                break;
            case "clear":
                run.Press([.. Enumerable.Repeat("Backspace", int.Parse(rest, CultureInfo.InvariantCulture))]);
                break;
            case "scan":
                run.Scan(blanks[int.Parse(rest, CultureInfo.InvariantCulture) - 1]);
                break;
            case "tie":
                var (label, line) = (rest[..rest.IndexOf(' ', StringComparison.Ordinal)], rest[(rest.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
                var code = blanks[int.Parse(label, CultureInfo.InvariantCulture) - 1];
                run.Scan(code).Type(line).Press("Enter");
                Shown(run).Should().Contain($"Catalogued {code}, ", because);
                break;
            case "see":
                Shown(run).Should().Contain(Spaced(rest), because);
                break;
            case "unseen":
                Shown(run).Should().NotContain(Spaced(rest), because);
                break;
            case "other":
                run.Folder.Must(Words(rest));
                run.Tick();
                break;
            case "count":
                var parts = Count().Match(rest);
                parts.Success.Should().BeTrue(because);
                run.Folder.Must(Words(parts.Groups["command"].Value)).Out.Split(parts.Groups["text"].Value).Length.Should().Be(int.Parse(parts.Groups["number"].Value, CultureInfo.InvariantCulture) + 1, because);
                break;
            case "pdf":
                File.ReadAllText(Path.Combine(run.Folder.Folder, rest)).Should().StartWith("%PDF-", because);
                break;
            case "file":
                new FileInfo(Path.Combine(run.Folder.Folder, rest)).Length.Should().BePositive(because);
                break;
            default:
                throw new ArgumentException($"no such step: {because}");
        }
    }

    // Long sentences are broken between words, so a text may stand on two lines.
    private static string Shown(ScreenRun run) => Spaced(run.Text);

    private static string Spaced(string text) => Gap().Replace(text, " ");

    private static string Filled(string text, ScreenRun run, Code[] blanks) =>
        CodeNumber().Replace(text.Replace("{folder}", run.Folder.Folder, StringComparison.Ordinal), match => blanks[int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture) - 1].ToString());

    private static string[] Words(string command) => command.Split(' ');

    private static string Folder()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Offcuts.sln"))) folder = folder.Parent;
        return Path.Combine(folder!.FullName, "tests", "Offcuts.Tests", "Stories");
    }

    [GeneratedRegex("\\s+")]
    private static partial Regex Gap();

    [GeneratedRegex("\\{code ([0-9]+)\\}")]
    private static partial Regex CodeNumber();

    [GeneratedRegex("^(?<number>[0-9]+) (?<text>.+) in (?<command>[a-z -]+)$")]
    private static partial Regex Count();
}
