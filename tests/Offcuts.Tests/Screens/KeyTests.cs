using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>The keys as the places declare them.</summary>
public sealed class KeyTests
{
    [Fact]
    public void A_line_is_cleared_by_one_key_at_every_place()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            foreach (var place in (string[])["F2", "F3", "F4", "F5", "F6", "F8", "F9", "F11", "F12"])
            {
                run.Press(place).Type("2x4").Press("Ctrl+U");
                run.Shell.State.Line.Text.Should().BeEmpty(place);
            }
        });
    }

    [Fact]
    public void A_price_or_a_setting_that_is_put_on_the_line_stands_marked()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F9", "Ctrl+E").Shell.State.Line.Text.Should().NotBeEmpty();
            run.Type("unit mm").Lines[2].Should().Be("set    unit mm");
            run.Press("Esc", "Esc", "F8", "Ctrl+E").Shell.State.Line.Text.Should().NotBeEmpty();
            run.Type("2x6").Lines[2].Should().Be("price  2x6");
        });
    }

    [Fact]
    public void That_the_next_match_buys_nothing_stands_on_Plan_as_long_as_it_holds()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F5", "Ctrl+S", "F2", "Down", "F5").Text.Should().Contain("! the next match buys nothing; ^S lets it buy again");
            run.Press("Ctrl+S").Text.Should().NotContain("the next match buys nothing");
        });
    }

    private static readonly ShellState State = ShellModel.Start(new YardSnapshot());

    public static TheoryData<string> Places => [.. Enum.GetNames<Place>()];

    [Theory]
    [MemberData(nameof(Places))]
    public void Every_chord_names_a_key_and_no_two_of_a_place_are_the_same(string place)
    {
        // What a place takes of the keys that work everywhere is its own there.
        var state = State with { Place = Enum.Parse<Place>(place) };
        var keys = ShellKeys.OfPlace(state).Concat(ShellKeys.Beside(state)).SelectMany(use => use.Chords).Select(chord => Chord.ToKey(chord).ToString()).ToArray();
        keys.Should().OnlyHaveUniqueItems();
    }

    [Theory]
    [MemberData(nameof(Places))]
    public void No_key_that_types_or_corrects_is_taken_from_the_line(string place)
    {
        var state = State with { Place = Enum.Parse<Place>(place) };
        ShellKeys.OfPlace(state).Concat(ShellKeys.Everywhere).SelectMany(use => use.Chords)
            .Should().OnlyContain(chord => !Chord.Edits(Chord.ToKey(chord)));
    }

    [Theory]
    [MemberData(nameof(Places))]
    public void The_help_explains_every_key_of_its_place(string place)
    {
        var state = State with { Place = Enum.Parse<Place>(place) };
        var help = string.Join('\n', ShellHelp.Of(state, 100).Select(row => row.Text));
        foreach (var use in ShellKeys.OfPlace(state).Concat(ShellKeys.Everywhere))
            help.Should().Contain(use.AllShown).And.Contain(use.About.Split(' ')[0]);
    }

    [Theory]
    [MemberData(nameof(Places))]
    public void The_foot_takes_at_most_three_lines_of_60_columns(string place)
    {
        var state = State with { Place = Enum.Parse<Place>(place) };
        var foot = ShellRows.Foot(state, 60);
        foot.Should().HaveCountLessThanOrEqualTo(3);
        foot.Should().OnlyContain(row => row.Text.TrimEnd().Length <= 60);
    }

    [Theory]
    [InlineData("Up", "CursorUp")]
    [InlineData("PageDown", "PageDown")]
    [InlineData("Ctrl+Down", "Ctrl+CursorDown")]
    [InlineData("Ctrl+L", "Ctrl+L")]
    [InlineData("F10", "F10")]
    public void A_chord_is_the_key_of_its_name(string chord, string key) => Chord.ToKey(chord).ToString().Should().Be(key);
}
