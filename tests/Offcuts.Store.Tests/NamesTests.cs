using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Tests;

public sealed class NamesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Fact]
    public void Names_come_from_pieces_gone_ones_too_bins_stages_and_prices()
    {
        using var yard = Yards.Open(_folder["yard.offcuts"]);
        yard.Names().NewAmong([Counted("bolt")]).Should().ContainSingle();

        yard.Do(change =>
        {
            change.Add(Yards.Board(1) with { Material = Cut("lath"), State = PieceState.Scrapped });
            change.Put(new Bin(Yards.CodeNumber(2), Yards.Hardware("bolt"), 3));
            change.AddStage(new Stage("roof", null, [], [new HardwareNeed("roof", "hooks", Yards.Hardware("hook", "box"), 2)]));
            change.SetPrice(new StorePrice { Material = Cut("ridge cap"), Length = Yards.In(120), Price = new Core.Measures.Money(999) });
        });

        yard.Names().NewAmong([Cut("lath"), Counted("BOLT"), Counted("hook"), Cut("ridge cap"), Counted("lath")])
            .Select(name => (name.Material.Name, name.OtherKind)).Should().Equal(("lath", true));
    }

    public void Dispose() => _folder.Dispose();

    private static Material Counted(string name) => MaterialReader.ReadCounted(name).Value;

    private static Material Cut(string name) => MaterialReader.Read(name).Value;
}
