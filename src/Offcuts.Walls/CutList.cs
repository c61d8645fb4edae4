using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Walls;

/// <summary>
/// Gathers cuts of a wall by name, in the order in which they come. What comes to a name that is there already adds to its count, and
/// what is told of one place in the same words is one line.
/// </summary>
/// <param name="wall">Name of the wall, which begins the name of every cut.</param>
/// <param name="stage">The stage they are for.</param>
internal sealed class CutList(string wall, string stage)
{
    private readonly OrderedDictionary<string, Gathered> _cuts = [];

    public void Add(string group, string name, Material material, Length length, long count, Use use, TreatedWish treated, string what)
    {
        if (count == 0) return;
        if (!_cuts.TryGetValue(name, out var gathered))
        {
            var cut = new RequiredCut { Stage = stage, Name = $"{wall} / {name}", Material = material, Shortest = length, Longest = length, Count = 1, Use = use, Treated = treated };
            _cuts.Add(name, gathered = new Gathered(group, cut, []));
        }

        gathered.Lines[what] = gathered.Lines.TryGetValue(what, out var before) ? before + count : count;
    }

    public IReadOnlyList<CutTakeoff> All() =>
    [
        .. from gathered in _cuts.Values
           let count = new Count([.. gathered.Lines.Select(line => new CountLine(line.Key, line.Value))])
           select new CutTakeoff(gathered.Group, gathered.Cut with { Count = checked((int)count.Figure) }, count),
    ];

    private sealed record Gathered(string Group, RequiredCut Cut, OrderedDictionary<string, long> Lines);
}
