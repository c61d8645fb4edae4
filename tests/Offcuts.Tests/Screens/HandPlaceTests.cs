using Offcuts.Core.HandOvers;
using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.Store;

namespace Offcuts.Tests.Screens;

/// <summary>Handing over on the screen: what is free, loads, what went. Yards and beds are invented.</summary>
[Collection(OnScreen.Name)]
public sealed class HandPlaceTests
{
    public static TheoryData<int, int> Sizes => new() { { 80, 24 }, { 120, 40 } };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_is_free(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
        Golden.Check($"hand-free-{width}x{height}", run.Press("F12", "Ctrl+R", "Enter", "Down").Text));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Loads_of_what_is_marked(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
        Golden.Check($"hand-loads-{width}x{height}", run.Press("F12", "Ctrl+R", "Ctrl+W", "Ctrl+B").Type("trailer: 12' 60 lb").Press("Enter", "Ctrl+R", "Ctrl+L").Text));

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_went(int width, int height) => ScreenRun.OnKnownYard(width, height, run =>
        Golden.Check($"hand-gone-{width}x{height}", run.Press("F12", "Ctrl+R", "Ctrl+W", "Ctrl+K", "l").Type("Ann until 2026-05-20").Press("Enter", "Enter").Text));

    // From an empty yard to the piece in the relative's yard, by keys alone.
    [Fact]
    public void What_can_go_to_a_relatives_build_is_reviewed_loaded_handed_over_and_confirmed()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8', 8', 12' @barn").Press("Enter");
            run.Press("F8").Type("2x4 8' 4.00").Press("Enter");
            run.Press("F4", "Ctrl+K").Type("walls").Press("Enter", "Enter");
            run.Yard.Stages().Single().Name.Should().Be("walls");
            run.Type("post: 2x4 90").Press("Enter");
            run.Yard.Stages().Single().Cuts.Should().ContainSingle();

            run.Press("F12");
            run.Text.Should().Contain("^R looks what no stage of yours needs");
            run.Press("Ctrl+R");
            run.Lines[3].Should().Be("Free to go, all of it together: 2 pieces of 3; worth $10.00 to you");
            run.Lines[4].Should().StartWith("Proven: without them your stages get no worse");
            run.Text.Should().Contain("needed: post (walls)");

            run.Press("Ctrl+End", "Enter");
            run.Text.Should().Contain("stays: needed: post (walls)", "what is needed is not marked");
            run.Press("Ctrl+W");
            run.Text.Should().Contain("marked: 2 pieces");

            run.Press("Ctrl+L");
            run.Text.Should().Contain("Describe a bed or trailer");
            run.Type("trailer: 10' 1200 lb").Press("Enter");
            run.Text.Should().Contain("The yard has changed since this was looked up");
            run.Press("Ctrl+R", "Ctrl+L");
            run.Text.Should().Contain("Load 1 on trailer: 8.5 lb of 1200.0 lb, in this order").And.Contain("12': longer than any bed takes").And.Contain("driving a load: Tie every load down");

            run.Press("Ctrl+K");
            run.Text.Should().Contain("Hand 2 pieces over: as what?").And.Contain("g gift").And.Contain("l loan").And.Contain("s sale");
            var file = Path.Combine(run.Folder.Folder, "ann");
            run.Press("l").Type("Ann till 30 Sep").Press("Enter");
            run.Text.Should().Contain("\"30 Sep\" is no day; write it like 2026-05-31", "a day in words is no part of her name");
            run.Press("Ctrl+U").Type("Ann until 2026-09-31").Press("Enter");
            run.Text.Should().Contain("\"2026-09-31\" is no day; write it like 2026-05-31");
            run.Press("Backspace").Type("0").Press("Enter").Type(file).Press("Enter");
            run.Yard.HandOvers().Single().Terms.Should().Be(new Terms("Ann", HandOverKind.Loan, DueOn: new DateOnly(2026, 9, 30)));
            run.Text.Should().Contain("lent until 2026-09-30 to Ann: 2 things worth $10.00").And.Contain("of 2 due back");

            using var theirs = new TryYard();
            var receipt = theirs.Must("hand", "take-in", file + ".offcuts-hand").Lines[^1].Split(": ")[^1];
            run.Press("Ctrl+E").Type("R-222-2222").Press("Enter");
            run.Yard.HandOvers().Single().ConfirmedOn.Should().BeNull();
            run.Press("Ctrl+U").Type(receipt).Press("Enter");
            run.Yard.HandOvers().Single().ConfirmedOn.Should().Be(new DateOnly(2026, 6, 1));
            run.Press("Ctrl+Z");
            run.Text.Should().Contain("hand-over 1 is confirmed by Ann");

