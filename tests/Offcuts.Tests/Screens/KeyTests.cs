using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>The keys as the places declare them.</summary>
public sealed class KeyTests
{
    private static readonly ShellState State = ShellModel.Start(new YardSnapshot());

    public static TheoryData<string> Places => [.. Enum.GetNames<Place>()];

    [Theory]
    [MemberData(nameof(Places))]
    public void Every_chord_names_a_key_and_no_two_of_a_place_are_the_same(string place)
    {
        var state = State with { Place = Enum.Parse<Place>(place) };
        var keys = ShellKeys.OfPlace(state).Concat(ShellKeys.Everywhere).SelectMany(use => use.Chords).Select(chord => Chord.ToKey(chord).ToString()).ToArray();
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
        var help = string.Join('\n', ShellRows.Help(state, 100).Select(row => row.Text));
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
