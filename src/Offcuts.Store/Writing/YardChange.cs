using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <summary>
/// A change of the yard while it is being made; lives inside <see cref="YardFile.Change"/> only. A step that meets a fault does
/// nothing and the change goes on, so that every fault is found; then nothing of it is saved.
/// </summary>
public sealed partial class YardChange
{
    private readonly YardFile _yard;
    private readonly YardReader _reader;
    private readonly List<Fault> _faults = [];
    private bool _closed;

    internal YardChange(YardFile yard, YardReader reader) => (_yard, _reader) = (yard, reader);

    /// <summary>Every fault met so far.</summary>
    public IReadOnlyList<Fault> Faults => _faults;

    private Database Database => !_closed ? _yard.Database : throw new InvalidOperationException("this change is over");

    /// <summary>Adds a fault of the caller's own: nothing of this change will be saved.</summary>
    public void Refuse(Fault fault) => _faults.Add(fault);

    internal IReadOnlyList<Fault> Close()
    {
        _closed = true;
        return _faults;
    }

    private bool Refused(IReadOnlyList<Fault> faults)
    {
        _faults.AddRange(faults);
        return faults.Count > 0;
    }
}
