using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using ZXing;
using ZXing.Common;
using ZXing.Multi.QrCode;

namespace Offcuts.Reading;

/// <summary>A label that was read in a picture.</summary>
/// <param name="Code">What it says.</param>
/// <param name="X">Its middle, from the left edge, as a share of the picture's width: 0 to 1.</param>
/// <param name="Y">Its middle, from the top edge, as a share of the picture's height: 0 to 1.</param>
public sealed record PicturedLabel(Code Code, double X, double Y);

/// <summary>
/// What the QR symbols of a picture say. A symbol that is no label of Offcuts is only counted: what it says is kept nowhere.
/// </summary>
/// <param name="Labels">Labels, each once.</param>
/// <param name="Foreign">How many other QR symbols there are, as far as they could be read.</param>
public sealed record PicturedLabels(IReadOnlyList<PicturedLabel> Labels, int Foreign);

/// <summary>
/// Reads every label in a picture. The picture is searched in its own size and halved again and again, so that labels of any size are
/// found; then all of it is read once more by the library's own search, which also knows symbols of other sizes.
/// </summary>
public static class LabelPicture
{
    // A label that fills the whole picture is found where the picture has about this many pixels a side.
    private const int SmallestSide = 160;

    // What the second search looks at, in pixels.
    private const long SecondSearch = 1_600_000;

    /// <summary>The labels of a JPEG or PNG file, or why it can't be read.</summary>
    public static Result<PicturedLabels> Read(ReadOnlyMemory<byte> file, CancellationToken stop = default) =>
        PictureFile.Decode(file).Then<PicturedLabels>(picture => Read(picture, stop));

    /// <summary>The labels of a picture.</summary>
    public static PicturedLabels Read(GreyPicture picture, CancellationToken stop = default)
    {
        var texts = new Dictionary<string, (double X, double Y)>();
        for (var level = picture; level is not null; level = Halved(level))
        {
            stop.ThrowIfCancellationRequested();
            foreach (var (text, x, y) in new SymbolSearch(level, stop).Read(FinderSearch.In(level)))
                texts.TryAdd(text, (x / level.Width, y / level.Height));
            if ((long)level.Width * level.Height <= SecondSearch && (long)level.Width * level.Height * 4 > SecondSearch || level == picture && (long)level.Width * level.Height <= SecondSearch)
                foreach (var (text, x, y) in Others(level)) texts.TryAdd(text, (x / level.Width, y / level.Height));
        }

        var labels = new Dictionary<Code, PicturedLabel>();
        var foreign = 0;
        foreach (var (text, (x, y)) in texts)
        {
            if (text.StartsWith(Code.QrPrefix, StringComparison.Ordinal) && Code.Parse(text).TryGet(out var code)) labels.TryAdd(code, new PicturedLabel(code, x, y));
            else foreign++;
        }

        return new PicturedLabels([.. labels.Values.OrderBy(label => label.Y).ThenBy(label => label.X)], foreign);
    }

    private static IEnumerable<(string Text, double X, double Y)> Others(GreyPicture picture)
    {
        var source = new PlanarYUVLuminanceSource(picture.Pixels, picture.Width, picture.Height, 0, 0, picture.Width, picture.Height, false);
        Result[] read;
        try
        {
            read = new QRCodeMultiReader().decodeMultiple(new BinaryBitmap(new HybridBinarizer(source))) ?? [];
        }
        catch (Exception error) when (LosesItsWay(error))
        {
            // The library loses its way in some pictures; what was found otherwise stays.
            yield break;
        }

        // A symbol put together of several has places for corners that were never found.
        foreach (var one in read)
            if (one is { Text.Length: > 0 } && (one.ResultPoints ?? []).Where(point => point is not null).ToArray() is { Length: > 0 } corners)
                yield return (one.Text, corners.Average(point => point.X), corners.Average(point => point.Y));
    }

    /// <summary>True for what the library throws where a picture or a symbol is none that it knows how to go on in.</summary>
    internal static bool LosesItsWay(Exception error) =>
        error is ReaderException or IndexOutOfRangeException or ArgumentException or InvalidOperationException or NullReferenceException;

    private static GreyPicture? Halved(GreyPicture picture)
    {
        var (width, height) = (picture.Width / 2, picture.Height / 2);
        if (Math.Min(width, height) < SmallestSide) return null;
        var half = new byte[width * height];
        for (var y = 0; y < height; y++)
        {
            var first = picture.Pixels.AsSpan(2 * y * picture.Width, picture.Width);
            var second = picture.Pixels.AsSpan((2 * y + 1) * picture.Width, picture.Width);
            var row = half.AsSpan(y * width, width);
            for (var x = 0; x < row.Length; x++) row[x] = (byte)((first[2 * x] + first[2 * x + 1] + second[2 * x] + second[2 * x + 1] + 2) / 4);
        }

        return new GreyPicture(width, height, half);
    }
}
