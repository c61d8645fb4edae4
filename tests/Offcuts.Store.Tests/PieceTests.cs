using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

public sealed class PieceTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly YardFile _yard;

    public PieceTests() => _yard = Yards.Open(_folder["yard.offcuts"]);

    [Fact]
    public void A_piece_comes_back_with_everything_that_was_said_of_it()
    {
        var parent = Yards.Board(1, "foam 2-1/2x12 II", 200);
        var piece = new Piece
        {
            Code = Yards.CodeNumber(2),
            Material = Yards.Material("foam 2-1/2x12 II"),
            Length = Yards.In(92.625m),
            Condition = Condition.Fair,
            BadSpots = [new Span(Yards.In(10), Yards.In(12.5m)), new Span(Yards.In(30), Yards.In(36))],
            TrimLeft = Yards.In(0.5m),
            TrimRight = Length.Millimetres(3.1m),
            Treated = true,
            TreatedWith = "copper azole",
            Stamped = true,
            Nails = true,
            Concrete = true,
            Oiled = true,
            Place = "Hütte, 2. Fach – überm Tor",
            FromStage = "Stützwand",
            CutFrom = parent.Code,
            FirstLine = Yards.In(4),
            Note = "châssis d’été ✓ 🪵",
            State = PieceState.Reserved,
            ReservedFor = "Türsturz",
        };

        _yard.Do(change =>
        {
            change.AddStage(new Stage("Türsturz", null, [], []));
            change.Add(parent);
            change.Add(piece);
        });

        _yard.Piece(piece.Code).Should().BeEquivalentTo(piece, options => options.WithStrictOrdering());
        _yard.Pieces().Select(known => known.Code).Should().Equal(parent.Code, piece.Code);
    }

    [Theory]
    [InlineData("2x4")]
    [InlineData("5/4x6")]
    [InlineData("#4")]
    [InlineData("foam 63.5mmx300mm")]
    [InlineData("foam 2-1/2x12 XIV")]
    [InlineData("Profilbrett genutet")]
    public void A_material_of_every_family_keeps_its_name(string name)
    {
        _yard.Do(change => change.Add(Yards.Board(1, name)));

        _yard.Pieces().Single().Material.Name.Should().Be(Yards.Material(name).Name);
        _yard.Pieces().Single().Material.Should().BeOfType(Yards.Material(name).GetType());
    }

    [Fact]
    public void A_sheet_keeps_its_second_side()
    {
        _yard.Do(change => change.Add(Yards.Board(1, "plywood 3/4") with { Width = Yards.In(48) }));

        _yard.Pieces().Single().Width.Should().Be(Yards.In(48));
    }

    [Theory]
    [InlineData(PieceState.Used)]
    [InlineData(PieceState.HandedOver)]
    [InlineData(PieceState.Scrapped)]
    [InlineData(PieceState.Missing)]
    public void A_piece_that_is_gone_keeps_its_row_but_is_not_on_hand(PieceState state)
    {
        _yard.Do(change => change.Add(Yards.Board(1)));

        _yard.Do(change => change.Update(Yards.Board(1) with { State = state }));

        _yard.Pieces().Should().BeEmpty();
        _yard.Pieces(onHandOnly: false).Single().State.Should().Be(state);
        _yard.Piece(Yards.CodeNumber(1))!.State.Should().Be(state);
    }

    [Fact]
    public void A_piece_that_is_not_reserved_is_reserved_for_nothing()
    {
        _yard.Do(change =>
        {
            change.AddStage(new Stage("walls", null, [], []));
            change.Add(Yards.Board(1) with { State = PieceState.Reserved, ReservedFor = "walls" });
        });

        _yard.Do(change => change.Update(_yard.Piece(Yards.CodeNumber(1))! with { State = PieceState.Used }));

        _yard.Piece(Yards.CodeNumber(1))!.ReservedFor.Should().Be("");
    }

    [Fact]
    public void Bad_spots_are_kept_in_order_and_joined_where_they_touch()
    {
        _yard.Do(change => change.Add(Yards.Board(1) with { BadSpots = [new Span(Yards.In(40), Yards.In(50)), new Span(Yards.In(10), Yards.In(20)), new Span(Yards.In(20), Yards.In(21))] }));

        _yard.Pieces().Single().BadSpots.Should().Equal(new Span(Yards.In(10), Yards.In(21)), new Span(Yards.In(40), Yards.In(50)));
    }

    [Fact]
    public void A_piece_without_a_code_gets_one()
    {
        Code code = default;

        _yard.Do(change => code = change.Add(Yards.Board(1) with { Code = default }));

        code.IsNone.Should().BeFalse();
        _yard.Pieces().Single().Code.Should().Be(code);
    }

    [Fact]
    public void Only_a_piece_that_is_there_can_be_set()
    {
        _yard.Do(change => change.Put(new Bin(Yards.CodeNumber(1), Yards.Hardware("bolt"), 1)));

        _yard.Refusals(change => change.Update(Yards.Board(1))).Should().Equal($"no piece or bin has the code {Yards.CodeNumber(1)}");
    }

    [Fact]
    public void A_code_is_a_pieces_or_a_bins_never_both()
    {
        var bolts = new Bin(Yards.CodeNumber(1), Yards.Hardware("bolt"), 1);
        _yard.Do(change => change.Put(bolts));
        _yard.Do(change => change.Add(Yards.Board(2)));
        var inUse = (int number) => $"the code {Yards.CodeNumber(number)} belongs to another piece already";

        _yard.Refusals(change => change.Add(Yards.Board(1))).Should().Equal(inUse(1));
        _yard.Refusals(change => change.Put(bolts with { Code = Yards.CodeNumber(2) })).Should().Equal(inUse(2));
    }

    [Theory]
    [InlineData("shed\u001b[31m")]
    [InlineData("shed\n")]
    [InlineData("shed\0")]
    [InlineData("shed\u202e")]
    public void Text_that_could_steer_a_terminal_or_that_no_file_keeps_is_refused(string text)
    {
        _yard.Refusals(change => change.Add(Yards.Board(1) with { Place = text })).Should().Equal("the place holds a control character; write plain text only");
        _yard.Refusals(change => change.Add(Yards.Board(1) with { Note = text })).Should().Equal("the note holds a control character; write plain text only");
        _yard.Refusals(change => change.AddStage(new Stage(text, null, [], []))).Should().Equal("the stage holds a control character; write plain text only");
        _yard.Refusals(change => change.SetPrice(Samples.Stud with { Supplier = text })).Should().Equal("the supplier holds a control character; write plain text only");
        _yard.Refusals(change => change.SetSettings(YardSettings.Usual with { CurrencySign = text })).Should().Equal("the currency sign holds a control character; write plain text only");
    }

    [Fact]
    public void Half_of_a_letter_that_takes_two_characters_is_refused()
    {
        _yard.Refusals(change => change.Add(Yards.Board(1) with { Place = "shed" + (char)0xd83e })).Should().Equal("the place holds a control character; write plain text only");
    }

    [Fact]
    public void A_bin_is_added_and_then_set_under_its_code()
    {
        var bin = new Bin(Yards.CodeNumber(1), Yards.Hardware("Gewindestange M12", "box"), 5, "shed", "rostig");
        _yard.Do(change => change.Put(bin));
        _yard.Do(change => change.Put(bin with { Quantity = 0, Place = "barn" }));

        _yard.Bin(bin.Code).Should().Be(bin with { Quantity = 0, Place = "barn" });
        _yard.Bin(bin.Code)!.Hardware.Unit.Should().Be("box");
        _yard.Bins().Should().ContainSingle();
        _yard.Bin(Yards.CodeNumber(9)).Should().BeNull();
    }

    [Fact]
    public void Hardware_is_taken_from_the_bin_entered_first_and_never_below_nothing()
    {
        _yard.Do(change =>
        {
            change.Put(new Bin(Yards.CodeNumber(1), Yards.Hardware("bolt"), 3));
            change.Put(new Bin(Yards.CodeNumber(2), Yards.Hardware("nut"), 9));
            change.Put(new Bin(Yards.CodeNumber(3), Yards.Hardware("Bolt"), 4));
        });

        _yard.Do(change => change.TakeHardware(Yards.Hardware("BOLT"), 5));

        _yard.Bins().Select(bin => bin.Quantity).Should().Equal(0, 9, 2);
        _yard.Refusals(change => change.TakeHardware(Yards.Hardware("bolt"), 3)).Should().Equal("3 bolt are wanted, the bins hold 2");
        _yard.Bins().Select(bin => bin.Quantity).Should().Equal(0, 9, 2);
    }

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
