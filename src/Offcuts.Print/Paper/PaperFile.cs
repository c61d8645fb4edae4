using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Offcuts.Core.Measures;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Offcuts.Print;

/// <summary>A PDF being made, page by page. The same pages give the same bytes.</summary>
internal sealed partial class PaperFile : IDisposable
{
    private readonly PdfDocument _document = new();

    public PaperFile(string title, DateOnly printed)
    {
        var moment = printed.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        _document.Info.Title = Lettering.Printable(title);
        _document.Info.Creator = "Offcuts";
        _document.Info.CreationDate = moment;
        _document.Info.ModificationDate = moment;
        _document.Language = "en";

        // True to size: the print dialogue shall not begin with "fit to page".
        _document.ViewerPreferences.Elements.SetName("/PrintScaling", "/None");
    }

    /// <summary>Points of a length: 72 to the inch.</summary>
    public static double Points(Length length) => length.Units * 72.0 / Length.PerInch;

    /// <summary>A new page. Dispose what is returned before the next one is asked for.</summary>
    public XGraphics AddPage(double width, double height)
    {
        var page = _document.AddPage();
        page.Width = XUnit.FromPoint(width);
        page.Height = XUnit.FromPoint(height);
        return XGraphics.FromPdfPage(page);
    }

    /// <summary>A page once more, to draw on top of what it has. Dispose what is returned.</summary>
    /// <param name="page">Its number, from 1.</param>
    public XGraphics Again(int page) => XGraphics.FromPdfPage(_document.Pages[page - 1], XGraphicsPdfPageOptions.Append);

    public int Pages => _document.PageCount;

    public byte[] ToBytes()
    {
        using var stream = new MemoryStream();
        _document.Save(stream, closeStream: false);
        return WithoutLuck(stream.ToArray());
    }

    public void Dispose() => _document.Dispose();

    // The library draws by chance: the ids of the file, those in its metadata, and the six letters before a font's name. Each is
    // replaced by one of the same length drawn from the bytes themselves, so that no offset moves.
    private static byte[] WithoutLuck(byte[] bytes)
    {
        var text = Encoding.Latin1.GetString(bytes);
        var lucky = LuckyIds().Matches(text).SelectMany(match => match.Groups.Values.Skip(1).SelectMany(group => group.Captures)).ToArray();
        foreach (var id in lucky) bytes.AsSpan(id.Index, id.Length).Fill((byte)'0');
        var hash = SHA256.HashData(bytes);
        var tags = new List<string>();
        foreach (var id in lucky)
        {
            if (id.Length == 6 && !tags.Contains(id.Value)) tags.Add(id.Value);
            var drawn = id.Length switch
            {
                6 => $"OFFCU{(char)('A' + tags.IndexOf(id.Value))}",
                36 => new Guid(hash.AsSpan(0, 16)).ToString(),
                _ => Convert.ToHexString(hash, 0, 16),
            };
            Encoding.Latin1.GetBytes(drawn).CopyTo(bytes, id.Index);
        }

        return bytes;
    }

    [GeneratedRegex("/ID\\[<([0-9A-F]{32})><([0-9A-F]{32})>\\]|uuid:([0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12})|/([A-Z]{6})\\+DejaVu", RegexOptions.CultureInvariant)]
    private static partial Regex LuckyIds();
}
