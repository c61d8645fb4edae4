namespace Offcuts.Core.Walls;

/// <summary>One thing that a line of a sheet may tell.</summary>
/// <param name="Name">The words that begin the line.</param>
/// <param name="Example">A whole line of its kind.</param>
/// <param name="Needed">True where a sheet must tell it.</param>
/// <param name="Often">True where it may stand more than once.</param>
public sealed record SheetFact(string Name, string Example, bool Needed = false, bool Often = false)
{
    /// <summary>What the line is made of; what is in capitals is for the user to say.</summary>
    public required string Shape { get; init; }

    /// <summary>What it tells, in a few words without a full stop.</summary>
    public required string Tells { get; init; }

    /// <summary>The fact that a line tells: the longest whose words begin it, blanks before them and case aside; none where no fact does.</summary>
    public static SheetFact? Of(IReadOnlyList<SheetFact> facts, string line)
    {
        var start = line.Length - line.TrimStart(' ', '\t').Length;
        return facts.Where(fact => string.Compare(line, start, fact.Name, 0, fact.Name.Length, StringComparison.OrdinalIgnoreCase) == 0
                && (start + fact.Name.Length == line.Length || line[start + fact.Name.Length] is ' ' or '\t'))
            .MaxBy(fact => fact.Name.Length);
    }

    /// <summary>The facts that a line may still become: those that its words begin; all of them where nothing is written.</summary>
    public static IEnumerable<SheetFact> Begun(IReadOnlyList<SheetFact> facts, string line)
    {
        var words = line.Trim();
        return facts.Where(fact => fact.Name.StartsWith(words, StringComparison.OrdinalIgnoreCase));
    }
}
