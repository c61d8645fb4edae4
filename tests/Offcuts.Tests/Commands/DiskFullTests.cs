using Offcuts.UseCases;

namespace Offcuts.Tests.Commands;

/// <summary>Files for which there is no room: <c>/dev/full</c> is a device of Linux on which every write ends so.</summary>
public sealed class DiskFullTests : IDisposable
{
    private const string NoRoom = "there is no room left for /dev/full; what was there before is as it was\n";

    private readonly TryYard _yard = new();

    public DiskFullTests() => _yard.Must("add", "2x4 8'");

    public void Dispose() => _yard.Dispose();

    [Theory]
    [InlineData("export", "/dev/full")]
    [InlineData("label", "print", "/dev/full")]
    [InlineData("label", "blank", "3", "/dev/full")]
    public void Where_there_is_no_room_one_line_says_so_and_the_status_is_1(params string[] command)
    {
        if (!File.Exists("/dev/full")) return;
        var before = _yard.Must("history").Out;

        var told = _yard.Run(command);

        told.Status.Should().Be(1);
        told.Error.Should().Be(NoRoom);
        told.Out.Should().BeEmpty();
        _yard.Must("label", "list").Lines[^1].Should().Be("1 label to print; 0 blank labels printed and not yet used");
        _yard.Must("history").Out.Should().Be(before);
    }

    [Fact]
    public void What_the_disk_says_is_never_told_in_the_systems_own_words()
    {
        var full = new IOException("No space left on device : '/tmp/x'", 28);
        var other = new IOException("Input/output error : '/tmp/x'", 5);

        FileTrouble.IsFull(full).Should().BeTrue();
        FileTrouble.IsFull(other).Should().BeFalse();
        FileTrouble.Told(full).Sentence.Should().Be("there is no room left where this is written; it is not whole");
        FileTrouble.Told(other).Sentence.Should().Be("a file can't be read or written: its disk or its reader does not answer as it should");
        FileTrouble.Told(new PathTooLongException()).Sentence.Should().Be("the name of this file is too long");
    }

    [Fact]
    public void A_file_that_did_not_fit_leaves_the_old_one_as_it_was_and_nothing_beside_it()
    {
        var path = _yard.FileOf("stock.csv", "old\n");

        var write = () => WholeFile.Write(path, stream =>
        {
            stream.Write("half of it"u8);
            throw new IOException("No space left on device", 28);
        });

        write.Should().Throw<FileTroubleException>().Which.Fault.Sentence.Should().Be($"there is no room left for {path}; what was there before is as it was");
        File.ReadAllText(path).Should().Be("old\n");
        Directory.GetFiles(_yard.Folder, "*stock*").Should().ContainSingle();
    }
}
