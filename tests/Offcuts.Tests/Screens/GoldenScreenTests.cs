using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>Each place as a person sees it, at the smallest usual size and at a larger one.</summary>
[Collection(OnScreen.Name)]
public sealed class GoldenScreenTests
{
    public static TheoryData<int, int> Sizes => new() { { 80, 24 }, { 120, 40 } };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_yard(int width, int height) => Check("yard", width, height, run => run.Press("Down", "Down", "Down"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Some_of_the_yard_marked(int width, int height) => Check("yard-marked", width, height, run => run.Press("Ctrl+O").Type("l").Press("Tab", "Down", "Tab", "Tab"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Where_what_is_marked_is_put(int width, int height) => Check("yard-put", width, height, run => run.Press("Tab", "Tab", "Ctrl+T").Type("s"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_piece_alone(int width, int height) => Check("piece", width, height, run => run.Scan(KnownYard.Codes[3]));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_catalogue_line(int width, int height) => Check("strip", width, height, run => run.Press("F3").Type("2x6 9'2, 8' x2 nails @by the gate"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_question(int width, int height) => Check("question", width, height, run => run.Press("Ctrl+R"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_stages(int width, int height) => Check("stages", width, height, run => run.Press("F4", "Tab", "Down").Type("cleat: 2x4 14 x6 rough"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_plan_that_was_found(int width, int height) => Check("plan-found", width, height, run => run.Press("F4", "Ctrl+R"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_kept_plan_at_its_end(int width, int height) => Check("plan-end", width, height, run => run.Press("F4", "Ctrl+R", "Ctrl+K", "Ctrl+End"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_plan_by_the_places_where_its_pieces_lie(int width, int height) => Check("plan-places", width, height, run => run.Press("F4", "Ctrl+R", "Ctrl+D"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_plan_by_its_cuts(int width, int height) => Check("plan-cuts", width, height, run => run.Press("F4", "Ctrl+R", "Ctrl+D", "Ctrl+D"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_saved_line_that_is_corrected(int width, int height) => Check("strip-correct", width, height, run => run.Press("F3").Type($"{KnownYard.Codes[20]} 2x6 9'2 nails @by the gate").Press("Enter").Type($"{KnownYard.Codes[21]} 2x6 8'").Press("Enter", "Ctrl+E", "Up"));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_help(int width, int height) => Check("help", width, height, run => run.Press("F5", "F1"));

    private static void Check(string name, int width, int height, Action<ScreenRun> keys) => ScreenRun.OnKnownYard(width, height, run =>
    {
        keys(run);
        run.Lines.Should().OnlyContain(line => Print.TextColumns.Width(line) <= width);
        Golden.Check($"{name}-{width}x{height}", run.Text);
    });
}
