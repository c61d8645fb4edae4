using Offcuts.Core.Yard;

namespace Offcuts.Reading.Tests;

/// <summary>What is read in photographs. All of them are made by <see cref="Photo"/>; none was taken with a camera.</summary>
public sealed class PhotoTests
{
    [Theory]
    [InlineData(2.2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(9)]
    [InlineData(17)]
    [InlineData(30)]
    public void A_label_is_read_whether_it_is_small_in_the_picture_or_fills_it(double module)
    {
        var photo = new Photo(1200, 900, seed: 1).Stick(Photo.CodeNumber(1), 420, 450, module).Noisy(6);

        Codes(photo).Should().Equal(Photo.CodeNumber(1));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(7)]
    [InlineData(30)]
    [InlineData(45)]
    [InlineData(90)]
    [InlineData(135)]
    [InlineData(180)]
    [InlineData(271)]
    public void A_label_is_read_however_it_is_turned(double turn)
    {
        var photo = new Photo(1200, 900, seed: 2).Stick(Photo.CodeNumber(2), 600, 450, 5, turn).Noisy(6);

        Codes(photo).Should().Equal(Photo.CodeNumber(2));
    }

    [Theory]
    [InlineData(20, 0)]
    [InlineData(35, 15)]
    [InlineData(45, 100)]
    [InlineData(50, 0)]
    public void A_label_is_read_that_leans_away_from_the_camera(double tilt, double turn)
    {
        var photo = new Photo(1200, 900, seed: 3).Stick(Photo.CodeNumber(3), 600, 450, 8, turn, tilt).Noisy(6);

        Codes(photo).Should().Equal(Photo.CodeNumber(3));
    }

    [Theory]
    [InlineData(6, 1)]
    [InlineData(6, 2)]
    [InlineData(10, 4)]
    public void A_label_is_read_out_of_focus_by_a_third_of_a_module(double module, double sigma)
    {
        var photo = new Photo(1200, 900, seed: 4).Stick(Photo.CodeNumber(4), 500, 450, module, 11).Blurred(sigma).Noisy(4);

        Codes(photo).Should().Equal(Photo.CodeNumber(4));
    }

    [Fact]
    public void A_label_is_read_across_the_edge_of_a_shadow()
    {
        var photo = new Photo(1200, 900, seed: 5).Stick(Photo.CodeNumber(5), 420, 430, 6, 20).Lit(0.4, 1.1, 0.55).Noisy(4);

        Codes(photo).Should().Equal(Photo.CodeNumber(5));
    }

    // 15 % of a symbol of 441 modules are 66: a square of 8.1 modules, or a strip of 3.15. Nine of ten of a corner's 66 lie on its finder
    // pattern, which holds nothing of the text.
    [Theory]
    [InlineData(0, 0, 8.1, 8.1)]
    [InlineData(12.9, 0, 8.1, 8.1)]
    [InlineData(0, 12.9, 8.1, 8.1)]
    [InlineData(17.85, 0, 3.15, 21)]
    [InlineData(0, 17.85, 21, 3.15)]
    public void A_label_is_read_with_15_percent_of_it_under_dirt_at_a_corner_or_an_edge(double x, double y, double width, double height)
    {
        foreach (var number in Enumerable.Range(1, 6))
        {
            var photo = new Photo(900, 700, number).Stick(Photo.CodeNumber(number), 400, 350, 6, number * 13, dirt: new Dirt(x, y, width, height)).Noisy(4);

            Codes(photo).Should().Equal([Photo.CodeNumber(number)], $"of number {number}");
        }
    }

    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(13)]
    public void Every_label_of_a_rack_is_read_turned_tilted_blurred_and_unevenly_lit(int seed)
    {
        var (photo, codes) = Photo.Rack(seed, 2400, 1800, module: 4.2, columns: 5, rows: 6);

        Read(photo.Jpeg(80)).Labels.Select(label => label.Code.ToString()).Should().BeEquivalentTo(codes.Select(code => code.ToString()));
    }

    [Fact]
    public void A_jpeg_and_a_png_of_one_picture_tell_the_same_and_where()
    {
        var photo = new Photo(1000, 800, seed: 6).Stick(Photo.CodeNumber(6), 250, 200, 5).Stick(Photo.CodeNumber(7), 700, 600, 5, 40).Noisy(4);

        foreach (var file in (byte[][])[photo.Jpeg(), photo.Png()])
        {
            var labels = Read(file).Labels;
            labels.Select(label => label.Code).Should().Equal(Photo.CodeNumber(6), Photo.CodeNumber(7));
            labels[0].X.Should().BeApproximately(0.25, 0.01);
            labels[0].Y.Should().BeApproximately(0.25, 0.01);
        }
    }

    [Fact]
    public void A_symbol_that_is_no_label_of_ours_is_counted_and_kept_nowhere()
    {
        var foreign = Foreign("https://example.org/?x=\u001b[2J");
        var photo = new Photo(1200, 900, seed: 7).Stick((x, y) => foreign[y, x], foreign.GetLength(0), 300, 450, 6).Stick(Photo.CodeNumber(8), 850, 450, 5).Noisy(4);

        var read = Read(photo.Jpeg());

        read.Labels.Select(label => label.Code).Should().Equal(Photo.CodeNumber(8));
        read.Foreign.Should().Be(1);
    }

    [Fact]
    public void A_picture_without_a_label_has_none()
    {
        var read = Read(new Photo(1600, 1200, seed: 8).Noisy(30).Jpeg());

        read.Labels.Should().BeEmpty();
        read.Foreign.Should().Be(0);
    }

    private static bool[,] Foreign(string text)
    {
        var symbol = ZXing.QrCode.Internal.Encoder.encode(text, ZXing.QrCode.Internal.ErrorCorrectionLevel.M).Matrix;
        var dark = new bool[symbol.Height, symbol.Width];
        for (var y = 0; y < symbol.Height; y++)
            for (var x = 0; x < symbol.Width; x++) dark[y, x] = symbol[x, y] == 1;
        return dark;
    }

    private static PicturedLabels Read(byte[] file) => LabelPicture.Read(file).Value;

    private static IEnumerable<Code> Codes(Photo photo) => LabelPicture.Read(photo.Grey()).Labels.Select(label => label.Code);
}
