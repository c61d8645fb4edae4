using Offcuts.Core.Faults;

namespace Offcuts.Core.Tests.Faults;

public sealed class FaultTests
{
    [Theory]
    [InlineData("", 0, 0, "it is wrong")]
    [InlineData("", 0, 5, "column 5: it is wrong")]
    [InlineData("", 3, 5, "line 3: column 5: it is wrong")]
    [InlineData("stock.csv", 0, 0, "stock.csv: it is wrong")]
    [InlineData("stock.csv", 3, 0, "stock.csv:3: it is wrong")]
    [InlineData("stock.csv", 3, 5, "stock.csv:3: column 5: it is wrong")]
    public void A_fault_says_where_and_what(string file, int line, int column, string text) =>
        new Fault("it is wrong", column, line, file).ToString().Should().Be(text);

    [Fact]
    public void A_shifted_fault_moves_right_and_one_without_a_column_stays()
    {
        new Fault("wrong", 5).Shift(3).Column.Should().Be(8);
        new Fault("wrong").Shift(3).Column.Should().Be(0);
    }

    [Fact]
    public void A_fault_at_a_line_keeps_its_own_column_unless_given_one()
    {
        new Fault("wrong", 5).At("a.csv", 2).Should().Be(new Fault("wrong", 5, 2, "a.csv"));
        new Fault("wrong", 5).At("a.csv", 2, 9).Should().Be(new Fault("wrong", 9, 2, "a.csv"));
    }

    [Fact]
    public void A_value_is_a_success()
    {
        Result<int> result = 5;
        result.Ok.Should().BeTrue();
        result.Value.Should().Be(5);
        result.Faults.Should().BeEmpty();
        result.TryGet(out var value).Should().BeTrue();
        value.Should().Be(5);
        result.Then<string>(number => number.ToString()).Value.Should().Be("5");
    }

    [Fact]
    public void A_fault_is_a_failure_and_is_handed_on()
    {
        Result<int> result = new Fault("wrong", 5);
        result.Ok.Should().BeFalse();
        result.Fault.Sentence.Should().Be("wrong");
        result.TryGet(out _).Should().BeFalse();
        result.Then<string>(number => number.ToString()).Faults.Should().Equal(new Fault("wrong", 5));
        var asking = () => result.Value;
        asking.Should().Throw<InvalidOperationException>().WithMessage("No value: column 5: wrong");
    }

    [Fact]
    public void A_failure_without_a_fault_cannot_be_made()
    {
        var making = () => Result<int>.Fail([]);
        making.Should().Throw<ArgumentException>();
    }

    [Fact]
    public void The_default_result_is_a_failure()
    {
        default(Result<int>).Ok.Should().BeFalse();
        default(Result<int>).Fault.Sentence.Should().Be("nothing was given");
    }

    [Fact]
    public void Sentences_show_what_was_typed_without_harm()
    {
        YardFaults.NoSuchCode("\u001b[2J").Sentence.Should().Be("no piece or bin has the code \\u001b[2J");
        YardFaults.NoSuchStage("a\nb").Sentence.Should().Be("there is no stage named a\\u000ab");
        LineFaults.WordUnknown("\u0007", "", 1).Sentence.Should().Be("\"\\u0007\" means nothing here");
    }

    [Fact]
    public void What_is_said_where_no_other_test_hears_it()
    {
        AppFaults.NoReport().Sentence.Should().Be("what was saved is whole; there was no room for a report of where it failed");
        AppFaults.TypedLies().Sentence.Should().Be("what was typed and not saved yet stands there too, to be typed again");
        AppFaults.TypedWas().Sentence.Should().Be("what was typed and not saved yet:");
        YardFaults.ActStopped().Sentence.Should().Be("stopped: nothing of it was saved, all is as it was");
        HandFaults.TheirFilesUnreadable().Sentence.Should().Be(
            "write which files tell what they need, each once: cuts and a file, or wall and a file, with system or prices and a file behind, like: cuts ann.csv prices ann-prices.csv");
        HandFaults.SettledUnreadable().Sentence.Should().Be(
            "write what does not come back, a colon, then what came in its place or nothing, like: K7F3MXX: nothing, or K7F3MXX: 2x4 5', or panel tie x12: nothing");
    }
}
