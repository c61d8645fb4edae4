namespace Offcuts.Tests.Commands;

/// <summary>A wall drawn on the command line. The garage is our own invention.</summary>
public sealed class WallDrawCommandTests : IDisposable
{
    // 28 ft x 20 ft outside, all corners to the left: the outside is at the right hand of who walks along it.
    private const string Garage = """
        wall             garage
        system           generic, invented
        height           2'
        core             6"
        closed           yes
        leg A: 28' left
          opening hatch: at 4' wide 3' high 2' sill 0
        leg B: 20' left
        leg C: 28' left
        leg D: 20' left
        footing boards   beyond 6" deep 8" of 2x10
        stakes           2' every 3' of 2x4
        spreaders        1x4

        """;

    private readonly TryYard _yard = new();

    public WallDrawCommandTests()
    {
        _yard.Must("stage", "new", "walls");
        var sheet = Path.Combine(_yard.Folder, "garage.txt");
        File.WriteAllText(sheet, Garage);
        _yard.Must("wall", "import", "walls", sheet);
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Every_row_of_every_leg_is_drawn_and_the_cautions_stand_below()
    {
        var drawn = _yard.Must("wall", "draw", "garage", "--ascii").Lines;

        string.Join(' ', drawn).Split("seen from").Should().HaveCount(1 + 16, "four legs with two faces each, and the two sides of the footing of each");
        drawn.Should().OnlyContain(line => line.Length <= 80 && line.All(char.IsAscii));
        drawn.Should().Contain(line => line.Contains("| hatch |"));
        drawn[^1].Should().Be("Local code and licensed practice decide.");
    }

    [Fact]
    public void The_outside_is_seen_with_the_legs_start_at_the_left_and_the_inside_with_it_at_the_right_where_the_outside_is_at_the_right_hand()
    {
        var drawn = string.Join(' ', _yard.Must("wall", "draw", "garage", "--leg", "a", "--width", "200").Lines);

        drawn.Should().Contain("A outside: foam 2-1/2x12, 28' long, 2 courses of 1'; seen from outside, the leg's start at the left");
        drawn.Should().Contain("A inside: foam 2-1/2x12, 26' 7\" long, 2 courses of 1'; seen from inside, the leg's start at the right");
        drawn.Should().NotContain("B outside");
    }

    [Fact]
    public void It_is_written_to_scale_as_a_pdf()
    {
        var file = Path.Combine(_yard.Folder, "garage.pdf");

        _yard.Must("wall", "draw", "garage", "--pdf", file).Out.Should().Be($"Wrote {file}\n");

        File.ReadAllBytes(file).AsSpan(0, 5).ToArray().Should().Equal("%PDF-"u8.ToArray());
    }

    [Fact]
    public void A_leg_that_is_not_there_and_a_width_without_room_are_refused_in_one_line()
    {
        _yard.Run("wall", "draw", "garage", "--leg", "Z").Error.Should().Be("the wall garage has no leg Z\n");
        _yard.Run("wall", "draw", "shed").Error.Should().Be("there is no wall named shed; there is: garage\n");
        _yard.Run("wall", "draw", "garage", "--width", "10").Error.Should().Contain("a drawing is 40 to 400 columns wide");
    }
}
