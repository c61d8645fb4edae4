using Offcuts.Core.Measures;
using QRCoder;

namespace Offcuts.Print.Tests;

public sealed class QrTests
{
    private const string Source = "ISO/IEC 18004";

    /// <summary>Alphanumeric capacities. Source: ISO/IEC 18004.</summary>
    [Theory]
    [InlineData(1, 21, 25, 20, 16, 10)]
    [InlineData(2, 25, 47, 38, 29, 20)]
    [InlineData(3, 29, 77, 61, 47, 35)]
    [InlineData(4, 33, 114, 90, 67, 50)]
    public void A_version_holds_as_many_alphanumeric_characters_as_the_standard_says(int version, int modules, int l, int m, int q, int h)
    {
        foreach (var (level, capacity) in new[]
        {
            (QRCodeGenerator.ECCLevel.L, l), (QRCodeGenerator.ECCLevel.M, m), (QRCodeGenerator.ECCLevel.Q, q), (QRCodeGenerator.ECCLevel.H, h),
        })
        {
            QRCodeGenerator.GenerateQrCode(new string('A', capacity), level).Version.Should().Be(version, Source);
            QRCodeGenerator.GenerateQrCode(new string('A', capacity + 1), level).Version.Should().Be(version + 1, Source);
            (QRCodeGenerator.GenerateQrCode(new string('A', capacity), level).ModuleMatrix.Count - 8).Should().Be(modules, Source);
        }
    }

    [Fact]
    public void The_standards_alphanumeric_set_has_upper_case_figures_and_nine_signs()
    {
        // Source: ISO/IEC 18004: 0-9 A-Z space $ % * + - . / :
        foreach (var character in "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:")
            QRCodeGenerator.GenerateQrCode(new string(character, 25), QRCodeGenerator.ECCLevel.L).Version.Should().Be(1, $"'{character}' is in the set");
        QRCodeGenerator.GenerateQrCode(new string('a', 25), QRCodeGenerator.ECCLevel.L).Version.Should().Be(2, "small letters are not");
    }

    [Fact]
    public void A_code_fits_version_1_at_level_Q()
    {
        // 8 + 7 characters of at most 16. Source: ISO/IEC 18004.
        var code = Invented.Code("C99MFXY");

        code.QrText.Should().Be("OFFCUTS:C99MFXY").And.HaveLength(15);
        QrSymbol.Size.Should().Be(21);
        QrSymbol.QuietZone.Should().Be(4);
        QrSymbol.FullSize.Should().Be(29);
    }

    [Fact]
    public void An_independent_reader_finds_the_text_and_level_Q()
    {
        var symbol = QrSymbol.Of(Invented.Code("C99MFXY"));

        var read = Picture.OfModules(Modules(symbol), 6).Decode();

        read!.Text.Should().Be("OFFCUTS:C99MFXY");
        read.ResultMetadata[ZXing.ResultMetadataType.ERROR_CORRECTION_LEVEL].Should().Be("Q");
    }

    [Fact]
    public void Every_code_drawn_by_chance_reads_back()
    {
        var luck = new Random(20261125);
        for (var i = 0; i < 200; i++)
        {
            var code = Core.Yard.Code.Draw(luck.Next);
            Picture.OfModules(Modules(QrSymbol.Of(code)), 4).Read().Should().Be(code.QrText);
        }
    }

    [Fact]
    public void A_symbol_with_a_torn_corner_still_reads()
    {
        // Level Q restores about a quarter. The lower right corner holds data only, no finder.
        var code = Invented.Code("C99MFXY");
        var picture = Picture.OfModules(Modules(QrSymbol.Of(code)), 6);

        picture.Whiten((29 - 4 - 5) * 6, (29 - 4 - 5) * 6, 5 * 6, 5 * 6);

        picture.Read().Should().Be("OFFCUTS:C99MFXY");
    }

    [Fact]
    public void The_quiet_zone_is_light_on_all_sides()
    {
        var symbol = QrSymbol.Of(Invented.Code("C99MFXY"));

        var outside =
            from row in Enumerable.Range(-4, 29)
            from column in Enumerable.Range(-4, 29)
            where row is < 0 or > 20 || column is < 0 or > 20
            select symbol[row, column];
        outside.Should().HaveCount(29 * 29 - 21 * 21).And.NotContain(true);
        symbol[0, 0].Should().BeTrue("a finder begins right at the corner");
        symbol[0, 20].Should().BeTrue();
        symbol[20, 0].Should().BeTrue();
    }

    [Fact]
    public void Blocks_cover_each_dark_module_once_and_no_light_one()
    {
        var symbol = QrSymbol.Of(Invented.Code("C99MFXY"));
        var covered = new int[21, 21];

        foreach (var block in symbol.Blocks())
            for (var row = block.Row; row < block.Row + block.Height; row++)
                for (var column = block.Column; column < block.Column + block.Width; column++)
                    covered[row, column]++;

        for (var row = 0; row < 21; row++)
            for (var column = 0; column < 21; column++)
                covered[row, column].Should().Be(symbol[row, column] ? 1 : 0, $"row {row}, column {column}");
    }

    [Fact]
    public void Blocks_join_runs_that_lie_below_each_other()
    {
        // The heart of a finder is 3 x 3 dark modules.
        QrSymbol.Of(Invented.Code("C99MFXY")).Blocks().Should().Contain(new QrBlock(2, 2, 3, 3));
    }

    [Fact]
    public void No_code_has_no_symbol()
    {
        FluentActions.Invoking(() => QrSymbol.Of(default)).Should().Throw<ArgumentException>();
    }

    [Fact]
    public void Module_sizes_of_the_layouts_meet_the_published_figures()
    {
        // GS1 General Specifications, retail: a module is 0.396 to 0.990 mm, so 29 modules and two quiet zones of 4 are 14.652 mm at least.
        (0.396m * (29 + 2 * 4)).Should().Be(14.652m);
        LabelLayout.LeastModule.InMillimetres.Should().Be(0.5m).And.BeGreaterThan(0.396m);
        LabelLayout.GoodModule.InMillimetres.Should().Be(0.75m, "advice without a source");
        LabelLayout.Shipped.Should().OnlyContain(layout => layout.Module >= LabelLayout.GoodModule);
        LabelLayout.Shipped.Should().OnlyContain(layout => layout.QrSide > Length.Millimetres(14.652m - 0.002m));
    }

    private static bool[][] Modules(QrSymbol symbol) =>
        [.. Enumerable.Range(-4, 29).Select(row => Enumerable.Range(-4, 29).Select(column => symbol[row, column]).ToArray())];
}
