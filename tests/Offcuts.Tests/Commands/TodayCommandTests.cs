using System.Text.Json;

namespace Offcuts.Tests.Commands;

public sealed class TodayCommandTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void It_tells_what_matters_with_the_command_that_deals_with_it()
    {
        _yard.Must("add", "2x4 8' nails @gate");
        _yard.Must("stage", "new", "stem wall", "--date", "2026-06-15");
        _yard.Must("stage", "need", "stem wall", "stud: 2x4 7' x2");
        _yard.Must("price", "set", "2x4 8' 3.98 lead 20");
        _yard.Must("plan", "--save");
        var code = _yard.Must("list").Lines[1][..8];

        _yard.Must("today").Lines.Should().Equal(
            "Monday 2026-06-01",
            "! 6 days late  was to be ordered by 2026-05-26: 1 of 2x4 8'",
            "                 1 of 2x4 8': $3.98 without tax, 20 days from order to delivery, needed by 2026-06-15 (plan 1)",
            "               offcuts sheet 1",
            "in 14 days     stem wall: 2 of 2 still to make, all of it planned; begins 2026-06-15",
            "                 stud: 2 of 2, 2x4 7'; planned",
            "               offcuts stage show \"stem wall\"",
            "in 14 days     plan 1 for stem wall: 2 of 2 pieces to cut",
            "                 to fetch: 1 piece at gate",
            "               offcuts sheet 1",
            "now            1 label waits to be printed",
            $"                 {code}",
            "               offcuts label print labels.pdf",
            "mind           1 piece still has nails in: 1 at gate",
            $"                 {code}",
            "                 Pull every nail before stacking. Stack on level, solid sills. Keep scrap with nails in it out of walkways. By hand, no pile higher than 16 ft. [29 CFR 1926.250(b)(8), 1926.25(a)]",
            "               offcuts list nails",
            "done last      kept a plan for stem wall (2026-06-01 12:00); can be taken back",
            "               offcuts undo");
    }

    [Fact]
    public void A_script_gets_it_as_json()
    {
        _yard.Must("add", "2x4 8' @gate");
        _yard.Must("stage", "new", "walls", "--date", "2026-05-31");

        using var json = JsonDocument.Parse(_yard.Must("today", "--json").Out);

        var root = json.RootElement;
        root.GetProperty("schema").GetInt32().Should().Be(1);
        root.GetProperty("day").GetString().Should().Be("2026-06-01");
        var stage = root.GetProperty("matters").EnumerateArray().Single(matter => matter.GetProperty("kind").GetString() == "stage");
        stage.GetProperty("when").GetString().Should().Be("1 day ago");
        stage.GetProperty("day").GetString().Should().Be("2026-05-31");
        stage.GetProperty("subject").GetString().Should().Be("walls");
        stage.GetProperty("plan").ValueKind.Should().Be(JsonValueKind.Null);
        stage.GetProperty("command").GetString().Should().Be("offcuts stage show walls");
    }

    [Fact]
    public void Foam_that_lies_open_is_told_until_its_place_is_said_to_be_under_cover()
    {
        _yard.Must("add", "foam 2-1/2x12 4' @slab");
        _yard.Must("today").Out.Should().NotContain("foam panel");

        _yard.Clock.Pass(TimeSpan.FromDays(60));
        _yard.Must("today").Out.Should().Contain("1 foam panel at slab for up to 60 days: out of the sun?").And.Contain("offcuts list foam slab");

        _yard.Must("settings", "foam", "61").Out.Should().Be("Set foam 61\n");
        _yard.Must("today").Out.Should().NotContain("foam panel");

        _yard.Must("settings", "foam", "14", "days");
        _yard.Must("today").Out.Should().Contain("1 foam panel at slab");
        _yard.Must("settings", "cover", "@Slab");
        _yard.Must("settings").Lines.Should().Contain("foam 14").And.Contain("cover Slab");
        _yard.Must("today").Out.Should().NotContain("foam panel");

        _yard.Must("settings", "open", "slab");
        _yard.Must("today").Out.Should().Contain("1 foam panel at slab");
    }

    [Theory]
    [InlineData("write after how many days in the sun foam is pointed at, like: foam 60; from 0, which is never, to 3650", "foam", "soon")]
    [InlineData("write after how many days in the sun foam is pointed at, like: foam 60; from 0, which is never, to 3650", "foam", "3651")]
    [InlineData("name a place where the sun does not come, like: cover the barn; to take that back: open the barn", "cover")]
    [InlineData("name a place where the sun does not come, like: cover the barn; to take that back: open the barn", "open", "@")]
    [InlineData("\"the barn\" is not among the places under cover; there is none", "open", "the", "barn")]
    [InlineData("the name of a place has at most 60 characters and none that steers a terminal", "cover", "a123456789b123456789c123456789d123456789e123456789f123456789x")]
    [InlineData("\"sun\" can't be set; there are unit, currency, tax, species, kerf, keep, keep-back, use, foam, cover and open", "sun", "3")]
    public void What_can_not_be_set_is_refused_with_a_sentence(string sentence, params string[] words)
    {
        var told = _yard.Run(["settings", .. words]);
        told.Status.Should().Be(2);
        told.Error.Should().Be(sentence + "\n");
    }

    [Fact]
    public void Of_a_yard_without_anything_it_says_what_to_do_first()
    {
        var lines = _yard.Run("today");
        lines.Status.Should().Be(2, "a yard that was named and is not there is refused");
        _yard.Must("settings", "unit", "in");

        _yard.Must("today").Lines.Should().Contain("first          Catalogue what you have: one line for each batch that comes off a form");
    }
}
