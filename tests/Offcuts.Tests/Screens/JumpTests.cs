using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>A code is gone to from any place.</summary>
[Collection(OnScreen.Name)]
public sealed class JumpTests
{
    public static TheoryData<string> Places => ["Ctrl+A", "F2", "F3", "F4", "F5", "F6", "F7", "F8", "F9"];

    [Theory]
    [MemberData(nameof(Places))]
    public void One_key_and_a_scan_open_the_piece_from_any_place_and_lose_nothing_typed(string place)
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press(place).Type("half a li").Press("Ctrl+F");
            run.Lines[2].Should().Be("code");
            run.Lines[3].Should().Be("Scan a label or type its code: what it hangs on is shown");

            run.Scan(KnownYard.Codes[3]);

            run.Shell.State.Place.Should().Be(Place.Yard);
            run.Shell.State.Yard.Closer.Should().BeTrue();
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[3]);
            if (place == "F2") return;
            run.Press(place);
            run.Lines[2].Should().EndWith("half a li");
        });
    }

    [Theory]
    [InlineData("F4")]
    [InlineData("F5")]
    [InlineData("F6")]
    [InlineData("F7")]
    [InlineData("F8")]
    [InlineData("F9")]
    public void A_label_scanned_where_something_else_is_typed_opens_its_piece_and_leaves_the_line(string place)
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press(place).Type("half a line ").Scan(KnownYard.Codes[1]);
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[1]);
            run.Shell.State.Place.Should().Be(Place.Yard);
            run.Press(place);
            run.Lines[2].Should().EndWith("half a line");
        });
    }

    [Fact]
    public void A_code_with_a_slip_or_of_nothing_is_told_as_such_and_stays()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8", "Ctrl+F").Type("K7F 3MX");
            run.Lines[4].Should().StartWith("… ");
            run.Press("Enter");
            run.Lines[2].Should().Be("code   K7F 3MX");
            run.Press("Ctrl+U").Type(KnownYard.Codes[20].Text).Press("Enter");
            run.Text.Should().Contain($"nothing in this yard has the code {KnownYard.Codes[20]}");
            run.Shell.State.Place.Should().Be(Place.Prices);
        });
    }

    [Fact]
    public void Esc_takes_two_presses_to_lose_a_typed_code_and_goes_back_to_the_line()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F8").Type("2x4 8' 4").Press("Ctrl+F").Type("K7").Press("Esc");
            run.Lines[2].Should().Be("code   K7");
            run.Press("Esc");
            run.Lines[2].Should().Be("price  2x4 8' 4");
            run.Press("Ctrl+F", "Esc");
            run.Lines[2].Should().Be("price  2x4 8' 4", "an empty code needs one");
        });
    }

    [Fact]
    public void A_piece_that_is_gone_is_shown_too()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Scan(KnownYard.Codes[2]).Press("Ctrl+E", "u").Press("F7", "Ctrl+F").Scan(KnownYard.Codes[2]);
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[2]);
            run.Shell.State.Yard.Closer.Should().BeTrue();
            run.Text.Should().Contain("used");
        });
    }

    [Fact]
    public void A_label_that_hangs_on_a_piece_is_opened_from_strip_by_the_key_and_the_scan()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F3").Scan(KnownYard.Codes[2]);
            run.Text.Should().Contain("hangs on a 2x4 already; scan another label, or ^F and the scan show it");
            run.Shell.State.Place.Should().Be(Place.Strip);
            run.Press("Ctrl+F").Scan(KnownYard.Codes[2]);
            run.Shell.State.Yard.Code.Should().Be(KnownYard.Codes[2]);
        });
    }

    [Fact]
    public void What_is_typed_so_far_is_read_back()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F7", "Ctrl+F").Type(KnownYard.Codes[4].Text);
            run.Lines[4].Should().Be($"✓ {KnownYard.Codes[4]}: 2x10 12', in the yard, at long pile");
        });
    }
}
