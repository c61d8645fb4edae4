using System.Text;
using CsCheck;
using Offcuts.Core.Faults;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>
/// No file brings a reader down: it gives a value or faults that can be shown. A failing case prints its seed;
/// <c>CsCheck_Seed=... dotnet test</c> plays it again.
/// </summary>
public sealed class HostileFileTests
{
    private static readonly byte[] Good = Encoding.UTF8.GetBytes(
        "code,material,length,qty,condition,treated,stamped,bad,trim,place,note\r\n"
        + "P1,2x4,\"7' 8-5/8\"\"\",,fair,yes,no,\"30\"\"..36\"\"; 40\"\"..41\"\"\",\"1/2\"\"; 0\",north rack,\"étai, \"\"court\"\"\"\r\n"
        + "B1,hex bolt 1/2,,40,,,,,,shed,🪵\r\n");

    // Bytes that mean something to a reader of CSV, UTF-8 or lengths, more often than not.
    private static readonly Gen<byte> Byte = Gen.OneOf(
        Gen.Byte,
        Gen.OneOf((byte)'"', (byte)',', (byte)'\r', (byte)'\n', (byte)0, (byte)0x1b, (byte)';', (byte)'.', (byte)'\'', (byte)0xef, (byte)0xbb, (byte)0xbf, (byte)0xff, (byte)0xfe, (byte)0xc3, (byte)0xf0),
        Gen.Char["0123456789/x #-+=' "].Select(character => (byte)character));

    [Fact]
    public void Random_bytes() => Byte.Array[0, 400].Sample(Survives, iter: 1000);

    [Fact]
    public void Random_bytes_under_a_good_header() =>
        Byte.Array[0, 400].Sample(bytes => Survives([.. Good.AsSpan(0, Good.AsSpan().IndexOf((byte)'\n') + 1), .. bytes]), iter: 1000);

    [Fact]
    public void A_good_file_cut_off_anywhere()
    {
        Read(Good).Ok.Should().BeTrue();
        for (var length = 0; length < Good.Length; length++) Survives(Good[..length]);
    }

    [Fact]
    public void A_good_file_with_bytes_changed() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Byte).Array[1, 6].Sample(changes =>
        {
            var bytes = (byte[])Good.Clone();
            foreach (var (at, value) in changes) bytes[at] = value;
            Survives(bytes);
        }, iter: 1000);

    [Theory]
    [InlineData("9", 1_000_000)]
    [InlineData("\"", 1_000_001)]
    [InlineData("1/", 60_000)]
    [InlineData(",", 1_000_000)]
    [InlineData("x", 50_000)]
    [InlineData("1\"..2\";", 9_000)]
    [InlineData("\0", 300_000)]
    [InlineData("\r", 300_000)]
    [InlineData("é", 100_000)]
    [InlineData("'", 60_000)]
    public void One_thing_over_and_over_in_any_column(string unit, int times)
    {
        var much = string.Concat(Enumerable.Repeat(unit, times));
        Survives(Encoding.UTF8.GetBytes(much));
        for (var column = 0; column < 11; column++)
        {
            var cells = new string[11];
            Array.Fill(cells, "");
            cells[column] = much;
            Survives([.. Good.AsSpan(0, Good.AsSpan().IndexOf((byte)'\n') + 1), .. Encoding.UTF8.GetBytes(string.Join(',', cells))]);
        }
    }

    private static Result<Stock> Read(byte[] bytes) => StockFile.Read(new MemoryStream(bytes), "s", CodePolicy.AsWritten);

    private static void Survives(byte[] bytes)
    {
        Shown(Read(bytes).Faults);
        Shown(StockFile.Read(new MemoryStream(bytes), "s", CodePolicy.Checked).Faults);
        Shown(CutsFile.Read(new MemoryStream(bytes), "s").Faults);
        Shown(PricesFile.Read(new MemoryStream(bytes), "s").Faults);
    }

    private static void Shown(IReadOnlyList<Fault> faults)
    {
        foreach (var fault in faults)
        {
            var text = fault.ToString();
            if (text.Length > 1000 || text.Any(c => char.IsControl(c)) || !text.StartsWith("s:", StringComparison.Ordinal))
                Assert.Fail($"not fit to be shown: {TextRules.Harmless(text)}");
        }
    }
}
