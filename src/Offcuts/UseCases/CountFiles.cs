using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Reading;

namespace Offcuts.UseCases;

/// <summary>What one picture or one scanner's file shows, before the yard is asked what it means.</summary>
/// <param name="Name">The file as it was named.</param>
/// <param name="Folder">Name of the folder it lies in; may be the name of a place.</param>
/// <param name="Labels">Codes in it: in a picture in no order, in a scanner's file line by line.</param>
/// <param name="IsPicture">True for a picture.</param>
/// <param name="Foreign">QR symbols, or lines, that are no label of Offcuts. What they say is kept nowhere.</param>
/// <param name="Trouble">Why it could not be read; null where it was.</param>
public sealed record CountedFile(string Name, string Folder, IReadOnlyList<ScannedLabel> Labels, bool IsPicture, int Foreign = 0, Fault? Trouble = null);

/// <summary>A label in a file.</summary>
/// <param name="Code">What it says.</param>
/// <param name="Place">The place that a scanner's file named by a line before it; empty where none.</param>
/// <param name="Line">Which of such lines that was, from 1; 0 where none. One that names the same place again is another.</param>
public sealed record ScannedLabel(Code Code, string Place = "", int Line = 0);

/// <summary>How far reading has come.</summary>
/// <param name="Done">Files read.</param>
/// <param name="Of">Files there are.</param>
/// <param name="Name">The one read last.</param>
public readonly record struct CountProgress(int Done, int Of, string Name);

/// <summary>
/// Reads pictures and scanners' files, several at once. What can't be read is named and the rest goes on. Pictures in work together have
/// at most as many bytes, and take at most as much memory, as the largest that is read, so that memory stays bounded.
/// </summary>
public static class CountFiles
{
    /// <summary>Most files of one count.</summary>
    public const int MostFiles = 10_000;

    // Files of any kind that are looked through in a folder.
    private const int MostSeen = 200_000;

    private static readonly string[] OfPictures = [".jpg", ".jpeg", ".png"];

    private static readonly string[] Endings = [.. OfPictures, ".txt", ".csv"];

    /// <summary>The files that are meant: those named, and in a folder, and in folders in it, every picture, .txt and .csv file, by name.</summary>
    /// <param name="paths">Files and folders.</param>
    /// <param name="stop">Ends the walk through folders; <see cref="OperationCanceledException"/> is thrown then.</param>
    public static Result<IReadOnlyList<string>> Named(IEnumerable<string> paths, CancellationToken stop = default)
    {
        var files = new List<string>();
        foreach (var path in paths)
        {
            // No file has such a name, and the system takes none.
            if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal)) return CountFaults.NothingToCount();
            if (!Directory.Exists(path))
            {
                files.Add(path);
                continue;
            }

