using System.CommandLine;
using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>The options of <c>change</c>: each sets one fact, and one that is left out leaves it alone.</summary>
internal sealed record ChangeOptions(
    Option<string> Material,
    Option<string> Length,
    Option<string> Condition,
    Option<string> Nails,
    Option<string> Concrete,
    Option<string> Oiled,
    Option<string> Stamped,
    Option<string> Treated,
    Option<string> Bad,
    Option<string> Trim,
    Option<string> Line,
    Option<string> Place,
    Option<string> From,
    Option<string> Note,
    Option<string> Quantity,
    Option<bool> NewNames,
    Option<bool> Yes)
{
    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All =>
        [Material, Length, Condition, Nails, Concrete, Oiled, Stamped, Treated, Bad, Trim, Line, Place, From, Note, Quantity, NewNames, Yes];

    /// <summary>Applies what was given to every piece, or to the one bin.</summary>
    /// <param name="parse">What was typed.</param>
    /// <param name="yard">The yard.</param>
    /// <param name="codes">What is changed.</param>
    /// <param name="meant">Asks whether sizes that look like a slip are meant; none where nobody can be asked.</param>
    public Result<string> Apply(ParseResult parse, YardFile yard, IReadOnlyList<Code> codes, Func<IReadOnlyList<OddSize>, bool>? meant)
    {
        var change = new ChangePieces(yard);
        if (codes.Count == 1 && yard.Bin(codes[0]) is not null) return ApplyToBin(parse, change, codes[0]);
        if (codes.Count == 1 && yard.Bundles().FirstOrDefault(one => one.Code == codes[0]) is { } bundle) return ApplyToBundle(parse, yard, bundle);
        if (codes.Select(code => yard.Places().FirstOrDefault(one => one.Code == code)).OfType<YardPlace>().FirstOrDefault() is { } place) return LabelFaults.ChangeOfPlace(place.Name);
        if (parse.GetValue(Quantity) is not null) return YardFaults.QuantityOnlyForBins();
        var facts = new PieceFacts
        {
            Material = parse.GetValue(Material),
            Length = parse.GetValue(Length),
            Condition = parse.GetValue(Condition),
            Nails = parse.GetValue(Nails),
            Concrete = parse.GetValue(Concrete),
            Oiled = parse.GetValue(Oiled),
            Stamped = parse.GetValue(Stamped),
            Treated = parse.GetValue(Treated),
            Bad = parse.GetValue(Bad),
            Trim = parse.GetValue(Trim),
            Line = parse.GetValue(Line),
            Place = parse.GetValue(Place),
            From = parse.GetValue(From),
            Note = parse.GetValue(Note),
        };
        if (facts == new PieceFacts()) return YardFaults.NothingToChange();
        if (facts.NewNames(yard.Names()) is [var name] && !parse.GetValue(NewNames)) return CommandFaults.NameIsNew(name);
        var settings = yard.Settings();
        var odd = parse.GetValue(Yes) ? [] : facts.OddSizes(codes.Select(yard.Piece).OfType<Piece>(), settings);
        if (odd.Count > 0 && meant is null) return Result<string>.Fail([.. odd.Select(CommandFaults.SizeIsOdd)]);
        if (odd.Count > 0 && !meant!(odd)) return "nothing changed";
        return change.Each(codes, "changed", piece => facts.Apply(piece, settings.Unit));
    }

    private Result<string> ApplyToBundle(ParseResult parse, YardFile yard, Bundle bundle)
    {
        if (parse.GetValue(Place) is not { } there || All.OfType<Option<string>>().Any(option => option != Place && parse.GetValue(option) is not null)) return LabelFaults.ChangeOfBundle(bundle.Code.ToString());
        return new ChangeLabels(yard).MoveBundle(bundle.Code, there);
    }

    private Result<string> ApplyToBin(ParseResult parse, ChangePieces change, Code code)
    {
        Option<string>[] fits = [Quantity, Place, Note];
        if (All.OfType<Option<string>>().Except(fits).Any(option => parse.GetValue(option) is not null)) return YardFaults.OnlyForPieces();
        if (fits.All(option => parse.GetValue(option) is null)) return YardFaults.NothingToChange();
        if (parse.GetValue(Quantity) is not { } count) return change.SetBin(code, null, parse.GetValue(Place), parse.GetValue(Note));
        return int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out var quantity) && quantity <= PieceRules.MostInABin
            ? change.SetBin(code, quantity, parse.GetValue(Place), parse.GetValue(Note))
            : YardFaults.BinCountUnreadable(PieceRules.MostInABin);
    }
}
