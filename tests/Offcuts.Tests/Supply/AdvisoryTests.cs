namespace Offcuts.Tests.Supply;

/// <summary>Known advisories are looked up in a folder of files; the versions and advisories here are invented.</summary>
public sealed class AdvisoryTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("offcuts-advisories-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Versions_stand_in_the_order_that_Semantic_Versioning_gives_them()
    {
        // Rule 11 of Semantic Versioning 2.0.0, with its own example in the middle.
        string[] order = ["0.9", "1.0.0-alpha", "1.0.0-alpha.1", "1.0.0-alpha.beta", "1.0.0-beta", "1.0.0-beta.2", "1.0.0-beta.11", "1.0.0-rc.1", "1.0.0", "1.0.0.1", "1.0.2", "1.0.10", "2.0.0-preview1-final", "2.0.0", "10.0.0"];

        for (var i = 0; i < order.Length; i++)
            for (var j = 0; j < order.Length; j++)
                Math.Sign(PackageVersion.Read(order[i])!.CompareTo(PackageVersion.Read(order[j]))).Should().Be(i.CompareTo(j), $"{order[i]} against {order[j]}");
    }

    [Theory]
    [InlineData("1.0", "1.0.0.0")]
    [InlineData("1.0.0-RC.1", "1.0.0-rc.1+built.today")]
    [InlineData("v3.1.0", "3.1")]
    public void Versions_that_are_the_same(string one, string other) => Equals(PackageVersion.Read(one), PackageVersion.Read(other)).Should().BeTrue();

    [Theory]
    [InlineData("")]
    [InlineData("1..2")]
    [InlineData("1.2.3.4.5")]
    [InlineData("1.x")]
    [InlineData("1.0.0-")]
    public void What_is_no_version(string text) => PackageVersion.Read(text).Should().BeNull();

    [Theory]
    [InlineData("[,2.1.11]", "2.1.11", true)]
    [InlineData("[,2.1.11]", "2.1.13", false)]
    [InlineData("[6.0.0,6.0.2),[7.0.0,7.0.2)", "6.0.2", false)]
    [InlineData("[6.0.0,6.0.2),[7.0.0,7.0.2)", "7.0.1", true)]
    [InlineData("(1.0,2.0)", "1.0.0", false)]
    [InlineData("(,)", "99.0", true)]
    [InlineData("[1.5]", "1.5.0", true)]
    [InlineData("[1.5]", "1.5.1", false)]
    [InlineData("[2.0.0-rc.1,2.0.0)", "2.0.0-rc.2", true)]
    public void A_range_holds_what_lies_between_its_ends(string range, string version, bool within) =>
        VersionRange.Read(range)!.Any(one => one.Holds(PackageVersion.Read(version)!)).Should().Be(within);

    [Theory]
    [InlineData("")]
    [InlineData("1.0")]
    [InlineData("(1.0)")]
    [InlineData("[1.0,2.0,3.0]")]
    [InlineData("[one,2.0)")]
    public void What_is_no_range(string text) => VersionRange.Read(text).Should().BeNull();

    [Fact]
    public void An_advisory_in_the_OSV_format_concerns_the_versions_between_its_events_and_those_it_names()
    {
        Put("planted.json", """
            {"id": "PLANTED-1", "modified": "2026-02-03T04:05:06Z", "affected": [
              {"package": {"ecosystem": "NuGet", "name": "Planted.Package"},
               "ranges": [{"type": "ECOSYSTEM", "events": [{"introduced": "0"}, {"fixed": "1.2.0"}, {"introduced": "2.0.0"}, {"last_affected": "2.1.0"}]}],
               "versions": ["3.0.0-preview.1"]},
              {"package": {"ecosystem": "NuGet", "name": "Planted.NoFix"},
               "ranges": [{"type": "ECOSYSTEM", "events": [{"introduced": "1.0"}]}], "database_specific": {"last_known_affected_version_range": "<= 1.4.0"}},
              {"package": {"ecosystem": "NuGet", "name": "Planted.NoEnd"}, "ranges": [{"type": "ECOSYSTEM", "events": [{"introduced": "1.0"}]}]},
              {"package": {"ecosystem": "npm", "name": "planted"}, "ranges": []}]}
            """);

        var read = AdvisoryFolder.Read(folder);

        read.Unread.Should().BeEmpty();
        read.Advisories.Select(one => one.Package).Should().Equal("Planted.Package", "Planted.NoFix", "Planted.NoEnd");
        string[] Hit(int at, params string[] versions) => [.. versions.Where(read.Advisories[at].Concerns)];
        Hit(0, "1.1.9", "1.2.0", "1.9", "2.0.0", "2.1.0", "2.1.1", "3.0.0-preview.1", "3.0.0").Should().Equal("1.1.9", "2.0.0", "2.1.0", "3.0.0-preview.1");
        Hit(1, "0.9", "1.4.0", "1.4.1").Should().Equal("1.4.0");
        Hit(2, "0.9", "1.0.0", "77.0").Should().Equal("1.0.0", "77.0");
        read.Advisories[0].Written.Should().Be(new DateOnly(2026, 2, 3));
    }

    [Fact]
    public void An_advisory_in_YAML_concerns_the_versions_of_its_ranges()
    {
        Put("planted.yml", "identifier: \"PLANTED-2\"\npackage_slug: \"nuget/Planted.Package\"\ntitle: \"x\"\ndate: \"2026-03-04\"\npubdate: \"2026-01-02\"\naffected_range: \"[,1.0.0),[2.0.0,2.0.5]\"\n");
        Put("other.yml", "identifier: \"OTHER-1\"\npackage_slug: \"npm/planted\"\naffected_range: \"<1.0\"\n");

        var read = AdvisoryFolder.Read(folder);

        read.Unread.Should().BeEmpty();
        var one = read.Advisories.Should().ContainSingle().Subject;
        (one.Id, one.Package, one.Written).Should().Be(("PLANTED-2", "Planted.Package", new DateOnly(2026, 3, 4)));
        new[] { "0.1", "1.0.0", "2.0.5", "2.0.6" }.Where(one.Concerns).Should().Equal("0.1", "2.0.5");
    }

    [Fact]
    public void A_withdrawn_advisory_concerns_nothing_and_is_counted()
    {
        Put("gone.json", """{"id": "PLANTED-3", "withdrawn": "2026-01-01T00:00:00Z", "affected": [{"package": {"ecosystem": "NuGet", "name": "Planted.Package"}, "versions": ["1.0"]}]}""");

        var read = AdvisoryFolder.Read(folder);

        (read.Advisories.Count, read.Withdrawn).Should().Be((0, 1));
    }

    [Theory]
    [InlineData("x.json", """{"id": "P", "affected": [{"package": {"ecosystem": "NuGet", "name": "P"}, "ranges": [{"events": [{"introduced": "one"}]}]}]}""")]
    [InlineData("x.json", """{"id": "P", "affected": [{"package": {"ecosystem": "NuGet", "name": "P"}, "ranges": [{"events": [{"fixed": "1.0"}]}]}]}""")]
    [InlineData("x.yml", "identifier: \"P\"\npackage_slug: \"nuget/P\"\naffected_range: \"below 2\"\n")]
    [InlineData("x.yml", "identifier: \"P\"\npackage_slug: \"nuget/P\"\n")]
    public void Versions_that_cannot_be_understood_concern_every_version_so_that_somebody_looks(string name, string text)
    {
        Put(name, text);

        AdvisoryFolder.Read(folder).Advisories.Should().ContainSingle().Which.Concerns("77.0").Should().BeTrue();
    }

    [Theory]
    [InlineData("x.json", "{ not json")]
    [InlineData("x.json", """{"id": "P", "affected": [{"package": "P"}]}""")]
    [InlineData("x.yml", "package_slug: \"nuget/P\"\naffected_range: \"(,2.0)\"\n")]
    public void A_file_that_cannot_be_understood_is_named_since_nothing_is_known_then(string name, string text)
    {
        Put(name, text);

        AdvisoryFolder.Read(folder).Unread.Should().Equal(Path.Combine(folder, name));
    }

    [Fact]
    public void Every_package_of_every_locked_file_is_asked_about_with_its_version()
    {
        var locked = LockedPackages.Read(SupplyTests.Root());

        locked.Select(one => one.Id).Should().Contain(["Microsoft.Data.Sqlite", "SQLitePCLRaw.lib.e_sqlite3", "xunit.core", "System.Drawing.Common", "CycloneDX"]);
        locked.Should().OnlyHaveUniqueItems().And.OnlyContain(one => PackageVersion.Read(one.Version) != null);
    }

    [Fact]
    public void A_planted_package_with_a_known_advisory_is_found_in_whatever_letters_it_is_written()
    {
        Put("planted.yml", "identifier: \"PLANTED-2\"\npackage_slug: \"nuget/Planted.Package\"\naffected_range: \"(,1.0.0)\"\n");

        var read = AdvisoryFolder.Read(folder);

        LockedPackages.Known(read, [new("planted.package", "0.9"), new("planted.package", "1.0.0"), new("Other", "0.9")]).Select(hit => hit.Package.Version).Should().Equal("0.9");
    }

    /// <summary>CVE-2025-6965 is of every SQLite older than 3.50.2 (https://www.sqlite.org/cves.html).</summary>
    [Fact]
    public void The_SQLite_that_the_program_carries_is_at_least_3_50_2()
    {
        using var connection = new Microsoft.Data.Sqlite.SqliteConnection("Data Source=:memory:");
        connection.Open();

        PackageVersion.Read(connection.ServerVersion)!.CompareTo(PackageVersion.Read("3.50.2")).Should().BeGreaterThanOrEqualTo(0, connection.ServerVersion);
    }

    private void Put(string name, string text) => File.WriteAllText(Path.Combine(folder, name), text);
}
