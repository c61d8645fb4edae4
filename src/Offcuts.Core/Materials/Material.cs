using Offcuts.Core.Measures;

namespace Offcuts.Core.Materials;

/// <summary>What families share: how they are cut, and so their kerf.</summary>
public enum MaterialFamily
{
    /// <summary>Boards, studs and timbers, by nominal section.</summary>
    Lumber,

    /// <summary>Reinforcing bars, by number.</summary>
    Rebar,

    /// <summary>Foam panels, by thickness and height.</summary>
    Foam,

    /// <summary>Plywood and other sheets, by kind and thickness.</summary>
    Sheet,

    /// <summary>Anything else that is cut to length, known by its name alone.</summary>
    Stick,

    /// <summary>Things that are counted, not cut.</summary>
    Hardware,
}

/// <summary>
/// What a cut asks for and a piece is. Two are the same when their <see cref="Name"/> is, whatever the case of its letters.
/// Immutable; made by <see cref="MaterialReader"/> or by the constructors of the families.
/// </summary>
public abstract class Material : IEquatable<Material>, IComparable<Material>
{
    private protected Material(MaterialFamily family, string name) => (Family, Name) = (family, name);

    /// <summary>Which family it belongs to.</summary>
    public MaterialFamily Family { get; }

    /// <summary>How it is written everywhere: <c>2x4</c>, <c>#4</c>, <c>foam 2-1/2x12</c>, <c>plywood 3/4</c>, or a name of its own.</summary>
    public string Name { get; }

    /// <inheritdoc/>
    public bool Equals(Material? other) =>
        other is not null && (Family == MaterialFamily.Hardware) == (other.Family == MaterialFamily.Hardware)
        && string.Equals(Name, other.Name, StringComparison.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Material);

    /// <inheritdoc/>
    public override int GetHashCode() => StringComparer.OrdinalIgnoreCase.GetHashCode(Name);

    /// <summary>By family, then by name.</summary>
    public int CompareTo(Material? other) => other is null ? 1
        : Family != other.Family ? Family.CompareTo(other.Family)
        : string.Compare(Name, other.Name, StringComparison.OrdinalIgnoreCase);

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}

/// <summary>Lumber of a nominal section that the standard lists: <c>2x10</c>.</summary>
public sealed class Lumber : Material
{
    internal Lumber(NominalSize thickness, NominalSize width)
        : base(MaterialFamily.Lumber, $"{thickness.Text}x{width.Text}") => (Thickness, Width) = (thickness, width);

    /// <summary>Nominal thickness, the smaller figure.</summary>
    public NominalSize Thickness { get; }

    /// <summary>Nominal width.</summary>
    public NominalSize Width { get; }

    /// <summary>True for a timber: 5 in and thicker, both ways.</summary>
    public bool IsTimber => Thickness.Nominal >= 5m;

    /// <summary>What its thickness measures dressed and green; see <see cref="GreenWidth"/>.</summary>
    public Length GreenThickness => Green(Thickness);

    /// <summary>
    /// What its width measures dressed and green: PS 20-20 Table 3, but for timbers 1/2 in under nominal, so that a green 6x6 is
    /// 5-1/2 in. Source of the timbers: NDS Supplement Table 1A, from memory, fairly sure.
    /// </summary>
    public Length GreenWidth => Green(Width);

    private Length Green(NominalSize side) => IsTimber ? Length.Inches(side.Nominal - 0.5m) : side.Green;
}

/// <summary>A reinforcing bar: <c>#4</c>.</summary>
public sealed class Rebar : Material
{
    internal Rebar(BarSize size)
        : base(MaterialFamily.Rebar, $"#{size.Number}") => Size = size;

    /// <summary>Its row of the standard.</summary>
    public BarSize Size { get; }
}

/// <summary>A foam panel of one thickness and course height, cut along its length: <c>foam 2-1/2x12</c>.</summary>
public sealed class FoamPanel : Material
{
    internal FoamPanel(Length thickness, Length height, EpsType? type)
        : base(MaterialFamily.Foam, $"foam {MaterialReader.Side(thickness)}x{MaterialReader.Side(height)}{(type is null ? "" : $" {type.Name}")}") =>
        (Thickness, Height, Type) = (thickness, height, type);

    /// <summary>Thickness of the foam.</summary>
    public Length Thickness { get; }

    /// <summary>Height of the course it makes.</summary>
    public Length Height { get; }

    /// <summary>Its type by the standard, where known.</summary>
    public EpsType? Type { get; }
}

/// <summary>A sheet: <c>plywood 3/4</c>. Catalogued with its two sides; not yet matched.</summary>
public sealed class Sheet : Material
{
    internal Sheet(string kind, Length thickness)
        : base(MaterialFamily.Sheet, $"{kind} {MaterialReader.Side(thickness)}") => (Kind, Thickness) = (kind, thickness);

    /// <summary>What it is made of: <c>plywood</c>, <c>osb</c>.</summary>
    public string Kind { get; }

    /// <summary>Nominal thickness.</summary>
    public Length Thickness { get; }
}

/// <summary>Something cut to length of which only the name is known: moulding, pipe, a beam of a section of its own.</summary>
public sealed class Stick : Material
{
    internal Stick(string name)
        : base(MaterialFamily.Stick, name)
    {
    }
}

/// <summary>Something that is counted: ties, brackets, bolts.</summary>
public sealed class Hardware : Material
{
    internal Hardware(string name, string unit)
        : base(MaterialFamily.Hardware, name) => Unit = unit;

    /// <summary>What one of it is called: <c>each</c>, <c>box</c>.</summary>
    public string Unit { get; }
}
