using CsCheck;
using CsvHelper;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store.Interchange;

namespace Offcuts.Store.Tests.Interchange;

/// <summary>
/// What is written reads back the same. A failing case prints its seed; <c>CsCheck_Seed=... dotnet test</c> plays it again.
/// </summary>
public sealed class RoundTripTests
{
    [Fact]
    public void Stock_written_and_read_is_the_same_stock()
    {
        Gen.Select(Written.Piece.Array[0, 6], Written.Bin.Array[0, 3]).Sample((pieces, bins) =>
        {
            pieces = [.. pieces.DistinctBy(piece => piece.Code)];
            bins = [.. bins.DistinctBy(bin => bin.Code).Where(bin => pieces.All(piece => piece.Code != bin.Code))];
            var text = Text(to => StockFile.Write(pieces, bins, to));
            var stock = Good(StockFile.ReadText(text, "s", CodePolicy.Checked));

            stock.Pieces.Select(Told).Should().Equal(pieces.Select(Told));
            stock.Bins.Should().Equal(bins);
            stock.Bins.Select(bin => bin.Hardware.Unit).Should().Equal(bins.Select(bin => bin.Hardware.Unit));
        }, iter: 400);
    }

    [Fact]
    public void Cuts_written_and_read_are_the_same_cuts()
    {
        Stages.Sample(stages =>
        {
            var read = Good(CutsFile.ReadText(Text(to => CutsFile.Write(stages, to)), "s"));
            read.Select(stage => (stage.Name, stage.Date)).Should().Equal(stages.Select(stage => (stage.Name, stage.Date)));
            read.SelectMany(stage => stage.Cuts).Should().Equal(stages.SelectMany(stage => stage.Cuts));
            read.SelectMany(stage => stage.Hardware).Should().Equal(stages.SelectMany(stage => stage.Hardware));
        }, iter: 400);
    }

    [Fact]
    public void Prices_written_and_read_are_the_same_prices()
    {
        Prices.Sample(prices =>
        {
            var book = new PriceBook(prices.DistinctBy(price => (price.Material, price.Length, price.Treated)));
            var read = Good(PricesFile.ReadText(Text(to => PricesFile.Write(book, to)), "s"));
            read.All.Should().Equal(book.All);
        }, iter: 400);
    }

    [Fact]
    public void No_text_begins_as_a_formula_does()
    {
        Gen.Select(Written.Piece, Written.Bin).Sample((piece, bin) =>
        {
            using var csv = CsvReader.FromText(Text(to => StockFile.Write([piece], [bin], to)), new CsvReaderOptions { Separator = ',' });
            while (csv.Read())
                for (var i = 0; i < csv.FieldCount; i++)
                    csv.GetString(i).TrimStart(' ').Should().NotMatchRegex("^[=+@-]");
        }, iter: 100);

        var note = new Piece { Code = default, Material = MaterialReader.Read("2x4").Value, Length = Length.Feet(8), Note = "=1+1", Place = "@rack, \"A\"" };
        Text(to => StockFile.Write([note], [], to)).Split("\r\n")[1]
            .Should().Be(",2x4,\"96\"\"\",,sound,no,no,,,\"'@rack, \"\"A\"\"\",'=1+1,,,,no,no,no,,,,in yard,");
    }

    [Theory]
    [InlineData("=SUM(A1)", "'=SUM(A1)")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@x", "'@x")]
    [InlineData("'=x", "''=x")]
    [InlineData("'x", "'x")]
    [InlineData("''", "''")]
    [InlineData("x=1", "x=1")]
    [InlineData("", "")]
    public void A_mark_goes_on_and_exactly_that_mark_comes_off(string note, string cell)
    {
        var piece = new Piece { Code = default, Material = MaterialReader.Read("2x4").Value, Length = Length.Feet(8), Note = note };
        var text = Text(to => StockFile.Write([piece], [], to));

        text.Split("\r\n")[1].Split(',')[10].Should().Be(cell);
        Good(StockFile.ReadText(text, "s", CodePolicy.Checked)).Pieces.Single().Note.Should().Be(note);
    }

    [Fact]
    public void Lines_end_as_the_standard_says_and_the_header_comes_first()
    {
        var text = Text(to => StockFile.Write([], [], to));
        text.Should().Be("code,material,length,qty,condition,treated,stamped,bad,trim,place,note,width,unit,treated_with,nails,concrete,oiled,from_stage,cut_from,first_line,state,reserved_for\r\n");
        Text(to => CutsFile.Write([], to)).Should().Be("stage,cut,material,length,qty,longest,use,treated,rip,date\r\n");
        Text(to => PricesFile.Write(PriceBook.Empty, to)).Should().Be("material,length,price,treated,lead_days,limit,supplier,date\r\n");
    }

    private static Gen<Stage[]> Stages => Gen.Select(Written.Name, Written.Day, Cut.Array[1, 4], Need.Array[0, 3])
        .Select((name, date, cuts, needs) => new Stage(
            name,
            date,
            [.. cuts.DistinctBy(cut => cut.Name).Select(cut => cut with { Stage = name })],
            [.. needs.DistinctBy(need => need.Name).Where(need => cuts.All(cut => cut.Name != need.Name)).Select(need => need with { Stage = name })]))
        .Array[0, 4]
        .Select(stages => stages.DistinctBy(stage => stage.Name).ToArray());

    private static Gen<RequiredCut> Cut =>
        Gen.Select(Written.Name, Written.Material.Where(material => material is not Sheet), Written.Length, Written.Length, Gen.Int[1, 100_000], Gen.Enum<Use>(), Gen.Select(Gen.Enum<TreatedWish>(), Gen.Bool))
            .Select((name, material, a, b, count, use, more) => new RequiredCut
            {
                Stage = "",
                Name = name,
                Material = material,
                Shortest = Length.Min(a, b),
                Longest = Length.Max(a, b),
                Count = count,
                Use = use,
                Treated = more.Item1,
                Rip = more.Item2 && Ripping.Width(material) is not null,
            });

    private static Gen<HardwareNeed> Need =>
        Gen.Select(Written.Name, Written.Hardware, Gen.Int[1, 100_000]).Select((name, hardware, count) => new HardwareNeed("", name, hardware, count));

    private static Gen<StorePrice[]> Prices =>
        Gen.Select(Gen.Select(Written.Material, Written.Hardware, Gen.Bool), Written.Length, Gen.Int[0, 1_000_000], Gen.Bool, Gen.Int[-5, 90], Gen.Int[-5, 500], Written.Text, Written.Day)
            .Select((what, length, cents, treated, days, limit, supplier, date) => new StorePrice
            {
                Material = what.Item3 ? what.Item1 : what.Item2,
                Length = what.Item3 ? length : default,
                Price = new Money(cents),
                Treated = treated && what.Item3,
                LeadDays = days < 0 ? null : days,
                Limit = limit < 0 ? null : limit,
                Supplier = supplier,
                Date = date,
            })
            .Array[0, 8];

    private static string Text(Action<TextWriter> write)
    {
        var text = new StringWriter();
        write(text);
        return text.ToString();
    }

    private static T Good<T>(Result<T> read)
    {
        read.Faults.Should().BeEmpty();
        return read.Value;
    }

    // Records compare their lists by reference, so the bad spots are told as text.
    private static (Piece, string) Told(Piece piece) => (piece with { BadSpots = [] }, string.Join("; ", piece.BadSpots));
}
