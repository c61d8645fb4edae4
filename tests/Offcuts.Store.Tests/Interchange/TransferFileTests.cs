using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>The file of a hand-over: nothing is lost on the way, and what is not as it was written is refused whole.</summary>
public sealed class TransferFileTests
{
    private static readonly Transfer Full = new()
    {
        Name = "2345679ACDEFHJKM",
        From = "Höß",
        Day = new DateOnly(2026, 11, 25),
        Terms = new Terms("Ann", HandOverKind.Sale, new Money(2500)),
        Pieces =
        [
            new TransferPiece(Samples.LongBoard with { Place = "", Treated = true, TreatedWith = "ACQ", Nails = true, TrimLeft = Yards.In(0.5m), Note = "split" }, LabelWaits: false, [new PastEntry(new DateTimeOffset(2026, 3, 1, 8, 0, 0, TimeSpan.FromHours(1)), "catalogued 12 pieces")])
            {
                CameBy = "AAAAAAAAAAAAAAAA",
                Was = Samples.Rest,
                Worth = new Money(850),
            },
            new TransferPiece(Samples.RestOfIt with { State = PieceState.InYard, ReservedFor = "" }, LabelWaits: true, []),
            new TransferPiece(Samples.FoamPanel, LabelWaits: false, []),
        ],
        Hardware = [new TransferHardware(Yards.Hardware("snap tie", "box"), 3)],
    };

    [Fact]
    public void What_is_written_is_read_back_without_loss_and_the_same_makes_the_same_bytes()
    {
        var bytes = TransferFile.Write(Full);

        Read(bytes).Value.Should().BeEquivalentTo(Full);
        TransferFile.Write(Full).Should().Equal(bytes);
    }