            run.Press("Ctrl+T", "y");
            run.Yard.Pieces().Should().HaveCount(3, "the loan is back");
            run.Text.Should().Contain("all back");
        });
    }

    [Fact]
    public void A_gift_goes_without_a_file_and_undo_takes_it_back()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var before = run.Yard.Pieces().Count;
            run.Press("F12", "Ctrl+R", "Enter", "Ctrl+K", "g").Type("Bo").Press("Enter", "Enter");
            run.Yard.HandOvers().Single().Terms.Kind.Should().Be(HandOverKind.Gift);
            run.Yard.Pieces().Should().HaveCount(before - 1);

            run.Press("Ctrl+Z");
            run.Yard.HandOvers().Should().BeEmpty();
            run.Yard.Pieces().Should().HaveCount(before);
        });
    }

    [Fact]
    public void How_far_the_looking_is_stands_beside_what_is_looked_for()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F12");
            run.Hands.Holding = true;
            run.Press("Ctrl+R").Lines[3].Should().StartWith("Looking what is free …");
            var progress = new Matching.MatchProgress("3 of 12 pieces tried without", new(0, 0), new(0, 0), new(0, 0));
            ShellRows.Reading(ShellModel.Hear(run.Shell.State, new News.Matching(progress)).State, 80)[0].Text.Should().StartWith("Looking what is free: 3 of 12 pieces tried without …");
        });
    }

    [Fact]
    public void A_sale_asks_for_its_price()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F12", "Ctrl+R", "Enter", "Ctrl+K", "s").Type("Bo").Press("Enter");
            run.Text.Should().Contain("say for how much too, like: Ann for 25");
            run.Type(" for 12.50").Press("Enter", "Enter");
            run.Yard.HandOvers().Single().Terms.Price.Should().Be(new Core.Measures.Money(1250));
        });
    }

    [Fact]
    public void Words_narrow_what_is_shown_and_what_is_marked_stays_so()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F12", "Ctrl+R", "Enter");
            var marked = run.Shell.State.Hand.Marked.Single();
            run.Type("nothing like this");
            run.Shell.State.Hand.Shown.Should().BeEmpty();
            run.Press("Esc", "Esc");
            run.Shell.State.Hand.Marked.Should().Equal(marked);
            run.Type("free");
            run.Shell.State.Hand.Shown.Should().NotBeEmpty().And.OnlyContain(entry => entry.MayGo);
        });
    }

    [Fact]
    public void A_bundles_code_shows_what_is_in_it_so_that_one_key_marks_it()
    {
        ScreenRun.On(80, 24, run =>
        {
            run.Press("F3").Type("2x4 8', 8', 12' @barn").Press("Enter");
            run.Press("F2").Type("8'").Press("Ctrl+W", "Ctrl+E", "b", "Enter");
            var bundle = run.Yard.Bundles().Single();

            run.Press("F12", "Ctrl+R", "Ctrl+K").Text.Should().Contain("mark first what is to go: Enter one, ^W all that is free");
            run.Type(bundle.Code.ToString()).Press("Ctrl+W");
            run.Shell.State.Hand.Marked.Should().BeEquivalentTo(bundle.Pieces).And.HaveCount(2);
        });
    }

    [Fact]
    public void Nothing_is_handed_over_that_was_looked_up_before_the_yard_changed()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F12", "Ctrl+R", "Enter");
            run.Folder.Must("add", "2x4 8'");
            run.Tick().Press("Ctrl+K");
            run.Text.Should().Contain("look again what is free: ^R");
            run.Yard.HandOvers().Should().BeEmpty();
        });
    }

    [Fact]
    public void An_answer_is_about_what_was_chosen_when_it_was_asked()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F12", "Ctrl+R", "Enter", "Ctrl+K", "g").Type("Bo").Press("Enter", "Enter");
            run.Press("Ctrl+E").Type("said");
            using (var other = Store.YardFile.Open(run.Folder.YardPath, run.Folder.Clock))
                other.Change("lent more", work => work.AddHandOver(Store.YardFile.NewTransfer(), new Terms("Cy", HandOverKind.Gift), new(0), 0, [new HandOverItem(other.Pieces()[0].Code)])).Ok.Should().BeTrue();
            run.Tick().Press("Ctrl+PageDown", "Down", "Enter");

            run.Yard.HandOvers().Select(one => (one.Terms.To, one.ConfirmedOn is not null)).Should().Equal(("Bo", true), ("Cy", false));
        });
    }

    [Fact]
    public void What_was_looked_up_waits_for_an_open_question_and_what_was_refused_stands_again()
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            run.Press("F12", "Ctrl+R", "Enter", "Ctrl+K", "l").Type("Bo").Press("Enter", "Enter");
            var code = run.Yard.HandOvers().Single().Items[0].Code;
            run.Hands.Holding = true;
            run.Press("Ctrl+R", "Ctrl+T", "s").Type($"{code}: 2x4 40'");
            run.Hands.Release();
            run.Shell.State.Hand.Page.Should().Be(HandPage.Gone, "the question is about what went");
            run.Press("Enter");
            run.Text.Should().Contain("Enter once more");
            run.Shell.State.Hand.Line.Text.Should().Be($"{code}: 2x4 40'");
            run.Press("Enter");

            run.Yard.HandOvers().Single().Items[0].Settled.Should().Be(1);
            run.Shell.State.Hand.Free.Should().NotBeNull();
        });
    }

    [Fact]
    public void A_loan_is_back_in_part_and_the_rest_is_settled()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F12", "Ctrl+R", "Ctrl+W", "Ctrl+K", "l").Type("Ann").Press("Enter", "Enter");
            var boards = run.Yard.HandOvers().Single().Items.Where(item => run.Yard.Piece(item.Code) is not null).Select(item => item.Code).ToArray();
            boards.Should().HaveCount(2);

            run.Press("Ctrl+T", "p").Type($"{boards[0]}, panel tie x30").Press("Enter");
            run.Yard.HandOvers().Single().Items.Sum(item => item.Back).Should().Be(31);
            run.Press("Ctrl+T", "s").Type($"{boards[1]}: 2x4 3' @barn").Press("Enter");
            run.Yard.Pieces().Should().HaveCount(2).And.ContainSingle(piece => piece.CutFrom == boards[1]);
            run.Press("Ctrl+T", "s").Type("panel tie x10").Press("Enter");
            run.Text.Should().Contain("a colon, then what came in its place or nothing");
            run.Press("Ctrl+U").Type("panel tie x10: nothing").Press("Enter");

            run.Text.Should().Contain("closed, 31 back and 11 settled");
            run.Yard.HandOvers().Single().IsOut.Should().BeFalse();
        }, Lendable);
    }

    [Fact]
    public void Their_needs_are_matched_what_serves_is_marked_and_its_list_written()
    {
        ScreenRun.On(120, 40, run =>
        {
            var cuts = run.Folder.FileOf("ann needs.csv", "stage,cut,material,length,qty\nshed,post,2x4,90\",1\n");
            run.Press("F12", "Ctrl+O").Type($"cuts {cuts} prices /no/such.csv").Press("Enter");
            run.Text.Should().Contain("/no/such.csv");
            run.Press("Ctrl+U").Type(cuts).Press("Enter");

            run.Shell.State.Hand.Page.Should().Be(HandPage.Theirs);
            run.Text.Should().Contain("With what they buy, everything of theirs is filled.").And.Contain("for post").And.Contain("marked: 1 piece");
            run.Press("Ctrl+D").Type(Path.Combine(run.Folder.Folder, "list.pdf")).Press("Enter");
            File.ReadAllText(Path.Combine(run.Folder.Folder, "list.pdf")).Should().StartWith("%PDF");
            run.Press("Ctrl+K", "g").Type("Ann").Press("Enter", "Enter");
            run.Yard.HandOvers().Single().Items.Should().ContainSingle();
            run.Press("Ctrl+D").Type(Path.Combine(run.Folder.Folder, "gone.pdf")).Press("Enter");
            File.Exists(Path.Combine(run.Folder.Folder, "gone.pdf")).Should().BeTrue();
        }, Lendable);
    }

    [Fact]
    public void What_nothing_tells_the_weight_of_is_weighed_by_word_and_loaded_then()
    {
        ScreenRun.On(120, 40, run =>
        {
            run.Press("F12", "Ctrl+B").Type("trailer: 12' 500 lb").Press("Enter", "Ctrl+R", "Ctrl+W", "Ctrl+L");
            run.Text.Should().Contain("! Not loaded:").And.Contain("weight not known");

            run.Press("Ctrl+X").Type("panel tie").Press("Enter");
            run.Text.Should().Contain("says no weight");
            run.Press("Ctrl+U").Type("panel tie 0.1 lb").Press("Enter", "Ctrl+L");

            run.Text.Should().NotContain("! Not loaded:").And.Contain("40 panel tie");
        }, Lendable);
    }

    // Two boards and ties that no stage needs.
    private static void Lendable(YardFile yard)
    {
        var lines = new UseCases.CataloguePieces(yard).Read(["2x4 8', 12' @barn", "panel tie x40 @shed"]);
        new UseCases.CataloguePieces(yard).Save(lines.Value, newNames: true).Ok.Should().BeTrue();
    }
}
