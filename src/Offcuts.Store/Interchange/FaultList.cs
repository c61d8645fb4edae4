using Offcuts.Core.Faults;

namespace Offcuts.Store.Interchange;

/// <summary>The faults of one file in the order of its lines: listed up to a limit, counted beyond it.</summary>
internal sealed class FaultList(string fileName, int most)
{
    /// <summary>What stands for the column where a whole row is at fault.</summary>
    public const string WholeRow = "row";

    private readonly string _fileName = TextRules.Harmless(fileName);
    private readonly List<Fault> _listed = [];

    /// <summary>How many there are, listed or not.</summary>
    public int Count { get; private set; }

    /// <summary>Adds a fault in a named column of a line.</summary>
    public void Add(int line, string columnName, Fault fault)
    {
        Count++;
        if (_listed.Count >= most) return;
        _listed.Add((fault with { Sentence = TextRules.Harmless(fault.Sentence) }).AtCell(_fileName, line, columnName));
    }

    /// <summary>Forgets what was found and keeps this alone: the file is not what it was taken for.</summary>
    public void Only(int line, string columnName, Fault fault)
    {
        _listed.Clear();
        Count = 0;
        Add(line, columnName, fault);
    }

    /// <summary>The value where there is no fault, else every fault.</summary>
    public Result<T> Or<T>(Func<T> value)
    {
        if (Count == 0) return value();
        if (Count > _listed.Count) _listed.Add(FileFaults.More(Count - _listed.Count) with { File = _fileName });
        return Result<T>.Fail(_listed);
    }
}
