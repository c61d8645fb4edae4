using Offcuts.Core.Measures;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a change that a yard can't take.</summary>
public static class StoreFaults
{
    public static Fault ChangedMeanwhile() =>
        new("another program changed the yard at the same moment; nothing was done, so look and do it again");

    public static Fault NothingToUndo() => new("there is nothing to take back");

    public static Fault NothingToRedo() =>
        new("there is nothing to do again: nothing was taken back since the last change");

    public static Fault NoSuchPlan(int id) => new($"the yard keeps no plan {id}");

    public static Fault NoSuchPlannedPiece(int id, int number) => new($"plan {id} has no piece number {number}");

    public static Fault CutFromNothing(string code) => new($"it is cut from {code}, but no piece has that code");

    public static Fault CutFromItself(string code) => new($"{code} can't be cut from itself or from what was cut from it");

    public static Fault MoreThanTheParent(string code, Length length) =>
        new($"more would have been cut from {code} than its {length}");

    public static Fault MoreThanTheSheet(string code) => new($"more would have been cut from {code} than the sheet has");

    public static Fault NotEnoughHardware(string name, int wanted, long there) =>
        new($"{wanted} {TextRules.Harmless(name)} are wanted, the bins hold {there}");

    public static Fault BlankCount() => new("blank labels are issued by the number, from 1 to 10000");

    public static Fault NeedTwice(string name, string stage) =>
        new($"{TextRules.Harmless(name)} stands twice among the needs of {TextRules.Harmless(stage)}");

    public static Fault NeedWithoutName(string stage) => new($"a need of {TextRules.Harmless(stage)} has no name");

    public static Fault StagePosition(int stages) => new($"a stage stands at a place from 1 to {stages}");

    public static Fault PriceWithoutLength(string name) => new($"{name} is sold by length: give the store length");

    public static Fault PriceWithLength(string name) => new($"{name} is counted: its price has no length");

    public static Fault NoSuchPrice(string name) => new($"the price book has no such price of {TextRules.Harmless(name)}");

    public static Fault AmountNegative() => new("an amount can't be negative");
}
