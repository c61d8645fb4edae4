using System.Diagnostics;

namespace Offcuts.Tests.Commands;

/// <summary>When a yard file comes about, which one is meant, and what several programs do that make or fill it at one moment.</summary>
public sealed class YardMadeTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [Theory]
    [InlineData("add", "2x4 8'q")]
    [InlineData("add", "--look", "2x4 8'")]
    [InlineData("mark", "used", "K7F3MXX")]
    [InlineData("undo")]
    [InlineData("settings")]
    [InlineData("settings", "unit", "cubits")]
    public void What_saves_nothing_makes_no_yard(params string[] command)
    {
        _yard.Run(command);

        Directory.GetFileSystemEntries(_yard.Folder).Should().BeEmpty();
    }

    [Fact]
    public void The_first_thing_that_is_saved_makes_it()
    {
        _yard.Run("add", "2x4 8'q");
        _yard.Must("add", "2x4 8'");

        _yard.Must("list").Lines[^1].Should().Be("1 piece, 0 bins");
        _yard.Must("history").Lines.Should().HaveCount(2, "the heading, and one entry");
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    public void An_empty_name_of_a_yard_is_refused_and_not_taken_for_none(string name)
    {
        var other = Path.Combine(_yard.Folder, "other.offcuts");

        var told = _yard.RunProcess(new Dictionary<string, string> { ["OFFCUTS_YARD"] = other }, "add", "2x4 8'", "--yard", name);

        told.Status.Should().Be(2);
        told.Error.Should().Be("--yard is empty; name a file, or leave --yard out for the one of OFFCUTS_YARD or in your data folder\n");
        File.Exists(other).Should().BeFalse();
    }

    [Fact]
    public async Task Four_programs_that_catalogue_at_one_moment_all_wait_for_their_turn()
    {
        const int programs = 4;
        var told = await Task.WhenAll(Enumerable.Range(1, programs).Select(i => Task.Run(() => _yard.RunProcess(null, "add", $"2x4 8' x{i}", "--yard", _yard.YardPath))));

        foreach (var one in told)
        {
            one.Status.Should().BeOneOf([0, 3], one.Error);
            if (one.Status == 3) one.Error.Should().Be($"{_yard.YardPath} is in use by another program; nothing was changed, try again in a moment\n");
        }

        var done = told.Select((one, i) => one.Status == 0 ? i + 1 : 0).ToArray();
        done.Sum().Should().BePositive();
        _yard.Must("list").Lines[^1].Should().StartWith($"{done.Sum()} piece");
        _yard.Must("history").Lines.Should().HaveCount(1 + done.Count(pieces => pieces > 0));
    }
}
