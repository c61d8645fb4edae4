using System.Diagnostics;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Core.Yard;
using Offcuts.Reading;
using Offcuts.Reading.Tests;
using Offcuts.UseCases;
using ZXing;
using ZXing.Common;
using ZXing.Multi.QrCode;

namespace Offcuts.Benchmarks.Pictures;

/// <summary>
/// How long pictures of 12 or 48 megapixels take to be read, and how many of their labels are found: by the program, and by the library's own
/// search alone. The photographs are made by arithmetic from seeds; no camera took them.
/// </summary>
internal static class PictureTimes
{
    private const int Columns = 6;
    private const int Rows = 7;
    private const int Different = 5;

    /// <summary>Measures so many pictures, among them five different ones, and prints the figures. Exits with 1 where fewer than 98 of 100 labels were found.</summary>
    public static int Run(Options options, int pictures)
    {
        // Four times the pixels show the same labels, each module over twice as many.
        var (width, height, module) = options.Large48 ? (8000, 6000, 11.0) : (4000, 3000, 5.5);
        var folder = Directory.CreateTempSubdirectory("offcuts-pictures-").FullName;
        try
        {
            var racks = Enumerable.Range(1, Different).Select(seed => Photo.Rack(seed, width, height, module, Columns, Rows)).ToArray();
            var files = racks.Select(rack => rack.Photo.Jpeg(85)).ToArray();
            for (var i = 0; i < pictures; i++) File.WriteAllBytes(Path.Combine(folder, $"{i:0000}.jpg"), files[i % Different]);
            var named = CountFiles.Named([folder]).Value;
            CountFiles.Read([.. named.Take(1)]);

            var (before, watch) = (Process.GetCurrentProcess().TotalProcessorTime, Stopwatch.StartNew());
            var read = CountFiles.Read(named);
            watch.Stop();
            var spent = Process.GetCurrentProcess().TotalProcessorTime - before;

            var (there, found) = (0, 0);
            for (var i = 0; i < pictures; i++)
            {
                var codes = racks[i % Different].Codes;
                there += codes.Length;
                found += read[i].Labels.Select(label => label.Code).Intersect(codes).Count();
            }

            var alone = racks.Select((rack, i) => Alone(files[i]).Intersect(rack.Codes.Select(code => code.QrText)).Count()).Sum();
            string[] lines =
            [
                $"{pictures} pictures of {width} x {height}, {files[0].Length / 1e6:0.0} MB each as JPEG, {Columns * Rows} labels in each:",
                "",
                $"- read in {watch.Elapsed.TotalSeconds:0.0} s; {spent.TotalSeconds:0.0} s of processor time, {spent.TotalSeconds / pictures:0.00} s a picture",
                $"- most memory {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB, the making of the pictures included",
                $"- {found} of {there} labels found; the library's search alone finds {alone} of {racks.Sum(rack => rack.Codes.Length)} in the {Different} different pictures",
                .. Machine.Lines(),
            ];
            foreach (var line in lines) Console.WriteLine(line);
            if (options.Page) TrustPage.Put(options.Large48 ? "pictures of 48" : "pictures", lines, "TIMES.md");
            return found * 100L >= there * 98L ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static HashSet<string> Alone(byte[] file)
    {
        var picture = PictureFile.Decode(file).Value;
        var source = new PlanarYUVLuminanceSource(picture.Pixels, picture.Width, picture.Height, 0, 0, picture.Width, picture.Height, false);
        var read = new QRCodeMultiReader().decodeMultiple(new BinaryBitmap(new HybridBinarizer(source)), new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true });
        return [.. (read ?? []).Select(one => one.Text)];
    }
}
