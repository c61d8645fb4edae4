using System.Text.Json;

namespace Offcuts.Tests.Commands;

/// <summary>Lists for scripts. The yard is invented.</summary>
public sealed class ListJsonTests : IDisposable
{
    private readonly TryYard _yard = new();

    public ListJsonTests()
    {
        _yard.Must("add", "2x4 8' @rack");
        _yard.Must("price", "set", "2x4 8' 4.25 lead 3 from the mill");
        _yard.Must("price", "set", "--new", "panel tie 0.62");
        _yard.Must("stage", "new", "walls", "--date", "2026-07-01");
        _yard.Must("stage", "need", "walls", "block: 2x4 30 x5");
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Stages_tell_what_they_need_and_lack()
    {
        _yard.Must("reserve", "walls", YardCommandTests.Code(_yard, 0, "list"));

        Rows("stages", "stage", "list").Should().Equal("""{"name":"walls","date":"2026-07-01","needs":5,"lacks":5,"reserved":1}""");
    }

    [Fact]
    public void Prices_tell_lengths_in_millimetres_and_money_in_cents() => Rows("prices", "price", "list").Should().Equal(
        """{"material":"2x4","length_mm":2438.4,"price_cents":425,"treated":false,"limit":null,"lead_days":3,"supplier":"the mill","seen":"2026-06-01","old":false}""",
        """{"material":"panel tie","length_mm":null,"price_cents":62,"treated":false,"limit":null,"lead_days":null,"supplier":"","seen":"2026-06-01","old":false}""");

    [Fact]
    public void Plans_tell_how_far_they_have_come()
    {
        Rows("plans", "plans").Should().BeEmpty();
        _yard.Must("plan", "--save");

        // 3 blocks of 30 in from the 8 ft board in the yard, 2 from a bought one.
        Rows("plans", "plans").Should().Equal(
            """{"plan":1,"made":"2026-06-01","stages":["walls"],"open":true,"pieces":2,"waiting":2,"cut":0,"given_up":0,"unfilled":0,"spend_cents":425,"to_buy_cents":425,"buys":true,"status":"proven"}""");
    }

    [Fact]
    public void Labels_tell_what_they_will_say_and_which_codes_are_blank()
    {
        _yard.Must("label", "blank", "1", Path.Combine(_yard.Folder, "b.pdf"));
        var code = YardCommandTests.Code(_yard, 0, "list").Replace(" ", "");

        Rows("labels", "label", "list").Should().Equal($$"""{"code":"{{code}}","material":"2x4","length_mm":2438.4,"place":"rack"}""");
        Rows("blanks", "label", "list").Should().ContainSingle().Which.Should().MatchRegex("^\"[0-9A-Z*]{7}\"$");
    }

    [Fact]
    public void History_tells_what_was_taken_back()
    {
        _yard.Must("undo");

        Rows("entries", "history", "--most", "2").Should().Equal(
            """{"number":6,"at":"2026-06-01T12:00:00.0000000+00:00","what":"took back: added 1 need to walls","undoes":5,"taken_back":false}""",
            """{"number":5,"at":"2026-06-01T12:00:00.0000000+00:00","what":"added 1 need to walls","undoes":null,"taken_back":true}""");
    }

    // Each row of the list of that name, in one line.
    private string[] Rows(string list, params string[] command)
    {
        using var json = JsonDocument.Parse(_yard.Must([.. command, "--json"]).Out);
        json.RootElement.GetProperty("schema").GetInt32().Should().Be(1);
        return [.. json.RootElement.GetProperty(list).EnumerateArray().Select(row => JsonSerializer.Serialize(row, new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))];
    }
}
