using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>The prices on the screen.</summary>
internal sealed record PricesState : IHasLine<PricesState>
{
    public required YardSnapshot Yard { get; init; }

    public EntryLine Line { get; init; } = new();

    /// <summary>Which price is chosen.</summary>
    public int Chosen { get; init; }

    /// <summary>What the line says so far, or why it can't be read; nothing while it is empty.</summary>
    public Result<StorePrice>? Reading { get; init; }

    /// <summary>The name in the line that nothing has yet, if it has one.</summary>
    public NewName? NewName { get; init; }

    /// <summary>The length in the line that looks like a slip, if it has one.</summary>
    public OddSize? Odd { get; init; }

    /// <summary>True once Enter was pressed on a line that can't be read.</summary>
    public bool Tried { get; init; }

    /// <summary>What another program set meanwhile where the line would set it too; told before that is done. Empty where nothing was.</summary>
    public string Overtaken { get; init; } = "";

    /// <summary>The price that <see cref="Overtaken"/> is about: it holds for no other.</summary>
    public StorePrice? OvertakenAt { get; init; }

    /// <summary>The chosen price, or nothing.</summary>
    public StorePrice? Price => Chosen < Yard.Prices.Count ? Yard.Prices[Chosen] : null;

    /// <summary>The price that what the line says would take the place of, or nothing.</summary>
    public StorePrice? Replaced => Reading is { } reading && reading.TryGet(out var price) ? Yard.Prices.FirstOrDefault(old => Sells(old, price)) : null;

    /// <summary>True where both are the price of the same thing.</summary>
    public static bool Sells(StorePrice one, StorePrice other) => one.Material.Equals(other.Material) && one.Length == other.Length && one.Treated == other.Treated;

    /// <inheritdoc/>
    public PricesState With(EntryLine line) => this with { Line = line };
}
