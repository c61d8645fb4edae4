using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Core.HandOvers;
using Offcuts.Core.Measures;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What is asked at the hand-over's place, and what the answers mean: pure.</summary>
internal static class HandAsks
{
    /// <summary>What is typed in place of a receipt where the other side only told.</summary>
    public const string Said = "said";

    private const string Ending = ".offcuts-hand";

    public static Ask.Write Bed { get; } = new("Describe a bed or trailer: its name, the longest piece, the weight it may carry, how much fits if you know it, like trailer: 10' 1200 lb 80 cu ft", Topic.Bed, "bed");

    public static Ask.Write Receipt { get; } = new("The receipt that their program shows, like R-K7F-3MXX; or the word said, where they only told you. From then on neither it nor what was done before it is taken back", Topic.Receipt, "receipt");

    public static Ask.Write Theirs { get; } = new("Which files tell what they need: cuts ann.csv, or wall garage.txt system ours.txt; their prices behind: prices ann-prices.csv", Topic.TheirNeeds, "needs");

    public static Ask.Write Weigh { get; } = new("What one of something weighs, like panel tie 0.1 lb or K7F3MXX 18 kg; it counts for the loads made from now on", Topic.Weigh, "weight");

    public static Ask.Write ListFile { get; } = new("A new PDF file for the list, every code to be ticked off; on the page of loads, with the loads", Topic.HandListFile, "file");

    public static Ask.Write Part { get; } = new("What is back: codes, and counted things behind a comma, like K7F3MXX, panel tie x40", Topic.HandPart, "back");

    public static Ask.Write Settle { get; } = new("What does not come back as it went, a colon, and what came in its place, like K7F3MXX: 2x4 5' or panel tie x12: nothing", Topic.HandSettle, "settle");

    public static Ask.Write File { get; } = new("A file that their Offcuts takes in, with codes and history; notes and prices stay here. Empty for none", Topic.HandFile, "file");

    public static Ask.Choose How(HandState state)
    {
        var (pieces, counted) = HandModel.Going(state);
        var parts = new List<string>();
        if (pieces.Count > 0) parts.Add(Words.Count(pieces.Count, "piece"));
        if (counted.Count > 0) parts.Add(Words.Count(counted.Sum(one => one.Count), "counted thing"));
        return new Ask.Choose(
            $"Hand {string.Join(" and ", parts)} over: as what?{(state.Free!.Proven ? "" : " It is NOT PROVEN that no stage of yours gets worse")}",
            [new Choice('g', "gift", Want: Want.HandGift), new Choice('l', "loan", Want: Want.HandLoan), new Choice('s', "sale", Want: Want.HandSale)]);
    }

    public static Ask.Write ToWhom(HandOverKind kind) => kind switch
    {
        HandOverKind.Gift => new Ask.Write("To whom does it go?", Topic.HandTo, "to"),
        HandOverKind.Loan => new Ask.Write("To whom is it lent, and until which day, like Ann until 2026-09-30? The day may be left out", Topic.HandTo, "to"),
        _ => new Ask.Write("To whom is it sold, and for how much, like Ann for 25?", Topic.HandTo, "to"),
    };

    public static Ask.Choose Back(HandOver lent)
    {
        var away = lent.Items.Where(item => item.Away > 0).ToArray();
        return new Ask.Choose(
            $"Is everything of hand-over {lent.Id} back from {lent.Terms.To}: {Words.Count(away.Sum(item => item.Away), "thing")}?",
            [new Choice('y', "all back", new Errand.HandBack(lent.Id)), new Choice('p', "a part..", Want: Want.BackInPart), new Choice('s', "settle..", Want: Want.Settle)]);
    }

    /// <summary>What is asked behind the letter that was pressed for a loan; none where it asks nothing.</summary>
    public static Ask.Write? Behind(Want? want) => want switch
    {
        Want.BackInPart => Part,
        Want.Settle => Settle,
        _ => null,
    };

