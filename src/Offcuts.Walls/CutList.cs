using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>Gathers cuts of a wall by name; what comes to a name that is there already adds to its count.</summary>
/// <param name="wall">Name of the wall, which begins the name of every cut.</param>
/// <param name="stage">The stage they are for.</param>
internal sealed class CutList(string wall, string stage)
{
    private readonly List<(string Group, RequiredCut Cut, List<CountLine> Lines)> _cuts = [];

    public void Add(string group, string name, Material material, Length length, long count, Use use, TreatedWish treated, string what)
    {
        if (count == 0) return;
        var full = $"{wall} / {name}";
        var found = _cuts.Find(cut => cut.Cut.Name == full);
        if (found.Cut is null)
        {
            found = (group, new RequiredCut { Stage = stage, Name = full, Material = material, Shortest = length, Longest = length, Count = 1, Use = use, Treated = treated }, []);
            _cuts.Add(found);
        }

        // What is told of one place in the same words is one line.
        var same = found.Lines.FindIndex(line => line.What == what);
        if (same < 0) found.Lines.Add(new CountLine(what, count));
        else found.Lines[same] = new CountLine(what, found.Lines[same].Figure + count);
    }

    public IReadOnlyList<CutTakeoff> All() =>
    [
        .. from cut in _cuts
           let count = new Count(cut.Lines)
           select new CutTakeoff(cut.Group, cut.Cut with { Count = checked((int)count.Figure) }, count),
    ];
}
