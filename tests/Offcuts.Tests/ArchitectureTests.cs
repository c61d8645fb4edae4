using System.Reflection;
using NetArchTest.Rules;

namespace Offcuts.Tests;

/// <summary>Arrows point one way. Each room may use the rooms and packages named here and nothing else.</summary>
public sealed class ArchitectureTests
{
    private static readonly Assembly Core = typeof(Offcuts.Core.Measures.Length).Assembly;
    private static readonly Assembly Matching = Assembly.Load("Offcuts.Matching");
    private static readonly Assembly Walls = Assembly.Load("Offcuts.Walls");
    private static readonly Assembly Store = Assembly.Load("Offcuts.Store");
    private static readonly Assembly Print = Assembly.Load("Offcuts.Print");
    private static readonly Assembly Reading = Assembly.Load("Offcuts.Reading");

    public static TheoryData<string, string[]> Rooms => new()
    {
        { "Offcuts.Core", [] },
        { "Offcuts.Matching", ["Offcuts.Core", "Google.OrTools", "Google.Protobuf"] },
        { "Offcuts.Walls", ["Offcuts.Core"] },
        { "Offcuts.Store", ["Offcuts.Core", "Microsoft.Data.Sqlite", "Dapper", "CsvHelper", "SQLitePCLRaw.core", "SQLitePCLRaw.provider.e_sqlite3", "SQLitePCLRaw.batteries_v2"] },
        { "Offcuts.Print", ["Offcuts.Core", "QRCoder", "PdfSharp", "PdfSharp.System", "PdfSharp.Shared", "Wcwidth"] },
        { "Offcuts.Reading", ["Offcuts.Core", "StbImageSharp", "zxing"] },
    };

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_refers_only_to_the_rooms_and_packages_named_for_it(string room, string[] allowed)
    {
        var references = Assembly.Load(room).GetReferencedAssemblies()
            .Select(reference => reference.Name!)
            .Where(name => !IsFramework(name));

        references.Except(allowed).Should().BeEmpty();
    }

    [Fact]
    public void The_heart_touches_no_file_terminal_network_or_database()
    {
        foreach (var room in new[] { Core, Matching, Walls, Reading })
        {
            var result = Types.InAssembly(room)
                .ShouldNot()
                .HaveDependencyOnAny(
                    "System.IO.File", "System.IO.Directory", "System.IO.FileStream", "System.Console", "System.Net",
                    "System.Data", "System.Diagnostics.Process", "System.Diagnostics.Stopwatch")
                .GetResult();

            result.FailingTypes.Select(type => type.FullName).Should().BeEmpty($"{room.GetName().Name} is pure");
        }
    }

    [Fact]
    public void Only_the_matching_room_knows_the_solver()
    {
        foreach (var room in new[] { Core, Walls, Store, Print, Reading, Assembly.Load("offcuts") })
            room.GetReferencedAssemblies().Should().NotContain(reference => reference.Name == "Google.OrTools");
    }

    [Fact]
    public void Every_type_is_sealed_static_or_meant_to_be_inherited()
    {
        // Material is the one family tree of the heart.
        var open = new[] { Core, Matching, Walls, Store, Print, Reading }
            .SelectMany(room => room.GetExportedTypes())
            .Where(type => type is { IsClass: true, IsSealed: false, IsAbstract: false })
            .Select(type => type.FullName);

        open.Should().BeEmpty();
    }

    private static bool IsFramework(string name) =>
        name is "mscorlib" or "netstandard" or "System" || name.StartsWith("System.", StringComparison.Ordinal) || name.StartsWith("Microsoft.Win32", StringComparison.Ordinal);
}
