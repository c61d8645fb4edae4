using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Screens;

/// <summary>The settings on the screen.</summary>
[Collection(OnScreen.Name)]
public sealed class SettingsPlaceTests
{
    public static TheoryData<int, int> Sizes => GoldenScreenTests.Sizes;

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_settings(int width, int height) =>
        ScreenRun.OnKnownYard(width, height, run => Golden.Check($"settings-{width}x{height}", run.Press("F9", "Down", "Down", "Down", "Down").Type("kerf foam 0").Text));

    [Fact]
    public void A_line_sets_what_it_says_and_says_what_it_changes()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F9").Type("kerf foam 0");
            run.Lines[3].Should().Be("✓ kerf foam 0\"");
            run.Press("Enter");
            run.Yard.Settings().Kerf(MaterialReader.Read("foam 2-1/2x12").Value).Should().Be(Length.Zero);
            run.Shell.State.Settings.Setting!.Text.Should().Be("kerf foam 0\"", "what was set is chosen");

            run.Type("tax 8.25");
            run.Lines[3].Should().Be("✓ tax 8.25, instead of tax 0");
            run.Press("Enter").Type("unit mm");
            run.Lines[3].Should().Be("✓ unit mm; what else is set is written so too");
            run.Press("Enter").Type("unit mm");
            run.Lines[3].Should().Be("✓ that is set already");
        });
    }

    [Fact]
    public void In_a_yard_of_millimetres_every_place_shows_lines_to_type_in_millimetres()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F10").Text.Should().Contain("2x10 3450, 3450, 2810 fair nails @north rack");
            run.Press("Down").Text.Should().Contain("stakes: 2x4 600 x16 rough");
            run.Press("F3").Text.Should().Contain("then plain words: 2x10 3450, 3450, 2810 fair");
            run.Press("F8").Text.Should().Contain("one a line: 2x4 2400 3.98 lead 2 from the mill");
            run.Press("Ctrl+E").Text.Should().Contain("no price is entered yet; type one, like 2x4 2400 3.98 lead 2");
            run.Press("F2").Text.Should().Contain("2400+ for 2400 mm or longer");
            run.Press("F9").Text.Should().Contain("kerf others 3.175 mm").And.Contain("keep others 304.8 mm");
            run.Press("F4", "Ctrl+K").Type("walls").Press("Enter").Text.Should().Contain("What walls needs, a line a cut: blocking: 2x4 370 x12 rough;");
        }, yard => new ChangeSettings(yard).Set("unit mm").Ok.Should().BeTrue());
    }

    [Fact]
    public void The_chosen_setting_comes_onto_the_line_to_be_changed()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F9", "Down", "Enter");
            run.Lines[2].Should().Be("set    currency $");
            run.Press("Backspace").Type("€").Press("Enter");
            run.Yard.Settings().CurrencySign.Should().Be("€");
            run.Lines[2].Should().Be("set");
        });
    }

    [Fact]
    public void One_of_its_own_goes_back_to_what_holds_for_all_others_once_that_is_meant()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F9").Type("keep 2x4 1' 6").Press("Enter");
            run.Yard.Settings().Keep(MaterialReader.Read("2x4").Value).Should().Be(Length.Inches(18));
            run.Press("Ctrl+X");
            run.Text.Should().Contain("Take back \"keep 2x4 1' 6\"\"? What holds for the others holds for it too");
            run.Press("y");
            run.Yard.Settings().Keeps.Should().BeEmpty();

            run.Type("cover the barn").Press("Enter", "Ctrl+X", "y");
            run.Yard.Settings().Covered.Should().BeEmpty();

            run.Press("Ctrl+Home", "Ctrl+X");
            run.Text.Should().Contain("\"unit in\" is always set to something");
        });
    }

    [Theory]
    [InlineData("kerf foam 2", "a kerf over 1 in is no saw cut")]
    [InlineData("tax soon", "tax is a percentage from 0 to 100 with at most three decimals, like 8.25")]
    [InlineData("sun 3", "\"sun\" can't be set; there are unit")]
    [InlineData("foam soon", "write after how many days in the sun foam is pointed at")]
    public void What_can_not_be_set_stays_on_the_line_with_its_reason(string line, string reason)
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var before = run.Yard.ChangeNumber;
            run.Press("F9").Type(line);
            run.Lines[3].Should().StartWith("… " + reason[..Math.Min(60, reason.Length)]);
            run.Press("Enter");
            run.Lines[3].Should().StartWith("✗ ");
            run.Lines[2].Should().Be($"set    {line}");
            run.Yard.ChangeNumber.Should().Be(before);
            run.Press("Ctrl+Q");
            run.HasLeft.Should().BeFalse();
            run.Text.Should().Contain("The line of the settings is not saved");
        });
    }
}
