using System.Text;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What is written never destroys what is there of another kind.</summary>
public sealed class WholeFileTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Theory]
    [InlineData("export")]
    [InlineData("price", "export")]
    [InlineData("label", "blank", "10")]
    public void A_yard_is_never_written_over(params string[] command)
    {
        _yard.Must("add", "2x4 8'");
        var before = _yard.Must("list").Out;

        var told = _yard.Run([.. command, _yard.YardPath]);

        told.Status.Should().Be(2);
        told.Error.Should().Be($"{_yard.YardPath} is a file of another kind, so it is not written over; name another file\n");
        _yard.Must("list").Out.Should().Be(before);
        Directory.GetFiles(_yard.Folder, ".*").Should().BeEmpty("what was written beside it is gone");
    }

    [Fact]
    public void A_text_is_not_written_over_a_pdf_nor_the_other_way_round()
    {
        var (pdf, text) = (_yard.FileOf("sheet.pdf", "%PDF-1.7 invented"), _yard.FileOf("notes.txt", "where the keys hang"));

        Writing(pdf, "a,b").Should().Throw<IOException>();
        Writing(text, "%PDF-1.4").Should().Throw<IOException>();
        Writing(pdf, "%PDF-1.4")();
        Writing(text, "a,b")();

        File.ReadAllText(pdf).Should().Be("%PDF-1.4");
        File.ReadAllText(text).Should().Be("a,b");
    }

    [Fact]
    public void A_link_stays_a_link()
    {
        var real = _yard.FileOf("real.csv", "old");
        var link = Path.Combine(_yard.Folder, "link.csv");
        File.CreateSymbolicLink(link, real);

        Writing(link, "new")();

        new FileInfo(link).LinkTarget.Should().Be(real);
        File.ReadAllText(real).Should().Be("new");
    }

    private static Action Writing(string path, string text) => () => WholeFile.Write(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)));
}
