using System.Text.Json;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

/// <content>Beds, and what goes to other yards and comes from them.</content>
public sealed partial class YardChange
{
    /// <summary>Adds a bed, or sets the one of that name. Faults: those of <see cref="Bed.Faults"/>.</summary>
    public void SetBed(Bed bed)
    {
        if (Refused(bed.Faults())) return;
        var there = _reader.Beds().Any(known => string.Equals(known.Name, bed.Name, StringComparison.OrdinalIgnoreCase));
        Database.Run(
            there ? "bed_set" : "bed_add",
            ("name", bed.Name),
            ("longest", bed.Longest.Units),
            ("weight", bed.WeightThousandthsLb),
            ("volume", bed.VolumeThousandthsCuFt));
    }

    /// <summary>Removes a bed. A fault where there is none of that name.</summary>
    public void RemoveBed(string name)
    {
        if (Database.Run("bed_remove", ("name", name)) == 0) _faults.Add(HandFaults.NoSuchBed(name, [.. _reader.Beds().Select(bed => bed.Name)]));
    }

    /// <summary>
    /// Writes down that something went to another build, and gives the number of that. The pieces and bins themselves are changed by the
    /// caller in the same change. Faults: those of <see cref="Terms.Faults"/>.
    /// </summary>
    public int AddHandOver(string transfer, Terms terms, Money worth, long weightThousandthsLb, IReadOnlyList<HandOverItem> items)
    {
        if (Refused(terms.Faults())) return 0;
        var id = Database.Number(
            "hand_over_add",
            ("transfer", transfer),
            ("day", Values.Day(_yard.Today)),
            ("kind", Words.Kind[terms.Kind]),
            ("to_whom", terms.To),
            ("price", terms.Price?.Cents),
            ("due_on", Values.DayOrNull(terms.DueOn)),
            ("due", terms.Due),
            ("worth", worth.Cents),
            ("weight", weightThousandthsLb));
        foreach (var item in items) Database.Run("hand_over_item_add", ("hand_over", id), ("code", item.Code.Text), ("count", item.Count), ("worth", item.Worth?.Cents), ("weight", item.WeightThousandthsLb));
        return (int)id;
    }

    /// <summary>Says that the other side has it; from then on it is not taken back.</summary>
    public void ConfirmHandOver(int id) => Database.Run("hand_over_confirm", ("day", Values.Day(_yard.Today)), ("id", id));

    /// <summary>Says how many of one thing of a hand-over are back in all.</summary>
    public void SetBack(int id, Code code, int back) => Database.Run("hand_over_item_back", ("back", back), ("hand_over", id), ("code", code.Text));

    /// <summary>Says how many of one thing of a loan don't come back in all, and what came in their place.</summary>
    public void SetSettled(int id, Code code, int settled, string settledAs) =>
        Database.Run("hand_over_item_settled", ("settled", settled), ("settled_as", settledAs), ("hand_over", id), ("code", code.Text));

    /// <summary>Writes down that a hand-over of another yard was taken in.</summary>
    public void AddTakenIn(string transfer, Terms terms) => Database.Run(
        "taken_in_add",
        ("transfer", transfer),
        ("day", Values.Day(_yard.Today)),
        ("from_whom", terms.To),
        ("kind", Words.Kind[terms.Kind]),
        ("due_on", Values.DayOrNull(terms.DueOn)),
        ("due", terms.Due));

    /// <summary>Writes down what a piece brought along; it takes the place of what was written down of it before.</summary>
    public void SetBrought(Brought brought) => Database.Run(
        "brought_set",
        ("code", brought.Code.Text),
        ("transfer", brought.Transfer),
        ("was", brought.Was.Text),
        ("history", JsonSerializer.Serialize(brought.History.Select(past => new[] { Values.Moment(past.At), past.What }))),
        ("earlier", JsonSerializer.Serialize(brought.Earlier.Select(origin => new[] { origin.Transfer, origin.Was.Text }))));
}
