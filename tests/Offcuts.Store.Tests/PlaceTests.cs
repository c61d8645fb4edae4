using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

/// <summary>Places with labels, bundles, labels that are void, and what printers are off by.</summary>
public sealed class PlaceTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public PlaceTests() => _yard = Yards.Open(_folder["yard.offcuts"]);

    [Fact]
    public void A_place_gets_one_label_and_keeps_it_and_the_day_it_was_counted()
    {
        Code first = default, again = default;
        _yard.Do(change => first = change.LabelPlace("north rack"));
        _yard.Do(change => again = change.LabelPlace("North Rack"));
        _yard.Do(change => change.PlaceCounted("north rack", new DateOnly(2026, 11, 25)));

        again.Should().Be(first);
        _yard.Places().Should().Equal(new YardPlace("north rack", first, new DateOnly(2026, 11, 25)));
        _yard.Undo();
        _yard.Undo();
        _yard.Undo();
        _yard.Places().Should().BeEmpty();
        _yard.NewCode().Should().NotBe(first);
    }

    [Fact]
    public void A_place_may_be_counted_without_a_label()
    {
        _yard.Do(change => change.PlaceCounted("barn", new DateOnly(2026, 11, 20)));

        _yard.Places().Should().Equal(new YardPlace("barn", default, new DateOnly(2026, 11, 20)));
    }

    [Fact]
    public void A_void_blank_is_never_taken()
    {
        Code blank = default;
        _yard.Do(change => blank = change.IssueBlanks(1)[0]);
        _yard.Do(change => change.VoidLabel(blank));

        _yard.BlankCodes().Should().BeEmpty();
        _yard.VoidCodes().Should().Equal(blank);
        _yard.Refusals(change => change.Add(Yards.Board(1) with { Code = blank })).Should().Equal($"the label {blank} is void: take it off and use another");
        _yard.Refusals(change => change.QueueLabels([blank])).Should().Equal($"the label {blank} is void: take it off and use another");
        _yard.Refusals(change => change.VoidLabel(blank)).Should().Equal($"the label {blank} is void already");
        _yard.Undo();
        _yard.BlankCodes().Should().Equal(blank);
    }

    [Fact]
    public void A_place_whose_label_is_void_gets_another()
    {
        Code first = default, second = default;
        _yard.Do(change => change.QueueLabels([first = change.LabelPlace("bay 3")]));
        _yard.Do(change => change.VoidLabel(first));
        _yard.Places()[0].Code.IsNone.Should().BeTrue();
        _yard.LabelQueue().Should().BeEmpty();

        _yard.Do(change => second = change.LabelPlace("bay 3"));

        second.Should().NotBe(first);
        _yard.Refusals(change => change.Put(new Bin(second, Yards.Hardware("bolt"), 1))).Should().Equal($"{second} is the label of a place");
    }

    [Fact]
    public void The_code_of_a_piece_a_bin_or_a_bundle_stays_with_it()
    {
        _yard.Do(change => change.Add(Yards.Board(1)));

        _yard.Refusals(change => change.VoidLabel(Yards.CodeNumber(1))).Should().Equal($"{Yards.CodeNumber(1)} belongs to a piece, and a code stays with it; print its label again: offcuts label print FILE --code \"{Yards.CodeNumber(1)}\"");
        _yard.Refusals(change => change.VoidLabel(Yards.CodeNumber(2))).Should().Equal($"no label of this yard has the code {Yards.CodeNumber(2)}");
    }

    [Fact]
    public void A_bundle_moves_as_one_and_is_opened_into_its_pieces()
    {
        Boards(3);
        Code label = default;
        _yard.Do(change => label = change.AddBundle("studs", "rack", [Yards.CodeNumber(1), Yards.CodeNumber(2), Yards.CodeNumber(3)]));
        _yard.Pieces().Should().OnlyContain(piece => piece.Place == "rack");

        _yard.Do(change => change.MoveBundle(label, "trailer"));
        _yard.Pieces().Should().OnlyContain(piece => piece.Place == "trailer");
        _yard.Bundles().Should().ContainSingle().Which.Should().BeEquivalentTo(new Bundle(label, "studs", "trailer", [Yards.CodeNumber(1), Yards.CodeNumber(2), Yards.CodeNumber(3)], null));

        _yard.Do(change => change.OpenBundle(label));
        _yard.Bundles()[0].Should().BeEquivalentTo(new Bundle(label, "studs", "trailer", [], new DateOnly(2026, 11, 25)));
        _yard.Refusals(change => change.OpenBundle(label)).Should().Equal($"the bundle {label} was opened already");
        _yard.Undo();
        _yard.Bundles()[0].Pieces.Should().HaveCount(3);
    }

    [Fact]
    public void A_piece_that_leaves_or_is_put_elsewhere_leaves_its_bundle_and_the_last_one_opens_it()
    {
        Boards(3);
        _yard.Do(change => change.AddBundle("", "rack", [Yards.CodeNumber(1), Yards.CodeNumber(2)]));

        _yard.Do(change => change.Update(_yard.Piece(Yards.CodeNumber(1))! with { State = PieceState.Used }));
        _yard.Bundles()[0].Pieces.Should().Equal(Yards.CodeNumber(2));
        _yard.Do(change => change.Update(_yard.Piece(Yards.CodeNumber(2))! with { Note = "bowed" }));
        _yard.Bundles()[0].Pieces.Should().Equal([Yards.CodeNumber(2)], "what else is said of it does not move it");

        _yard.Do(change => change.Update(_yard.Piece(Yards.CodeNumber(2))! with { Place = "shed" }));
        _yard.Bundles()[0].IsWhole.Should().BeFalse();
    }

    [Fact]
    public void A_bundle_is_made_of_two_pieces_or_more_that_are_here_and_in_no_other()
    {
        Boards(3);
        _yard.Do(change => change.Update(Yards.Board(3) with { State = PieceState.Scrapped }));
        Code label = default;
        _yard.Do(change => label = change.AddBundle("", "", [Yards.CodeNumber(1), Yards.CodeNumber(2)]));

        _yard.Refusals(change => change.AddBundle("", "", [Yards.CodeNumber(1)])).Should().Equal("a bundle has 2 pieces or more", $"{Yards.CodeNumber(1)} is in the bundle {label} already");
        _yard.Refusals(change => change.AddBundle("", "", [Yards.CodeNumber(3), Yards.CodeNumber(4)])).Should().Equal($"{Yards.CodeNumber(3)}: this piece is not in the yard", $"no piece or bin has the code {Yards.CodeNumber(4)}");
        _yard.Refusals(change => change.MoveBundle(Yards.CodeNumber(1), "shed")).Should().Equal($"no bundle has the code {Yards.CodeNumber(1)}; see: offcuts bundle list");
    }

    [Fact]
    public void What_a_printer_is_off_by_is_kept_by_its_name()
    {
        _yard.Do(change => change.SetPrinter(new PrinterOffset("kitchen", 480, -320)));
        _yard.Do(change => change.SetPrinter(new PrinterOffset("Kitchen", 0, 640)));

        _yard.Printers().Should().Equal(new PrinterOffset("Kitchen", 0, 640));
        _yard.Refusals(change => change.SetPrinter(new PrinterOffset("shed", 6401, 0))).Should().Equal("a printer is off by at most 20 mm; more than that is another sheet or tray");
        _yard.Refusals(change => change.RemovePrinter("barn")).Should().Equal("nothing is kept of a printer named barn; there is: Kitchen");
        _yard.Do(change => change.RemovePrinter("kitchen"));
        _yard.Printers().Should().BeEmpty();
    }

    [Fact]
    public void Labels_that_were_printed_and_never_used_are_known_with_the_moment()
    {
        IReadOnlyList<Code> blanks = [];
        _yard.Do(change => blanks = change.IssueBlanks(2));
        _yard.Do(change => change.Add(Yards.Board(1) with { Code = blanks[0] }));

        _yard.UnusedLabels().Should().Equal(new UnusedLabel(blanks[1], Yards.Clock.Now));
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    private void Boards(int count) => _yard.Do(change =>
    {
        for (var i = 1; i <= count; i++) change.Add(Yards.Board(i));
    });
}
