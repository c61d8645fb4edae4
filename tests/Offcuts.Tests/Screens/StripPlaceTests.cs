namespace Offcuts.Tests.Screens;

/// <summary>What is said of a catalogue line while it is typed.</summary>
[Collection(OnScreen.Name)]
public sealed class StripPlaceTests
{
    [Fact]
    public void A_new_place_near_a_known_one_is_said_while_the_line_is_typed_and_is_saved_all_the_same()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8' @north rack").Press("Enter").Type("2x4 7' @north rak");
            run.Text.Should().Contain("! NEW PLACE: north rak (did you mean north rack?)");
            run.Press("Enter");
            run.Yard.Pieces().Select(piece => piece.Place).Should().Equal("north rack", "north rak");

            run.Press("F2", "Ctrl+T").Type("nroth rack");
            run.Text.Should().Contain("! NEW PLACE: nroth rack (did you mean north rack?)");
        });
    }
}
