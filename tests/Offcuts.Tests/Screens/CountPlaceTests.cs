using Offcuts.Core.Yard;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>Counting the yard on the screen. Pictures are read as for the command; here a scanner's file stands for them.</summary>
[Collection(OnScreen.Name)]
public sealed class CountPlaceTests
{
    public static TheoryData<int, int> Sizes => GoldenScreenTests.Sizes;

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_places_not_counted_for_longest_come_first(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
        Golden.Check($"count-places-{width}x{height}", run.Press("F11").Text));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_a_count_says(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
    {
        var (here, there) = Places(run);
        File(run, "scanned.txt", $"@{here.Place}\n{here.Code}\n{there.Code}\n");
        run.Press("F11").Type("scanned.txt".Insert(0, run.Folder.Folder + "/")).Press("Enter");

        Golden.Check($"count-{width}x{height}", run.Text.Replace(run.Folder.Folder, "FOLDER", StringComparison.Ordinal));
    });

    [Fact]
    public void Labels_are_looked_at_printed_again_and_made_void_and_a_bundle_is_opened() => ScreenRun.On(120, 40, run =>
    {
        run.Press("F11", "Tab");
        var labels = run.Shell.State.Count.Labels;
        labels.Select(label => label.Kind).Should().Equal(LabelKind.Waits, LabelKind.Bundle, LabelKind.Blank, LabelKind.Blank, LabelKind.Place);
        run.Text.Should().Contain("1 label to print, 2 blanks, 1 bundle");

        run.Press("Enter");
        run.Text.Should().Contain($"{labels[0].Code} on letter-10, to scale").And.Contain("┌").And.Contain("│");
        run.Press("Tab");
        run.Text.Should().NotContain("on letter-10, to scale").And.Contain($"{labels[0].Code} on ");
        run.Press("Esc", "Down", "Ctrl+O", "y");
        run.Yard.Bundles().Single().IsWhole.Should().BeFalse();
        run.Yard.LabelQueue().Should().HaveCount(2, "the labels of its pieces wait, and its own no more");

        run.Press("Ctrl+Home");
        while (run.Shell.State.Count.Label!.Kind != LabelKind.Blank) run.Press("Down");
        var spoiled = run.Shell.State.Count.Label.Code;
        run.Press("Ctrl+D");
        run.Text.Should().Contain($"Make the label {spoiled} void?");
        run.Press("y");
        run.Yard.VoidCodes().Should().Equal(spoiled);
        run.Press("Ctrl+Z");
        run.Yard.VoidCodes().Should().BeEmpty();

        run.Press("Ctrl+End", "Ctrl+L");
        run.Yard.LabelQueue().Should().HaveCount(3, "the place's label is printed again");
    }, yard =>
    {
        var catalogue = new UseCases.CataloguePieces(yard);
        var saved = catalogue.Save(catalogue.Read(["2x4 8', 8', 6' @barn"]).Value).Value;
        yard.Change("printed them", work => work.LabelsPrinted([.. saved.Pieces.Select(piece => piece.Code)])).Ok.Should().BeTrue();
        var labels = new UseCases.ChangeLabels(yard);
        labels.LabelPlaces(["barn"]).Ok.Should().BeTrue();
        yard.Change("printed it", work => work.LabelsPrinted(yard.LabelQueue())).Ok.Should().BeTrue();
        labels.Strap([saved.Pieces[0].Code, saved.Pieces[1].Code], "studs", null).Ok.Should().BeTrue();
        yard.Change("blanks", work => work.IssueBlanks(2)).Ok.Should().BeTrue();
    }, at: Place.Count);

    [Fact]
    public void A_label_far_down_is_looked_at_from_its_top_and_stays_chosen() => ScreenRun.On(80, 24, run =>
    {
        run.Press("F11", "Tab", "Ctrl+End");
        var (chosen, label) = (run.Shell.State.Count.Chosen, run.Shell.State.Count.Label!);
        chosen.Should().Be(39);
        run.Press("Enter");
        run.Text.Should().Contain($"{label.Code} on letter-10, to scale").And.Contain("┌");
        run.Press("Down").Text.Should().NotContain("┌", "it was scrolled by a line");
        run.Press("Up").Text.Should().Contain("┌");
        run.Press("Esc");
        run.Shell.State.Count.Chosen.Should().Be(chosen);
        run.Shell.State.Count.Label!.Code.Should().Be(label.Code);
    }, yard => yard.Change("blanks", work => work.IssueBlanks(40)).Ok.Should().BeTrue(), at: Place.Count);

