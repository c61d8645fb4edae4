using Offcuts.Core.Faults;
using Offcuts.Core.Materials;

namespace Offcuts.Core.Yard;

/// <summary>A piece with everything that was cut from it, and from that, and so on.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Children">What was cut straight from it, in the order of entry.</param>
public sealed record FamilyTree(Piece Piece, IReadOnlyList<FamilyTree> Children)
{
    /// <summary>The tree of one family. Throws where they do not all come from one piece.</summary>
    /// <param name="members">Every piece that comes from the same first piece, and that one, in the order of entry.</param>
    public static FamilyTree Of(IReadOnlyList<Piece> members)
    {
        var byParent = members.ToLookup(piece => piece.CutFrom);
        var root = members.Single(piece => piece.CutFrom.IsNone);
        return Grow(root, byParent);
    }

    /// <summary>This piece and all below it, each before what was cut from it, with how many cuts it stands below this one.</summary>
    public IEnumerable<(Piece Piece, int Depth)> InOrder()
    {
        var waiting = new Stack<(FamilyTree Tree, int Depth)>();
        waiting.Push((this, 0));
        while (waiting.TryPop(out var next))
        {
            yield return (next.Tree.Piece, next.Depth);
            foreach (var child in next.Tree.Children.Reverse()) waiting.Push((child, next.Depth + 1));
        }
    }

    // A family may be deep, so nothing here recurses.
    private static FamilyTree Grow(Piece root, ILookup<Code, Piece> byParent)
    {
        var order = new List<Piece> { root };
        for (var i = 0; i < order.Count; i++) order.AddRange(byParent[order[i].Code]);
        var grown = new Dictionary<Code, FamilyTree>();
        for (var i = order.Count - 1; i >= 0; i--)
            grown[order[i].Code] = new FamilyTree(order[i], [.. byParent[order[i].Code].Select(child => grown[child.Code])]);
        return grown[root.Code];
    }
}

/// <summary>What no family of pieces can be.</summary>
public static class FamilyRules
{
    /// <summary>
    /// The fault where more was cut from a piece than there is of it, or null: lengths added up, of a sheet areas. A piece of
    /// another material (a board ripped into two) is not measured against it.
    /// </summary>
    public static Fault? Check(Piece parent, IEnumerable<Piece> children)
    {
        var same = children.Where(child => child.Material.Equals(parent.Material));
        return parent.Material is Sheet
            ? same.Sum(Face) > Face(parent) ? StoreFaults.MoreThanTheSheet(parent.Code.ToString()) : null
            : same.Sum(child => (decimal)child.Length.Units) > parent.Length.Units ? StoreFaults.MoreThanTheParent(parent.Code.ToString(), parent.Length) : null;
    }

    private static decimal Face(Piece sheet) => (decimal)sheet.Length.Units * sheet.Width.Units;
}
