using System.Buffers.Binary;
using System.IO.Compression;

namespace Offcuts.Reading.Tests;

/// <summary>Files that are broken, foreign or made to hurt: each is named, none is decoded before its size is known.</summary>
public sealed class PictureFileTests
{
    private static readonly byte[] Small = new Photo(200, 150, 1).Jpeg();

    private static readonly byte[] SmallPng = new Photo(200, 150, 1).Png();

    [Fact]
    public void A_picture_tells_what_it_takes_before_it_is_decoded()
    {
        PictureFile.WorkingBytes(Small).Value.Should().BeInRange(30_000 + 30_000 * 3 / 2, 30_000 + 208 * 160 * 3);
        PictureFile.WorkingBytes(SmallPng).Value.Should().Be(30_000 + SmallPng.Length);
    }

    [Theory]
    [InlineData(0xC0, 0x22, 120)]
    [InlineData(0xC2, 0x22, 264)]
    [InlineData(0xC0, 0x11, 192)]
    [InlineData(0xC2, 0x11, null)]
    public void A_jpeg_of_48_megapixels_is_read_unless_its_scans_and_dense_colours_take_too_much(byte frame, byte sampling, int? megabytes)
    {
        byte[] file = [0xFF, 0xD8, 0xFF, frame, 0, 17, 8, 6000 >> 8, 6000 & 255, 8000 >> 8, 8000 & 255, 3, 1, sampling, 0, 2, 0x11, 0, 3, 0x11, 0, 0xFF, 0xD9];

        var working = PictureFile.WorkingBytes(file);

        if (megabytes is { } most) working.Value.Should().Be(most * 1_000_000L);
        else working.Fault.Sentence.Should().Be("would take more than 350 MB of memory; save it again as an ordinary JPEG");
    }

    [Fact]
    public void A_png_of_48_megapixels_is_read_in_any_colours_unless_it_is_interlaced()
    {
        foreach (var (bits, colour) in ((byte, byte)[])[(8, 0), (8, 2), (8, 6), (16, 6)])
            PictureFile.WorkingBytes(PngOf(8000, 6000, [0], bits, colour)).Value.Should().BeInRange(48_000_000, 48_001_000);
        Sentence(PngOf(8000, 6000, [0], interlaced: 1)).Should().Be("would take more than 350 MB of memory; save it again as an ordinary JPEG");
    }

    // Two rows of three pixels, told in every way that a row can be filtered; by hand: each byte less left, up, their mean, or the nearest.
    [Theory]
    [InlineData(0, new byte[] { 10, 20, 30 }, new byte[] { 12, 25, 29 })]
    [InlineData(1, new byte[] { 10, 10, 10 }, new byte[] { 12, 13, 4 })]
    [InlineData(2, new byte[] { 10, 20, 30 }, new byte[] { 2, 5, 255 })]
    [InlineData(3, new byte[] { 10, 15, 20 }, new byte[] { 7, 9, 2 })]
    [InlineData(4, new byte[] { 10, 10, 10 }, new byte[] { 2, 5, 255 })]
    public void A_row_of_a_png_is_told_by_what_it_differs(byte filter, byte[] first, byte[] second)
    {
        var read = PictureFile.Decode(PngOf(3, 2, [filter, .. first, filter, .. second], colour: 0)).Value;

        read.Pixels.Should().Equal(10, 20, 30, 12, 25, 29);
    }

    // Grey by BT.601 in 256ths: of pure red 77, green 150, blue 29 of 256.
    [Theory]
    [InlineData(8, 2, new byte[] { 0, 255, 0, 0, 0, 255, 0 }, new byte[] { 76, 149 })]
    [InlineData(8, 6, new byte[] { 0, 255, 0, 0, 9, 0, 255, 0, 9 }, new byte[] { 76, 149 })]
    [InlineData(8, 4, new byte[] { 0, 7, 255, 200, 0 }, new byte[] { 7, 200 })]
    [InlineData(16, 0, new byte[] { 0, 7, 99, 200, 1 }, new byte[] { 7, 200 })]
    [InlineData(1, 0, new byte[] { 0, 0b0100_0000 }, new byte[] { 0, 255 })]
    [InlineData(2, 0, new byte[] { 0, 0b0110_0000 }, new byte[] { 85, 170 })]
    [InlineData(4, 0, new byte[] { 0, 0x1F }, new byte[] { 17, 255 })]
    [InlineData(4, 3, new byte[] { 0, 0x10 }, new byte[] { 149, 76 })]
    public void Every_kind_of_colour_becomes_grey(byte bits, byte colour, byte[] rows, byte[] grey)
    {
        var read = PictureFile.Decode(PngOf(2, 1, rows, bits, colour, palette: colour == 3 ? [255, 0, 0, 0, 255, 0] : [])).Value;

        read.Pixels.Should().Equal(grey);
    }

    [Fact]
    public void A_png_reads_the_same_row_by_row_as_by_the_library()
    {
        var photo = new Photo(200, 150, 1);
        var library = StbImageSharp.ImageResult.FromMemory(photo.Png(), StbImageSharp.ColorComponents.Grey);

        PictureFile.Decode(photo.Png()).Value.Pixels.Should().Equal(library.Data);
    }

    [Fact]
    public void A_png_with_too_few_rows_or_a_filter_that_there_is_not_is_broken()
    {
        Sentence(PngOf(3, 2, [0, 1, 2, 3, 0, 1, 2], colour: 0)).Should().Be("is broken: it can't be decoded");
        Sentence(PngOf(3, 1, [5, 1, 2, 3], colour: 0)).Should().Be("is broken: it can't be decoded");
        Sentence(PngOf(2, 1, [0, 1], bits: 4, colour: 3)).Should().Be("is broken: it can't be decoded");
    }

