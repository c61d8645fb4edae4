using Offcuts.Core.Yard;
using Offcuts.Reading.Tests;
using Offcuts.Store;

namespace Offcuts.Tests.Commands;

/// <summary>Counting by pictures from the command line to the yard. No camera took them: they are drawn by arithmetic. The yard is invented.</summary>
public sealed class CountPicturesTests : IDisposable
{
    private readonly TryYard _yard = new();
    private readonly Code[] _pieces;
    private readonly Code _trailer;
    private readonly string _walk;

    public CountPicturesTests()
    {
        _yard.Must("add", "2x4 8', 8', 6', 6' @north rack");
        _yard.Must("add", "2x10 12' @trailer");
        _yard.Must("place", "label", "trailer");
        using var yard = YardFile.Open(_yard.YardPath, _yard.Clock);
        _pieces = [.. yard.Pieces().Select(piece => piece.Code)];
        _trailer = yard.Places().Single(place => place.Name == "trailer").Code;
        _walk = Directory.CreateDirectory(Path.Combine(_yard.Folder, "walk", "north rack")).Parent!.FullName;
    }

    public void Dispose() => _yard.Dispose();

    [Fact]
    public void Labels_in_jpeg_and_png_turned_and_several_in_one_say_what_is_where_and_a_broken_picture_is_named()
    {
        // The folder's name says north rack: three pieces in a JPEG, one of them turned by a quarter, one upside down.
        var rack = new Photo(1100, 420, 1).Stick(_pieces[0], 150, 210, 6, turn: 12).Stick(_pieces[1], 480, 210, 6, turn: 90).Stick(_pieces[2], 860, 210, 6, turn: 184);
        File.WriteAllBytes(Path.Combine(_walk, "north rack", "one.jpg"), rack.Lit(0.7, 1.05, 0.3).Blurred(1).Noisy(4).Jpeg());

        // A place's label in the same picture says trailer, whatever the folder is called: a piece of the north rack beside that of the trailer, in a PNG.
        var trailer = new Photo(1100, 420, 2).Stick(_trailer, 150, 210, 6).Stick(_pieces[3], 500, 210, 6, turn: -8).Stick(_pieces[4], 860, 210, 6, turn: 45);
        File.WriteAllBytes(Path.Combine(_walk, "two.png"), trailer.Png());
        var broken = Path.Combine(_walk, "three.jpg");
        File.WriteAllBytes(broken, rack.Jpeg()[..2000]);

        var told = _yard.Must("count", _walk, "--partly");

        told.Lines[0].Should().Be("5 pieces seen in 2 pictures; 4 as the yard says");
        told.Lines.Should().Contain("  north rack: 3 of 4 seen").And.Contain("  trailer: 1 of 1 seen")
            .And.Contain($"  {_pieces[3]}  2x4  6'  at trailer, not north rack")
            .And.Contain($"  {broken} is broken: it ends in the middle");

        _yard.Must("count", _walk, "--partly", "--accept");
        _yard.Must("list", "@trailer").Out.Should().Contain(_pieces[3].ToString());
        _yard.Must("undo");
        _yard.Must("list", "@trailer").Out.Should().NotContain(_pieces[3].ToString());
    }

    [Fact]
    public void A_picture_that_says_it_is_larger_than_any_is_refused_before_it_is_decoded()
    {
        var path = Path.Combine(_walk, "huge.jpg");
        File.WriteAllBytes(path, [0xFF, 0xD8, 0xFF, 0xC0, 0, 11, 8, 0xFF, 0xFF, 0xFF, 0xFF, 1, 1, 0x11, 0, 0xFF, 0xD9]);
        var before = GC.GetTotalAllocatedBytes();

        _yard.Run("count", path).Out.Should().Contain($"{path} has 65535 x 65535 pixels; a picture has at most 48 million");

        (GC.GetTotalAllocatedBytes() - before).Should().BeLessThan(400_000_000, "four thousand million pixels were never made room for");
    }
}
