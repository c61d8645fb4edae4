using System.Diagnostics;

namespace Offcuts.Tests.Commands;

/// <summary>A test that mounts a small disk of its own: Linux, as its superuser; skipped elsewhere, by name.</summary>
public sealed class OwnDiskFactAttribute : FactAttribute
{
    public OwnDiskFactAttribute()
    {
        if (!OperatingSystem.IsLinux() || !Environment.IsPrivilegedProcess) Skip = "only the superuser of Linux may mount a disk";
    }
}

/// <summary>Real disks that are full, or may only be read, and several programs at once on one yard.</summary>
public sealed class FaultTests : IDisposable
{
    private readonly TryYard _yard = new();

    public void Dispose() => _yard.Dispose();

    [OwnDiskFact]
    public void On_a_full_disk_a_first_save_leaves_nothing_and_a_later_one_loses_nothing()
    {
        using var disk = new SmallDisk(_yard.Folder, "size=700k");
        var yard = Path.Combine(disk.Folder, "yard.offcuts");
        var filler = Path.Combine(disk.Folder, "filler");
        Fill(filler);

        var first = On(yard, "add", "2x4 8'");
        first.Status.Should().Be(3);
        first.Error.Should().Be($"there is no room left to save in {yard}; nothing of this change was saved, all that was saved before is still there\n");
        Directory.GetFiles(disk.Folder).Should().Equal(filler);

        File.Delete(filler);
        On(yard, "add", "2x4 8'").Status.Should().Be(0);
        Fill(filler);
        var later = On(yard, "add", "--yes", "2x4 " + string.Join(", ", Enumerable.Range(60, 120).Select(i => $"{i}\"")) + " note: " + new string('n', 400));
        later.Status.Should().Be(3, later.Out);
        later.Error.Should().Contain("there is no room left to save in ").And.NotContain("SQLite");

        File.Delete(filler);
        On(yard, "list").Lines[^1].Should().Be("1 piece, 0 bins");
        On(yard, "check").Out.Should().StartWith("Whole: 1 piece");
        On(yard, "backup").Error.Should().Contain("there is too little room left for one in ");
    }

    [OwnDiskFact]
    public void On_a_disk_that_may_only_be_read_a_change_is_refused_in_our_words_and_the_yard_stays()
    {
        using var disk = new SmallDisk(_yard.Folder, "size=4m");
        var yard = Path.Combine(disk.Folder, "yard.offcuts");
        On(yard, "add", "2x4 8'").Status.Should().Be(0);
        disk.Mount("remount,ro");

        var told = On(yard, "add", "2x4 9'");
        disk.Mount("remount,rw");

        told.Status.Should().Be(3);
        told.Error.Should().Be($"{yard} or its folder may only be read, not written; nothing was changed\n");
        On(yard, "list").Lines[^1].Should().Be("1 piece, 0 bins");
        On(yard, "check").Status.Should().Be(0);
    }

    [Theory]
    [InlineData(2, 6)]
    [InlineData(8, 2)]
    public void Of_several_programs_that_save_at_once_each_waits_and_none_loses_anything(int programs, int changes)
    {
        _yard.Must("add", "2x4 8'");
        var saved = 0;
        var odd = new List<string>();
        Parallel.For(0, programs, new ParallelOptions { MaxDegreeOfParallelism = programs }, program =>
        {
            for (var i = 0; i < changes; i++)
            {
                var told = _yard.RunProcess(null, "add", $"2x4 {20 + program * 10 + i}\"", "--yes", "--yard", _yard.YardPath);
                lock (odd)
                {
                    if (told.Status == 0) saved++;
                    // On a machine that is busy elsewhere it may wait its five seconds for nothing; then it says so and has saved nothing.
                    else if (told.Status != 3 || !told.Error.Contains("is in use by another program; nothing was changed", StringComparison.Ordinal)) odd.Add(told.Error);
                }
            }
        });

        odd.Should().BeEmpty();
        saved.Should().BeGreaterThan(0);
        _yard.Must("list").Lines[^1].Should().Be($"{saved + 1} pieces, 0 bins");
        _yard.Must("check").Out.Should().StartWith($"Whole: {saved + 1} pieces, gone or not, and {saved + 1} entries of history");
    }

    private Told On(string yard, params string[] arguments) => _yard.RunProcess(null, [.. arguments, "--yard", yard]);

    private static void Fill(string path)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
            var page = new byte[4096];
            while (true) stream.Write(page);
        }
        catch (IOException)
        {
            // Full.
        }
    }

    private sealed class SmallDisk : IDisposable
    {
        public SmallDisk(string below, string size)
        {
            Folder = Directory.CreateDirectory(Path.Combine(below, "disk")).FullName;
            Run("mount", "-t", "tmpfs", "-o", size, "tmpfs", Folder).Should().Be(0);
        }

        public string Folder { get; }

        public void Mount(string options) => Run("mount", "-o", options, Folder).Should().Be(0);

        public void Dispose() => Run("umount", "-l", Folder);

        private static int Run(string program, params string[] arguments)
        {
            using var process = Process.Start(program, arguments);
            process.WaitForExit();
            return process.ExitCode;
        }
    }
}
