using Offcuts.Core.Faults;

namespace Offcuts.Core.Walls;

/// <summary>A wall sheet read from a file, with the lines on which things stand.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="Lines">Line by what stands there, as <see cref="Fault.About"/> names it: <c>leg A</c>, <c>opening door</c>, <c>bucks</c>.</param>
public sealed record PlacedWallSheet(WallSheet Sheet, IReadOnlyDictionary<string, int> Lines)
{
    /// <summary>The fault on the line that it is about; as it is where it is about no line.</summary>
    public Fault Place(Fault fault, string file) =>
        Lines.TryGetValue(fault.About, out var line) ? fault.At(TextRules.Harmless(file), line) : fault with { File = TextRules.Harmless(file) };

    /// <summary>Several, each on its line, in the order of the lines; those about no line come last.</summary>
    public IReadOnlyList<Fault> Place(IEnumerable<Fault> faults, string file) =>
        [.. faults.Select(fault => Place(fault, file)).OrderBy(fault => fault.Line > 0 ? fault.Line : int.MaxValue)];
}
