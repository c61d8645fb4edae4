using Offcuts.Core.Yard;
using QRCoder;

namespace Offcuts.Print;

/// <summary>
/// The QR symbol of a code: version 1 (21 x 21 modules), level Q, the alphanumeric text <c>OFFCUTS:</c> and the seven
/// characters. Rows and columns count from 0 at the top left; the quiet zone around it is light.
/// </summary>
/// <remarks>
/// Source: ISO/IEC 18004: version 1 at level Q holds 16 alphanumeric characters; the quiet zone is 4 modules on each side.
/// </remarks>
public sealed class QrSymbol
{
    /// <summary>Modules along one side, quiet zone not counted.</summary>
    public const int Size = 21;

    /// <summary>Modules that stay light on each side. Source: ISO/IEC 18004.</summary>
    public const int QuietZone = 4;

    /// <summary>Modules along one side with both quiet zones.</summary>
    public const int FullSize = Size + 2 * QuietZone;

    private readonly bool[,] _dark;

    private QrSymbol(bool[,] dark) => _dark = dark;

    /// <summary>The symbol of a code. Throws for <c>default</c>, which is no code.</summary>
    public static QrSymbol Of(Code code)
    {
        if (code.IsNone) throw new ArgumentException("no code, no symbol", nameof(code));
        using var drawn = QRCodeGenerator.GenerateQrCode(
            code.QrText, QRCodeGenerator.ECCLevel.Q, forceUtf8: false, utf8BOM: false, QRCodeGenerator.EciMode.Default, requestedVersion: 1);

        // The generator's matrix has its quiet zone around it already.
        var dark = new bool[Size, Size];
        for (var row = 0; row < Size; row++)
            for (var column = 0; column < Size; column++)
                dark[row, column] = drawn.ModuleMatrix[row + QuietZone][column + QuietZone];
        return new QrSymbol(dark);
    }

    /// <summary>True for a dark module. Everything outside the symbol is light.</summary>
    public bool this[int row, int column] =>
        row is >= 0 and < Size && column is >= 0 and < Size && _dark[row, column];

    /// <summary>
    /// The dark modules as few rectangles that do not overlap: each the widest run of its row, joined with the same run below.
    /// </summary>
    public IReadOnlyList<QrBlock> Blocks()
    {
        var done = new List<QrBlock>();
        var open = new List<QrBlock>();
        for (var row = 0; row <= Size; row++)
        {
            var runs = Runs(row).ToList();
            var next = new List<QrBlock>();
            foreach (var block in open)
            {
                var same = runs.FindIndex(run => run.Column == block.Column && run.Width == block.Width);
                if (same < 0)
                {
                    done.Add(block);
                    continue;
                }

                next.Add(block with { Height = block.Height + 1 });
                runs.RemoveAt(same);
            }

            next.AddRange(runs.Select(run => new QrBlock(row, run.Column, 1, run.Width)));
            open = next;
        }

        return [.. done.OrderBy(block => block.Row).ThenBy(block => block.Column)];
    }

    private IEnumerable<(int Column, int Width)> Runs(int row)
    {
        for (var column = 0; column < Size; column++)
        {
            if (!this[row, column]) continue;
            var start = column;
            while (this[row, column + 1]) column++;
            yield return (start, column - start + 1);
        }
    }
}

/// <summary>A rectangle of dark modules.</summary>
/// <param name="Row">Its first row.</param>
/// <param name="Column">Its first column.</param>
/// <param name="Height">Rows it covers.</param>
/// <param name="Width">Columns it covers.</param>
public readonly record struct QrBlock(int Row, int Column, int Height, int Width);
