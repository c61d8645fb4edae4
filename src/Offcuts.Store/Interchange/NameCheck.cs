using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>Refuses names in a file that nothing in the yard has yet, each on the first row that has it.</summary>
/// <param name="known">The names that are there; null where any name will do.</param>
internal sealed class NameCheck(KnownNames? known)
{
    private readonly HashSet<Material> _told = [];

    /// <summary>Why this row's material is refused, or null.</summary>
    public Fault? Of(Material material) =>
        known is not null && _told.Add(material) && known.NewAmong([material]) is [var name]
            ? CommandFaults.NameIsNew(name)
            : null;
}
