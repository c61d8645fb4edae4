namespace Offcuts.Core.Faults;

/// <summary>
/// One thing that is wrong with what a person or a file said: a sentence that tells what, and where it stands.
/// Never a bug and never a broken machine; those throw.
/// </summary>
/// <param name="Sentence">What is wrong and what would be right, without a full stop.</param>
/// <param name="Column">First wrong character, counted from 1; 0 where no column applies.</param>
/// <param name="Line">Line of the file, counted from 1; 0 where no line applies.</param>
/// <param name="File">Name of the file as the user gave it; empty where no file applies.</param>
public sealed record Fault(string Sentence, int Column = 0, int Line = 0, string File = "")
{
    /// <summary>Name of the file's column as its header writes it; empty where the file has no named columns.</summary>
    public string ColumnName { get; init; } = "";

    /// <summary>
    /// What of a sheet it is about, as its file calls it: <c>leg A</c>, <c>opening door</c>, <c>bucks</c>; empty where nothing is
    /// named. The reader of the file finds the line by it.
    /// </summary>
    public string About { get; init; } = "";

    /// <summary>The same fault, its column moved right by <paramref name="offset"/> characters.</summary>
    public Fault Shift(int offset) => Column == 0 ? this : this with { Column = Column + offset };

    /// <summary>The same fault, at a line of a file.</summary>
    public Fault At(string file, int line, int column = 0) =>
        this with { File = file, Line = line, Column = column == 0 ? Column : column };

    /// <summary>The same fault, in a named column of a line of a file. <see cref="Column"/> still counts within the cell.</summary>
    public Fault AtCell(string file, int line, string columnName) =>
        this with { File = file, Line = line, ColumnName = columnName };

    /// <summary>
    /// <c>file:line: column 5: what is wrong</c>, each part only where it applies; a named column is called by its name, and
    /// without a file it is <c>line 3: ...</c>.
    /// </summary>
    public override string ToString()
    {
        var place = File.Length == 0 ? Line == 0 ? "" : $"line {Line}: " : Line == 0 ? $"{File}: " : $"{File}:{Line}: ";
        var column = ColumnName.Length > 0 ? $"{ColumnName}: " : Column == 0 ? "" : $"column {Column}: ";
        return place + column + Sentence;
    }
}
