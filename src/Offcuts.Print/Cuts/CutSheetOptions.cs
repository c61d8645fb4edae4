using System.Collections.Immutable;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>What a cut sheet needs besides the plan.</summary>
public sealed record CutSheetOptions
{
    /// <summary>The day of the print: prices are old, and orders late, as of this day.</summary>
    public required DateOnly Printed { get; init; }

    /// <summary>What stands at its head.</summary>
    public string Title { get; init; } = "Cut sheet";

    /// <summary>A line below the title: that the data is invented, say. Empty for none.</summary>
    public string Note { get; init; } = "";

    /// <summary>Unit of lengths, sign of money, tax.</summary>
    public YardSettings Settings { get; init; } = YardSettings.Usual;

    /// <summary>When each stage begins, by its name; stages without a date are left out.</summary>
    public ImmutableDictionary<string, DateOnly> StageDates { get; init; } = ImmutableDictionary<string, DateOnly>.Empty;

    /// <summary>Where hardware that is bought has its supplier, date and lead time from; without it these are not shown.</summary>
    public PriceBook Prices { get; init; } = PriceBook.Empty;

    /// <summary>What came back of pieces that are cut, in order from the marked end, by the piece's index in the plan, from 0: so that each label finds its remainder.</summary>
    public ImmutableDictionary<int, ImmutableArray<Piece>> CameBack { get; init; } = ImmutableDictionary<int, ImmutableArray<Piece>>.Empty;

    /// <summary>The piece of a code as it is by now, gone or not, for a kept plan; without it the sheet tells of the pieces as they were planned.</summary>
    public Func<Code, Piece?>? Now { get; init; }

    /// <summary>Cuts of a kept plan that their stages ask for no more, counted by name; empty where there are none.</summary>
    public string NotAsked { get; init; } = "";

    /// <summary>How a code is written; as on its label where nothing else is said.</summary>
    public Func<Code, string> CodeText { get; init; } = code => code.ToString();

    /// <summary>The wall whose runs the plan fills: the PDF then ends with its rows drawn to scale and what goes where. None for any other plan.</summary>
    public WallPicture? Wall { get; init; }

    /// <summary>What else is told of the wall that the plan fills: what is cut to height, what is counted. None for any other plan.</summary>
    public WallOnSheet? Filled { get; init; }
}
