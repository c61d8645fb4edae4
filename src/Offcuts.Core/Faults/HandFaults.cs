using Offcuts.Core.Yard;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about beds, loads, and handing over to another build.</summary>
public static class HandFaults
{
    public static Fault BedWithoutName() => new("a bed has a name");

    public static Fault BedFigure() => new("a bed has a longest piece and a weight it may carry, both over 0; its volume may be left out");

    public static Fault BedUnreadable() =>
        new("write a bed like: trailer: 10' 1200 lb 80 cu ft (the longest piece, the weight it may carry, and, if you know it, how much fits); or in mm, kg and m3");

    public static Fault NoSuchBed(string name, IReadOnlyList<string> known) =>
        new($"there is no bed named {TextRules.Harmless(name)}{(known.Count == 0 ? "; describe one with: offcuts hand bed \"trailer: 10' 1200 lb\"" : $"; there {(known.Count == 1 ? "is" : "are")}: {string.Join(", ", known.Select(TextRules.Harmless))}")}");

    public static Fault NoBed() => new("no bed or trailer is described yet: offcuts hand bed \"trailer: 10' 1200 lb\"");

    public static Fault ToWhom() => new("say to whom it goes");

    public static Fault PriceMissing() => new("say for how much too, like: Ann for 25");

    public static Fault OneKind() => new("it is a gift, a loan or a sale: say one of them, and for a sale the price");

    public static Fault DueWithoutLoan() => new("only a loan is due back");

    public static Fault ReceiptUnreadable() => new("a receipt is written like R-K7F-3MXX; type it as the other side's program shows it");

    public static Fault ReceiptOfAnother(int id) => new($"this is not the receipt of hand-over {id}");

    public static Fault NoSuchHandOver(int id) => new($"there is no hand-over {id}; see: offcuts hand list");

    public static Fault NoHandOverOf(string receipt) => new($"no hand-over of this yard has the receipt {TextRules.Harmless(receipt)}");

    public static Fault ConfirmedAlready(int id, DateOnly on) => new($"hand-over {id} was confirmed on {on:yyyy-MM-dd} already");

    public static Fault UndoOfConfirmed(int id, string to) =>
        new($"hand-over {id} is confirmed by {TextRules.Harmless(to)}: it can't be taken back here, nor what was done before it; what comes back is entered with: offcuts hand back, or taken in by its file");

    public static Fault NothingToHandOver() => new("name what goes: codes, or --free for everything that is free");

    public static Fault NeedsMissing() => new("say what they need, with --cuts FILE or --wall FILE; everything that is free is told by: offcuts hand free");

    public static Fault TheirFilesUnreadable() =>
        new("write which files tell what they need, each once: cuts and a file, or wall and a file, with system or prices and a file behind, like: cuts ann.csv prices ann-prices.csv");

    public static Fault SettledUnreadable() =>
        new("write what does not come back, a colon, then what came in its place or nothing, like: K7F3MXX: nothing, or K7F3MXX: 2x4 5', or panel tie x12: nothing");

    public static Fault NameLikeSlip(NewName name) => new($"\"{TextRules.Harmless(name.Material.Name)}\" is a new name: {name.Why}; if it is meant, Enter once more");

    public static Fault SizeLikeSlip(OddSize size) => new($"{size.What} is unusual: {size.Why}; if it is meant, Enter once more");

    public static Fault SystemWithoutWall() => new("--system goes with --wall FILE");

    public static Fault FileMissing() => new("--from, --notes and --prices go with --file FILE");

    public static Fault NotFree(string code, string why) =>
        new($"{TextRules.Harmless(code)} is not free: {TextRules.Harmless(why)}; if it is to go all the same, add --anyway");

    public static Fault WaitsInPlan(string code, string why) =>
        new($"{TextRules.Harmless(code)} {TextRules.Harmless(why)}: drop it from that plan or cut it first, then ask what it would cost to let it go");

    public static Fault BinHolds(string hardware, int asked, int free) =>
        new($"{asked} {TextRules.Harmless(hardware)} are to go, but {free} are free; if they are to go all the same, add --anyway");

    public static Fault CountUnreadable() => new("counted things are given as a name or code and a count, like: \"panel tie x40\"");

    public static Fault NotLent(string code, int? only) => new($"{TextRules.Harmless(code)} is not away on {(only is { } number ? $"the loan of hand-over {number}" : "a loan")}");

    public static Fault SettledHow() => new("say --nothing where nothing comes back, or --instead with what came in its place: a line as for offcuts add, or the code of a piece");

    public static Fault InsteadOfOne() => new("what came in its place is said of one piece at a time; the others are settled by themselves");

    public static Fault InsteadCounted(string name) => new($"{TextRules.Harmless(name)} is counted: what of it came back is said with: offcuts hand back --count");

    public static Fault NotAway(string code, string state) =>
        new($"{TextRules.Harmless(code)} is marked as {TextRules.Harmless(state)} here; if it is back all the same, say so first with: offcuts mark back {TextRules.Harmless(code)}");

    public static Fault MoreThanAway(string code, int away) => new($"only {away} of {TextRules.Harmless(code)} are away");

    public static Fault KeepBackUnreadable() =>
        new("write a material and how much of it always stays, like: keep-back 2x4 40', or by count: keep-back 2x4 6; to keep none back: keep-back 2x4 none");

    public static Fault KeepBackCounted(string name) => new($"{TextRules.Harmless(name)} is counted: say how many always stay, like: keep-back {TextRules.Harmless(name)} 20");

    public static Fault NotCounted(string name, IReadOnlyList<string> counted) =>
        new($"no counted thing is called \"{TextRules.Harmless(name)}\"{(counted.Count > 0 ? $"; there are: {string.Join(", ", counted.Take(8).Select(TextRules.Harmless))}{(counted.Count > 8 ? $" and {counted.Count - 8} more" : "")}" : ", and none is catalogued")}");

    public static Fault TransferForeign() => new("this is no hand-over file of Offcuts");

    public static Fault TransferDamaged() => new("this hand-over file is cut short or damaged; have it copied again");

    public static Fault TransferAltered() => new("what is in this hand-over file is not what was written: it was altered or damaged on the way; have it copied again");

    public static Fault TransferTooLarge(int megabytes) => new($"this hand-over file unpacks to more than {megabytes} MB; that is no list of pieces");

    public static Fault TransferNewer(int schema, int known) => new($"this hand-over file is of schema {schema} and this program reads up to {known}; a newer program reads it");

    public static Fault TransferWrong(string where, string what) => new($"{TextRules.Harmless(where)}: {what}; nothing was taken in");

    public static Fault OwnTransfer(int id) => new($"this is the file of this yard's own hand-over {id}; it is for the other side");

    public static Fault OwnTransferTakenBack() => new("this is the file of a hand-over that this yard itself made and took back; it is for nobody");

    public static Fault WeightUnreadable(string typed) =>
        new($"\"{TextRules.Harmless(typed)}\" says no weight; write what and what one of it weighs, like: \"panel tie 0.1 lb\" or \"K7F3MXX 18 kg\"");

    public static Fault NothingFits() => new("nothing that is free goes on any of these beds");
}
