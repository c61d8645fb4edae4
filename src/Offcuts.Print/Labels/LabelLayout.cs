using System.Reflection;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Print;

/// <summary>
/// Where labels lie on a page and how large each is: data, read from a layout file by <see cref="Read"/> alone, so that every
/// layout has been checked. Labels are counted along the rows, from the top left. A roll is a page of one label.
/// </summary>
public sealed record LabelLayout
{
    /// <summary>0.5 mm: the smallest module a layout may have. Our own limit, above the 0.396 mm that the GS1 General Specifications allow in retail.</summary>
    public static Length LeastModule { get; } = Length.Millimetres(0.5m);

    /// <summary>0.75 mm: from here on a tag on rough lumber reads well at arm's length. Advice, no source.</summary>
    public static Length GoodModule { get; } = Length.Millimetres(0.75m);

    internal LabelLayout()
    {
    }

    /// <summary>The name by which it is asked for: <c>letter-10</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What paper it is for, in a sentence.</summary>
    public required string About { get; init; }

    /// <summary>Width of the page.</summary>
    public required Length PageWidth { get; init; }

    /// <summary>Height of the page.</summary>
    public required Length PageHeight { get; init; }

    /// <summary>Width of one label.</summary>
    public required Length LabelWidth { get; init; }

    /// <summary>Height of one label.</summary>
    public required Length LabelHeight { get; init; }

    /// <summary>Labels in a row.</summary>
    public required int Columns { get; init; }

    /// <summary>Labels in a column.</summary>
    public required int Rows { get; init; }

    /// <summary>From the page's left edge to the first label.</summary>
    public required Length Left { get; init; }

    /// <summary>From the page's top edge to the first label.</summary>
    public required Length Top { get; init; }

    /// <summary>From a label's left edge to that of the next one in the row.</summary>
    public required Length StepRight { get; init; }

    /// <summary>From a label's top edge to that of the next one in the column.</summary>
    public required Length StepDown { get; init; }

    /// <summary>Nothing is printed nearer than this to a label's edge, the QR symbol's quiet zone included.</summary>
    public required Length Inset { get; init; }

    /// <summary>Side of one QR module: given by the file, else the largest that leaves the text half of the label.</summary>
    public required Length Module { get; init; }

    /// <summary>Width of the strip at the left edge of a wide label, at the top of a tall one, that a pin or staple goes through: nothing is printed there but its mark. Zero for none.</summary>
    public Length Pin { get; init; }

    /// <summary>True where the label of a bin has lines to write counts on by hand, with the day.</summary>
    public bool WritesCount { get; init; }

    /// <summary>Labels on a page.</summary>
    public int PerPage => Columns * Rows;

    /// <summary>Side of the QR symbol with its quiet zone: 29 modules.</summary>
    public Length QrSide => Module * QrSymbol.FullSize;

    /// <summary>True where the text stands right of the QR symbol, false where it stands below: as the label is wide or tall.</summary>
    public bool TextBeside => Beside(LabelWidth, LabelHeight);

    /// <summary>Where a label lies on its page.</summary>
    /// <param name="index">0 for the first; throws outside the page.</param>
    public LabelPlace PlaceOf(int index)
    {
        if (index < 0 || index >= PerPage) throw new ArgumentOutOfRangeException(nameof(index), index, $"a page has {PerPage} labels");
        return new LabelPlace(Left + StepRight * (index % Columns), Top + StepDown * (index / Columns), LabelWidth, LabelHeight);
    }

    /// <summary>How many pages so many labels take, the first beginning at <paramref name="startAt"/> (1 is the first place).</summary>
    public int PagesFor(int labels, int startAt = 1) => (labels + startAt - 1 + PerPage - 1) / PerPage;

    /// <summary>Reads a layout file and checks that it can be printed. Every fault found is named.</summary>
    public static Result<LabelLayout> Read(string json) => LayoutReader.Read(json);

    /// <summary>The layouts that come with the program, by name.</summary>
    public static IReadOnlyList<LabelLayout> Shipped { get; } = ReadShipped();

    /// <summary>A layout that comes with the program.</summary>
    public static Result<LabelLayout> Find(string name) =>
        Shipped.FirstOrDefault(layout => string.Equals(layout.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } found
            ? found
            : PrintFaults.LayoutUnknown(name, string.Join(", ", Shipped.Select(layout => layout.Name)));

    internal static bool Beside(Length width, Length height) => width >= height;

    private static List<LabelLayout> ReadShipped()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return [.. assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith("labels/", StringComparison.Ordinal))
            .Select(name =>
            {
                using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
                return Read(reader.ReadToEnd()).Value;
            })
            .OrderBy(layout => layout.Name, StringComparer.Ordinal)];
    }
}

/// <summary>A rectangle on a page, from its top left corner.</summary>
/// <param name="X">From the page's left edge.</param>
/// <param name="Y">From the page's top edge.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
public readonly record struct LabelPlace(Length X, Length Y, Length Width, Length Height);