            var options = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint, IgnoreInaccessible = true };
            var (found, seen) = (new List<string>(), 0);
            foreach (var file in Directory.EnumerateFiles(path, "*", options))
            {
                stop.ThrowIfCancellationRequested();

                // Who names the root of a disk means something else.
                if (found.Count > MostFiles || ++seen > MostSeen) return CountFaults.TooManyFiles(MostFiles);
                if (Endings.Contains(Path.GetExtension(file).ToLowerInvariant()) && !Path.GetFileName(file).StartsWith('.')) found.Add(file);
            }

            files.AddRange(found.Order(StringComparer.Ordinal));
        }

        if (files.Count == 0) return CountFaults.NothingToCount();
        return files.Count > MostFiles ? CountFaults.TooManyFiles(MostFiles) : files.Distinct().ToArray();
    }

    /// <summary>Reads every file.</summary>
    /// <param name="files">Their paths, as <see cref="Named"/> gives them.</param>
    /// <param name="progress">Told of each file, on any thread, never two at once.</param>
    /// <param name="stop">Ends it; <see cref="OperationCanceledException"/> is thrown then.</param>
    public static IReadOnlyList<CountedFile> Read(IReadOnlyList<string> files, Action<CountProgress>? progress = null, CancellationToken stop = default)
    {
        var read = new CountedFile[files.Count];
        var (done, telling) = (0, new Lock());
        using var room = new PictureRoom();
        Parallel.For(0, files.Count, new ParallelOptions { MaxDegreeOfParallelism = Math.Clamp(Environment.ProcessorCount, 1, 4), CancellationToken = stop }, i =>
        {
            read[i] = One(files[i], room, stop);
            lock (telling) progress?.Invoke(new CountProgress(++done, files.Count, files[i]));
        });
        return read;
    }

    private static CountedFile One(string path, PictureRoom room, CancellationToken stop)
    {
        var folder = Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(path))) ?? "";
        try
        {
            if (!File.Exists(path)) return Broken(CountFaults.NotFound());
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            var first = new byte[12];
            var begin = first.AsSpan(0, stream.ReadAtLeast(first, first.Length, throwOnEndOfStream: false));
            if (!PictureFile.IsPicture(begin) && !PictureFile.IsPhonesOther(begin))
            {
                // An empty file or one that was spoiled while it was copied is no list of no labels.
                if (OfPictures.Contains(Path.GetExtension(path).ToLowerInvariant())) return Broken(stream.Length == 0 ? CountFaults.PictureEmpty() : CountFaults.PictureKind());
                var scanned = ScannedText.Read(begin, stream);
                return scanned.Ok ? new CountedFile(path, folder, scanned.Value.Labels, IsPicture: false, scanned.Value.Foreign) : Broken(scanned.Fault);
            }

            if (stream.Length > PictureFile.MostMegabytes * 1_000_000L) return Broken(CountFaults.PictureTooManyBytes(PictureFile.MostMegabytes));
            using var held = room.Files.Take(stream.Length, stop);
            var bytes = new byte[Math.Max(stream.Length, begin.Length)];
            begin.CopyTo(bytes);
            stream.ReadExactly(bytes.AsSpan(Math.Min(begin.Length, bytes.Length)));
            var working = PictureFile.WorkingBytes(bytes);
            if (!working.Ok) return Broken(working.Fault);
            using var worked = room.Working.Take(working.Value, stop);
            var picture = LabelPicture.Read(bytes, stop);
            room.Leave(stream.Length + working.Value);
            return picture.TryGet(out var seen)
                ? new CountedFile(path, folder, [.. seen.Labels.Select(label => new ScannedLabel(label.Code))], IsPicture: true, seen.Foreign)
                : Broken(picture.Fault);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Broken(CountFaults.CannotOpen());
        }
        catch (OutOfMemoryException)
        {
            // One picture too many for this machine does not end the count of the others.
            return Broken(CountFaults.PictureNoMemory());
        }

        CountedFile Broken(Fault fault) => new(path, folder, [], IsPicture: true, Trouble: fault);
    }

    /// <summary>
    /// Room for pictures in work at once, for their bytes and for what decoding takes: one of the largest, or several smaller ones. Room for
    /// the bytes is taken first and kept; who has room for decoding waits for nothing more, so nobody waits for ever.
    /// </summary>
    private sealed class PictureRoom : IDisposable
    {
        private const long MostLeft = 100_000_000;
        private long _left;

        public Room Files { get; } = new(PictureFile.MostMegabytes * 1_000_000L);

        public Room Working { get; } = new(PictureFile.MostWorkingMegabytes * 1_000_000L);

        /// <summary>
        /// What was taken for a picture is done with. Arrays that large are swept up late by themselves: several pictures of 48 megapixels
        /// would lie there at once. So they are swept up each time some have gathered.
        /// </summary>
        public void Leave(long bytes)
        {
            if (Interlocked.Add(ref _left, bytes) < MostLeft) return;
            Interlocked.Exchange(ref _left, 0);
            GC.Collect();
        }

        public void Dispose()
        {
            Files.Dispose();
            Working.Dispose();
        }
    }

    /// <summary>Room for so many bytes.</summary>
    private sealed class Room(long size) : IDisposable
    {
        private readonly Lock _changing = new();
        private readonly ManualResetEventSlim _freed = new();
        private long _free = size;

        public IDisposable Take(long bytes, CancellationToken stop)
        {
            while (true)
            {
                lock (_changing)
                {
                    if (_free >= bytes)
                    {
                        _free -= bytes;
                        return new Taken(this, bytes);
                    }

                    _freed.Reset();
                }

                _freed.Wait(stop);
            }
        }

        public void Dispose() => _freed.Dispose();

        private void Give(long bytes)
        {
            lock (_changing)
            {
                _free += bytes;
                _freed.Set();
            }
        }

        private sealed class Taken(Room room, long bytes) : IDisposable
        {
            public void Dispose() => room.Give(bytes);
        }
    }
}
