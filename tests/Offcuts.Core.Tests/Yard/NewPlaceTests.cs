using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>A slip in a place is told with the place that was more likely meant; what is really another place is not.</summary>
public sealed class NewPlaceTests
{
    private static readonly string[] Known = ["north rack", "south pile", "bay 11", "bay a", "trailer"];

    [Theory]
    [InlineData("north rak", "NEW PLACE: north rak (did you mean north rack?)")]
    [InlineData("suoth pile", "NEW PLACE: suoth pile (did you mean south pile?)")]
    [InlineData("Northrack", "NEW PLACE: Northrack (did you mean north rack?)")]
    [InlineData("treiler", "NEW PLACE: treiler (did you mean trailer?)")]
    [InlineData("baay 11", "NEW PLACE: baay 11 (did you mean bay 11?)")]
    public void A_slip_is_told_with_what_is_near(string place, string told) => NewPlace.Of(place, Known)!.Told.Should().Be(told);

    [Theory]
    [InlineData("north rack")]
    [InlineData("NORTH Rack")]
    [InlineData("south rack")]
    [InlineData("bay 12")]
    [InlineData("bay 1")]
    [InlineData("bay b")]
    [InlineData("north rack b")]
    [InlineData("barn")]
    [InlineData("")]
    public void What_is_known_and_what_is_really_another_place_are_not(string place) => NewPlace.Of(place, Known).Should().BeNull();

    [Fact]
    public void Of_several_places_each_is_told_once() =>
        NewPlace.Among(["north rak", "barn", "North rak", ""], Known).Should().Equal(new NewPlace("north rak", "north rack"));
}
