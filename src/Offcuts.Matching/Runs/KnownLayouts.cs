namespace Offcuts.Matching.Runs;

/// <summary>
/// Ways to lay pairs of one shape that were found so far, each once; of those that go beyond the limit, the one that was found longest ago is
/// forgotten. A search of some minutes finds the same ones over and over.
/// </summary>
/// <param name="most">Most layouts kept; over 0.</param>
internal sealed class KnownLayouts(int most)
{
    private readonly Dictionary<string, LinkedListNode<PairLayout>> _byName = [];
    private readonly LinkedList<PairLayout> _all = [];

    /// <summary>All that are kept, the one found longest ago first.</summary>
    public IReadOnlyCollection<PairLayout> All => _all;

    /// <summary>One more; what is known already counts as found now.</summary>
    public void Add(PairLayout layout)
    {
        var name = NameOf(layout);
        if (_byName.TryGetValue(name, out var known)) _all.Remove(known);
        _byName[name] = _all.AddLast(layout);
        if (_all.Count <= most) return;
        _byName.Remove(NameOf(_all.First!.Value));
        _all.RemoveFirst();
    }

    /// <summary>Layouts of one shape that lay the same pieces at the same places have one name.</summary>
    public static string NameOf(PairLayout layout) => layout.Rows.Length > 0
        ? string.Join('|', layout.Rows.Select(row => string.Join(',', row.Arcs)))
        : $"{string.Join(',', layout.Lower)}|{string.Join(',', layout.Upper)}";
}