    [Fact]
    public void A_count_is_read_accepted_and_taken_back_with_keys_alone() => ScreenRun.OnKnownYard(80, 24, run =>
    {
        var (here, there) = Places(run);
        File(run, "scanned.txt", $"{here.Code}\n{there.Code}\n");
        var before = run.Yard.Pieces(onHandOnly: false);

        run.Press("F11").Type($"{run.Folder.Folder}/scanned.txt @{here.Place}").Press("Enter");
        run.Shell.State.Count.Counted!.Moved.Should().ContainSingle().Which.Piece.Code.Should().Be(there.Code);
        run.Shell.State.Count.Counted!.Missing.Should().NotBeEmpty();

        run.Press("Ctrl+T");
        run.Shell.State.Count.Counted!.Missing.Should().BeEmpty("no place was counted whole");

        run.Press("Ctrl+K");
        run.Text.Should().Contain("Accept the count? 1 put where it was seen, 1 place counted today");
        run.Press("y");
        run.Yard.Piece(there.Code)!.Place.Should().Be(here.Place);
        run.Shell.State.Count.Counted.Should().BeNull();
        run.Yard.Places().Should().ContainSingle().Which.CountedOn.Should().Be(new DateOnly(2026, 6, 1));

        run.Press("Ctrl+Z");
        run.Yard.Pieces(onHandOnly: false).Select(piece => piece.Place).Should().Equal(before.Select(piece => piece.Place));
        run.Yard.Places().Should().BeEmpty();
    });

    [Fact]
    public void Leaving_asks_while_a_count_is_not_accepted_and_it_can_be_let_go() => ScreenRun.OnKnownYard(80, 24, run =>
    {
        File(run, "scanned.txt", Places(run).Here.Code.ToString());
        run.Press("F11").Type($"{run.Folder.Folder}/scanned.txt").Press("Enter", "Ctrl+Q");
        run.Text.Should().Contain("Leave all the same? The count is not accepted");
        run.Press("Esc", "Ctrl+X");
        run.Text.Should().Contain("the count is let go; nothing was changed by it");
        run.Press("Ctrl+Q");
        run.HasLeft.Should().BeTrue();
    });

    [Fact]
    public void What_can_not_be_read_is_said_and_the_line_stays() => ScreenRun.OnKnownYard(80, 24, run =>
    {
        Directory.CreateDirectory(Path.Combine(run.Folder.Folder, "empty"));
        run.Press("F11").Type($"{run.Folder.Folder}/empty").Press("Enter");

        run.Text.Should().Contain("there is no picture and no scanner's file among these");
        run.Lines[2].Should().EndWith("/empty");
        run.Shell.State.Count.Reading.Should().BeNull();
    });

    [Fact]
    public void Enter_on_a_place_begins_a_line_for_it_and_its_label_is_queued() => ScreenRun.OnKnownYard(80, 24, run =>
    {
        run.Press("F11");
        var place = run.Shell.State.Count.Place!.Name;
        run.Press("Enter");
        run.Shell.State.Count.Line.Text.Should().Be($" @{place}");

        run.Press("Ctrl+L");
        run.Yard.Places().Should().ContainSingle().Which.Name.Should().Be(place);
        run.Yard.LabelQueue().Should().Contain(run.Yard.Places()[0].Code);
    });

    [Theory]
    [InlineData("~/photos @north rack", "~/photos", "north rack")]
    [InlineData("photos", "photos", "")]
    [InlineData("a @ home/x.txt @shed", "a @ home/x.txt", "shed")]
    [InlineData(" @shed", "", "shed")]
    public void A_line_names_a_path_and_a_place(string line, string path, string at) => CountModel.Read(line).Should().Be((path, at));

    private static ((Code Code, string Place) Here, (Code Code, string Place) There) Places(ScreenRun run)
    {
        var pieces = run.Yard.Pieces().Where(piece => piece.Place.Length > 0).ToArray();
        var here = pieces[0];
        var there = pieces.First(piece => piece.Place != here.Place);
        return ((here.Code, here.Place), (there.Code, there.Place));
    }

    private static void File(ScreenRun run, string name, string text) => run.Folder.FileOf(name, text);
}
