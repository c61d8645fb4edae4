using System.Text.RegularExpressions;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;

namespace Offcuts.Walls.Tests;

/// <summary>The examples of the page on sheets are read, written and built.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Pages", "sheets.md")).ReplaceLineEndings("\n");

    [Fact]
    public void The_system_on_the_page_is_the_one_that_ships() => SystemText.Write(SystemSheet.Generic).Should().Be(Block("system"));

    [Fact]
    public void The_wall_on_the_page_can_be_built_and_is_written_as_it_stands_there()
    {
        var wall = WallText.Read(Block("wall")).Value;

        WallText.Write(wall).Should().Be(Block("wall"));
        LaidWall.Of(wall, SystemSheet.Generic, LengthUnit.Inch).Faults.Select(fault => fault.Sentence).Should().BeEmpty();
    }

    private static string Block(string name) => Blocks().Matches(Page).Single(block => block.Groups["name"].Value == name).Groups["text"].Value;

    [GeneratedRegex(@"```(?<name>\w+)\n(?<text>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Blocks();
}