    [Fact]
    public void What_a_phone_hangs_on_behind_the_picture_is_left_out()
    {
        PictureFile.Decode((byte[])[.. Small, .. new byte[5000]]).Value.Width.Should().Be(200);
    }

    [Fact]
    public void A_picture_that_ends_in_the_middle_is_broken_wherever_it_ends()
    {
        foreach (var file in (byte[][])[Small, SmallPng])
            for (var length = 40; length < file.Length - 2; length += 97)
                PictureFile.Decode(file.AsMemory(0, length)).Ok.Should().BeFalse($"{length} of {file.Length} bytes");
        Sentence(Small.AsMemory(0, Small.Length - 2)).Should().Be("is broken: it ends in the middle");
        Sentence(SmallPng.AsMemory(0, SmallPng.Length / 2)).Should().Be("is broken: it ends in the middle");
        Sentence(Small.AsMemory(0, 30)).Should().Be("is broken: its first part does not tell how large it is");
    }

    [Fact]
    public void A_picture_with_altered_bytes_is_read_or_refused_and_nothing_else()
    {
        var chance = new Random(5);
        foreach (var file in (byte[][])[Small, SmallPng])
            for (var i = 0; i < 300; i++)
            {
                var altered = (byte[])file.Clone();
                for (var j = chance.Next(1, 6); j > 0; j--) altered[chance.Next(2, altered.Length)] = (byte)chance.Next(256);
                var read = PictureFile.Decode(altered);
                if (read.Ok) read.Value.Pixels.Length.Should().BeGreaterThanOrEqualTo(read.Value.Width * read.Value.Height);
            }
    }

    [Fact]
    public void More_than_48_megapixels_are_refused_by_what_the_first_part_says()
    {
        Sentence(Header(8000, 6001)).Should().Be("has 8000 x 6001 pixels; a picture has at most 48 million");
        Sentence(Header(65535, 65535)).Should().Be("has 65535 x 65535 pixels; a picture has at most 48 million");
        Sentence(PngOf(4_000_000_000, 4_000_000_000, [0])).Should().Be("has 4000000000 x 4000000000 pixels; a picture has at most 48 million");
        Sentence(Header(0, 10)).Should().Be("is broken: its first part does not tell how large it is");
    }

    [Fact]
    public void A_png_that_unpacks_to_more_than_its_size_says_is_left_alone()
    {
        Sentence(PngOf(10, 10, new byte[50_000_000])).Should().Be("holds more than its size says; it was left alone");
    }

    [Fact]
    public void A_png_whose_pixels_are_no_packed_bytes_is_broken()
    {
        var file = PngOf(10, 10, new byte[310]);
        file[45] ^= 0xFF;

        Sentence(file).Should().Be("is broken: it can't be decoded");
    }

    [Fact]
    public void A_jpeg_of_very_many_scans_is_refused()
    {
        byte[] scan = [0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0, 0];
        byte[] many = [.. Header(100, 100), .. Enumerable.Repeat(scan, 101).SelectMany(one => one), 0xFF, 0xD9];

        Sentence(many).Should().Be("is a kind of JPEG that cameras don't make; save it again as an ordinary one");
        Sentence((byte[])[0xFF, 0xD8, 0xFF, 0xC9, 0, 11, 8, 0, 10, 0, 10, 1, 1, 0x11, 0, 0xFF, 0xD9]).Should().Be("is a kind of JPEG that cameras don't make; save it again as an ordinary one");
    }

    [Fact]
    public void More_bytes_than_any_such_picture_has_are_refused() => Sentence(new byte[64_000_001]).Should().Be("has more than 64 MB");

    [Fact]
    public void Other_files_are_called_what_they_are()
    {
        Sentence("GIF89a..........."u8.ToArray()).Should().Be("is neither a JPEG nor a PNG picture");
        Sentence("\0\0\0\u0018ftypheic\0\0\0\0"u8.ToArray()).Should().Be("is a HEIF or AVIF picture, which is not read; set the phone's camera to JPEG (often called most compatible)");
        Sentence(Array.Empty<byte>()).Should().Be("is neither a JPEG nor a PNG picture");
    }

    private static string Sentence(ReadOnlyMemory<byte> file) => PictureFile.Decode(file).Fault.Sentence;

    private static byte[] Header(int width, int height) =>
        [0xFF, 0xD8, 0xFF, 0xC0, 0, 11, 8, (byte)(height >> 8), (byte)height, (byte)(width >> 8), (byte)width, 1, 1, 0x11, 0];

    private static byte[] PngOf(uint width, uint height, byte[] pixels, byte bits = 8, byte colour = 2, byte interlaced = 0, byte[]? palette = null)
    {
        using var packed = new MemoryStream();
        using (var packing = new ZLibStream(packed, CompressionLevel.Optimal)) packing.Write(pixels);
        var size = new byte[13];
        BinaryPrimitives.WriteUInt32BigEndian(size, width);
        BinaryPrimitives.WriteUInt32BigEndian(size.AsSpan(4), height);
        (size[8], size[9], size[12]) = (bits, colour, interlaced);
        return [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A, .. Chunk("IHDR", size), .. palette is { Length: > 0 } ? Chunk("PLTE", palette) : [], .. Chunk("IDAT", packed.ToArray()), .. Chunk("IEND", [])];
    }

    private static byte[] Chunk(string kind, byte[] content)
    {
        var length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, content.Length);
        return [.. length, .. System.Text.Encoding.ASCII.GetBytes(kind), .. content, 0, 0, 0, 0];
    }
}