    [Fact]
    public void The_file_is_gzip_of_JSON_with_a_schema_and_the_hash_of_its_content_as_it_stands()
    {
        using var gzip = new GZipStream(new MemoryStream(TransferFile.Write(Full)), CompressionMode.Decompress);
        var text = new StreamReader(gzip, Encoding.UTF8).ReadToEnd();

        text.Should().MatchRegex("^\\{\"offcuts_hand_over\":1,\"sha256\":\"[0-9a-f]{64}\",\"content\":\\{\"transfer\":\"2345679ACDEFHJKM\"");
        var content = text[(text.IndexOf("\"content\":", StringComparison.Ordinal) + 10)..^1];
        text.Should().Contain(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content))));
    }

    [Fact]
    public void A_piece_that_names_hand_overs_before_its_last_makes_a_file_of_schema_2()
    {
        var full = Full with { Pieces = [.. Full.Pieces.Select(piece => piece with { Earlier = [new Origin("CCCCCCCCCCCCCCCC", Yards.CodeNumber(3))] })] };
        var bytes = TransferFile.Write(full);

        Read(bytes).Value.Should().BeEquivalentTo(full);
        using var gzip = new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress);
        new StreamReader(gzip, Encoding.UTF8).ReadToEnd().Should().StartWith("{\"offcuts_hand_over\":2,").And.Contain("\"earlier\":[[\"CCCCCCCCCCCCCCCC\"");
    }

    [Fact]
    public void Cut_short_anywhere_it_is_refused()
    {
        var bytes = TransferFile.Write(Full);
        for (var length = 0; length < bytes.Length; length++)
        {
            var read = Read(bytes[..length]);
            read.Ok.Should().BeFalse($"{length} of {bytes.Length} bytes");
            read.Fault.Sentence.Should().BeOneOf(
                "this is no hand-over file of Offcuts",
                "this hand-over file is cut short or damaged; have it copied again",
                "what is in this hand-over file is not what was written: it was altered or damaged on the way; have it copied again");
        }
    }

    [Fact]
    public void With_any_byte_altered_it_is_refused_or_says_exactly_the_same()
    {
        var bytes = TransferFile.Write(Full);
        var same = 0;
        for (var at = 0; at < bytes.Length; at++)
        {
            var altered = bytes.ToArray();
            altered[at] ^= 0x55;
            var read = Read(altered);
            if (!read.Ok) continue;
            // Bits of gzip that mean nothing, like those that fill its last byte.
            same++;
            TransferFile.Write(read.Value).Should().Equal(bytes);
        }

        same.Should().BeLessThan(3);
    }

    [Fact]
    public void With_something_behind_it_it_is_refused()
    {
        Read([.. TransferFile.Write(Full), 1, 2, 3, 4]).Fault.Should().Be(HandFaults.TransferDamaged());
    }

    [Theory]
    [InlineData("")]
    [InlineData("code,material,length\nK7F3MXX,2x4,8'\n")]
    [InlineData("{\"offcuts_hand_over\":1}")]
    public void A_file_of_another_kind_is_refused(string text) => Read(Encoding.UTF8.GetBytes(text)).Fault.Should().Be(HandFaults.TransferForeign());

    [Theory]
    [InlineData("no JSON at all")]
    [InlineData("[1, 2]")]
    [InlineData("{\"pieces\":[]}")]
    [InlineData("{\"offcuts_hand_over\":\"1\",\"sha256\":\"\",\"content\":{}}")]
    [InlineData("{\"offcuts_hand_over\":1,\"sha256\":\"\",\"content\":{},\"more\":1}")]
    [InlineData("{\"offcuts_hand_over\":1,\"content\":{}}")]
    public void Gzip_of_something_else_is_refused(string text) => Read(Packed(Encoding.UTF8.GetBytes(text))).Fault.Should().Be(HandFaults.TransferForeign());

    [Fact]
    public void A_newer_schema_is_refused_with_its_number() =>
        Read(Packed("{\"offcuts_hand_over\":3,\"sha256\":\"\",\"content\":{}}"u8.ToArray())).Fault.Sentence
            .Should().Be("this hand-over file is of schema 3 and this program reads up to 2; a newer program reads it");

    [Fact]
    public void A_small_file_that_unpacks_without_end_is_refused_before_it_fills_the_memory()
    {
        var bomb = Packed(new byte[(TransferFile.MostMegabytes * 1_000_000) + 1]);

        bomb.Length.Should().BeLessThan(200_000);
        Read(bomb).Fault.Sentence.Should().Be("this hand-over file unpacks to more than 64 MB; that is no list of pieces");
    }

    [Theory]
    [InlineData("\"material\":\"2x10\"", "\"material\":\"2x99\"", "its content: it is not as its schema says; nothing was taken in")]
    [InlineData("\"code\":\"Y4MNV9W\"", "\"code\":\"Y4MNV9X\"", "Y4MNV9X: one character of this code is wrong: its check character does not fit; nothing was taken in")]
    [InlineData("\"note\":\"split\"", "\"note\":\"\\u001b[2J\"", "Y4MNV9W: the note holds a control character; write plain text only; nothing was taken in")]
    [InlineData("\"length_320ths_mm\":1105408", "\"length_320ths_mm\":0", "Y4MNV9W: a piece has a length over 0; nothing was taken in")]
    [InlineData("\"length_320ths_mm\":1105408", "\"length_320ths_mm\":-5", "its content: it is not as its schema says; nothing was taken in")]
    [InlineData("\"kind\":\"sale\"", "\"kind\":\"theft\"", "its content: it is not as its schema says; nothing was taken in")]
    [InlineData("\"kind\":\"sale\"", "\"kind\":\"gift\"", "terms: it is a gift, a loan or a sale: say one of them, and for a sale the price; nothing was taken in")]
    [InlineData("\"transfer\":\"2345679ACDEFHJKM\"", "\"transfer\":\"2345\"", "transfer: it is no name of a hand-over; nothing was taken in")]
    [InlineData("\"count\":3", "\"count\":0", "snap tie: a bin holds a whole number from 0 to 100000; nothing was taken in")]
    [InlineData("\"treated\":true", "\"treated\":true,\"colour\":\"red\"", "its content: it is not as its schema says; nothing was taken in")]
    [InlineData("catalogued 12 pieces", "cata\\u202elogued", "Y4MNV9W: the history holds a control character; write plain text only; nothing was taken in")]
    [InlineData("\"code\":\"HDCXA5M\"", "\"code\":\"Y4MNV9W\"", "Y4M NV9W: it stands twice; nothing was taken in")]
    public void What_can_not_be_is_refused_by_name_even_with_the_right_hash(string part, string otherwise, string sentence)
    {
        var content = Content().Replace(part, otherwise);
        content.Should().Contain(otherwise);

        Read(Packed(Encoding.UTF8.GetBytes(With(content)))).Faults.Select(fault => fault.Sentence).Should().Contain(sentence);
    }

    [Theory]
    [InlineData("\"hardware\":[{", "\"hardware\":[null,{")]
    [InlineData("\"pieces\":[{", "\"pieces\":[null,{")]
    [InlineData("\"history\":[]", "\"history\":[null]")]
    [InlineData("\"history\":[]", "\"history\":[[null,\"x\"]]")]
    [InlineData("\"history\":[]", "\"history\":[[\"2026-03-01T08:00:00+01:00\",null]]")]
    [InlineData("\"bad_spots_320ths_mm\":[]", "\"bad_spots_320ths_mm\":[null]")]
    [InlineData("\"note\":\"split\"", "\"note\":\"\\ud800\"")]
    [InlineData("\"note\":\"split\"", "\"\\ud800\":\"split\"")]
    [InlineData(null, "null")]
    [InlineData(null, "[]")]
    public void Nothing_where_something_belongs_and_half_of_a_broken_pair_are_refused_whole(string? part, string otherwise)
    {
        var content = part is null ? otherwise : Content().Replace(part, otherwise);
        content.Should().Contain(otherwise);

        Read(Packed(Encoding.UTF8.GetBytes(With(content)))).Fault.Sentence.Should().BeOneOf("its content: it is not as its schema says; nothing was taken in", "this is no hand-over file of Offcuts");
    }

    [Theory]
    [InlineData("{\"offcuts_hand_over\":1,\"sha256\":\"\\ud800\",\"content\":{}}", "what is in this hand-over file is not what was written: it was altered or damaged on the way; have it copied again")]
    [InlineData("{\"\\ud800\":1,\"sha256\":\"\",\"content\":{}}", "this is no hand-over file of Offcuts")]
    [InlineData("{\"\\ud800fcuts_hand_over\":1,\"\\ud800\":\"\",\"content\":{}}", "this is no hand-over file of Offcuts")]
    public void Half_of_a_broken_pair_around_the_content_is_refused(string text, string sentence) =>
        Read(Packed(Encoding.UTF8.GetBytes(text))).Fault.Sentence.Should().Be(sentence);

    private static string Content()
    {
        using var gzip = new GZipStream(new MemoryStream(TransferFile.Write(Full with
        {
            Pieces = [.. Full.Pieces.Take(2).Select(sent => sent with { Piece = sent.Piece with { Code = sent.Piece.Code == Samples.Long ? Yards.Code("Y4MNV9W") : Yards.Code("HDCXA5M"), CutFrom = default } })],
        })), CompressionMode.Decompress);
        var text = new StreamReader(gzip, Encoding.UTF8).ReadToEnd();
        return text[(text.IndexOf("\"content\":", StringComparison.Ordinal) + 10)..^1];
    }

    private static string With(string content) =>
        $"{{\"offcuts_hand_over\":1,\"sha256\":\"{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content)))}\",\"content\":{content}}}";

    private static byte[] Packed(byte[] plain)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true)) gzip.Write(plain);
        var bytes = packed.ToArray();
        (bytes[8], bytes[9]) = (0, 255);
        return bytes;
    }

    private static Result<Transfer> Read(byte[] bytes) => TransferFile.Read(new MemoryStream(bytes));
}
