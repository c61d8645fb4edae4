using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
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

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }
}