    /// <summary>What a written answer leads to.</summary>
    public static Turn<HandState> Written(HandState state, Ask.Write write)
    {
        var text = state.Line.Text.Trim();
        switch (write.Topic)
        {
            case Topic.Bed:
                return BedText.Read(text) is { Ok: false } wrong ? Wrong(state, wrong.Fault) : new(state with { Line = state.Line.Close() }, new Errand.SetBed(text));
            case Topic.Receipt when state.Yard.HandOvers.FirstOrDefault(one => one.Id == state.Asked) is { } gone:
                if (string.Equals(text, Said, StringComparison.OrdinalIgnoreCase)) return new(state with { Line = state.Line.Close() }, new Errand.ConfirmHand(gone.Id, ""));
                return Transfers.ReadReceipt(text) is { Ok: false } unreadable ? Wrong(state, unreadable.Fault)
                    : Transfers.ReadReceipt(text).Value != Transfers.Receipt(gone.Transfer) ? Wrong(state, HandFaults.ReceiptOfAnother(gone.Id))
                    : new(state with { Line = state.Line.Close() }, new Errand.ConfirmHand(gone.Id, text));
            case Topic.Receipt:
                return Wrong(state, HandFaults.NoSuchHandOver(state.Asked));
            case Topic.TheirNeeds:
                return TheirFiles.Read(text) is { Ok: false } unclear ? Wrong(state, unclear.Fault) : new(state with { Line = state.Line.Close() }, new Errand.MatchTheirs(text), Notice.None);
            case Topic.Weigh:
                if (!MakeLoads.ReadWeights([text]).TryGet(out var said)) return Wrong(state, MakeLoads.ReadWeights([text]).Fault);
                return new(state with { Line = state.Line.Close(), Weights = state.Weights.SetItems(said), Loads = null }, Notice: new Notice("taken for the loads from now on; ^L makes them up"));
            case Topic.HandListFile when state.Asked > 0:
                return new(state with { Line = state.Line.Close() }, new Errand.HandList(text, state.Asked, [], [], null));
            case Topic.HandListFile:
                var (some, counts) = HandModel.Going(state);
                return new(state with { Line = state.Line.Close() }, new Errand.HandList(text, 0, some, counts, state.Page == HandPage.Loads ? state.Loads : null) { Weights = state.Weights });
            case Topic.HandPart:
                return new(state with { Line = state.Line.Close() }, new Errand.HandPart(state.Asked, text));
            case Topic.HandSettle:
                return new(state with { Line = state.Line.Close(), Doubted = "" }, new Errand.HandSettle(state.Asked, text, Meant: text.Length > 0 && text == state.Doubted));
            case Topic.HandTo:
                var terms = Terms(state.Kind, text, state.Yard.Settings.CurrencySign);
                if (!terms.TryGet(out var agreed)) return Wrong(state, terms.Fault);
                return new(state with { Terms = agreed, Line = state.Line.Close().Open(File, "") });
            case Topic.HandFile when state.Terms is { } known:
                var (pieces, counted) = HandModel.Going(state);
                var path = text.Length == 0 ? null : text.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) ? text : text + Ending;
                return new(state with { Line = state.Line.Close() }, new Errand.HandOver(new HandWish(pieces, counted, known, new FileWish(path)), state.Free!), Notice.None);
            default:
                return new(state with { Line = state.Line.Close() });
        }
    }

    /// <summary>To whom and on what terms, as typed.</summary>
    public static Result<Terms> Terms(HandOverKind kind, string text, string sign)
    {
        var (name, behind) = kind switch
        {
            HandOverKind.Loan => Parted(text, " until ") is { Behind.Length: > 0 } until ? until : Parted(text, " till "),
            HandOverKind.Sale => Parted(text, " for "),
            _ => (text, ""),
        };
        DateOnly? due = null;
        if (kind == HandOverKind.Loan && behind.Length > 0)
        {
            if (!DateOnly.TryParseExact(behind, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)) return CommandFaults.DayUnreadable(behind);
            due = day;
        }

        Money? price = null;
        if (kind == HandOverKind.Sale)
        {
            var read = Money.Parse(behind.StartsWith(sign, StringComparison.Ordinal) ? behind[sign.Length..] : behind);
            if (!read.Ok) return behind.Length == 0 ? HandFaults.PriceMissing() : Result<Terms>.Fail(read.Faults);
            price = read.Value;
        }

        var terms = new Terms(name.Trim(), kind, price, due);
        return terms.Faults() is { Count: > 0 } faults ? Result<Terms>.Fail(faults) : terms;
    }

    private static (string Name, string Behind) Parted(string text, string at) =>
        text.LastIndexOf(at, StringComparison.OrdinalIgnoreCase) is > 0 and var i ? (text[..i], text[(i + at.Length)..].Trim()) : (text, "");

    private static Turn<HandState> Wrong(HandState state, Fault fault) => new(state, Notice: Notice.Of([fault]));
}
