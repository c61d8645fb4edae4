namespace Offcuts.Store.Tests;

public sealed class LocationTests
{
    private static readonly string Usual = Path.Combine("data", "offcuts", "yard.offcuts");

    [Fact]
    public void The_file_named_on_the_command_line_goes_first() =>
        YardLocation.Resolve("here.offcuts", _ => "there.offcuts", "data").Should().Be("here.offcuts");

    [Fact]
    public void Then_the_one_named_in_the_environment() =>
        YardLocation.Resolve(null, name => name == "OFFCUTS_YARD" ? "there.offcuts" : null, "data").Should().Be("there.offcuts");

    [Fact]
    public void Else_it_lies_in_the_users_data_folder() =>
        YardLocation.Resolve(null, _ => null, "data").Should().Be(Usual);

    [Fact]
    public void An_empty_name_counts_as_none() =>
        YardLocation.Resolve("", _ => "", "data").Should().Be(Usual);
}
