using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about making, keeping and carrying out plans.</summary>
public static class PlanFaults
{
    public static Fault NothingLacking() => new("nothing is lacking: every cut of these stages is made, or none was entered");

    public static Fault NoStageYet() => new("no stage is entered yet, so nothing is lacking: enter a stage and what it needs first");

    public static Fault NoSuchPlan(int id) => new($"there is no plan {id}");

    public static Fault NoPlan() => new("no plan is kept yet; make one with: offcuts plan --save");

    public static Fault TimeUnreadable() => new("the time is a number of seconds over 0, at most a day");

    public static Fault CutsFileMissing() => new("planning from files needs --cuts FILE; --stock and --prices are optional");

    public static Fault NotWithFiles() => new("a plan from files takes all their stages and is not saved: leave out stage names, --save and --release");

    public static Fault OnlyWithFiles() => new("--kerf and --keep go with --cuts FILE; for the yard set them with: offcuts settings");

    public static Fault ActsMissing() => new("say what was cut: --all, --piece PIECE, --stage STAGE or --hardware");

    public static Fault OnlyWithOnePiece() => new("--made, --spoilt and --left go with one --piece");

    public static Fault LeftWithoutMade() => new("--left goes with --made or --spoilt");

    public static Fault NoSuchStep(int number) => new($"the plan has no piece {number}");

    public static Fault StepNotWaiting(int number) => new($"piece {number} of the plan is done or dropped already");

    public static Fault BuyOrNot() => new("--buy and --no-buy can't both be meant; leave one of them out");

    public static Fault NoWaitingPiece(string code) => new($"no piece {code} waits in this plan");

    public static Fault PieceGone(string code) => new($"{code} is no longer in the yard; match again");

    public static Fault PieceChanged(string code) => new($"{code} has changed since the plan was made; match again");

    public static Fault NotNeeded(string stage, string cut, int planned, int needed) =>
        new($"{TextRules.Harmless(stage)} needs {(needed == 0 ? "no" : $"only {needed} of the {planned}")} {TextRules.Harmless(cut)} as planned any more, so nothing is cut for it: match again; what is sawn already is told as what really came of the piece");

    public static Fault AllAlone() => new("--all goes without --piece: it is everything that still waits");

    public static Fault PieceTwice() => new("one piece is named twice");

    public static Fault NoSuchCutOnPiece() => new("this cut is not planned on this piece");

    public static Fault NoSuchCutOnPiece(string cut, IEnumerable<string> planned) =>
        new($"no more of \"{TextRules.Harmless(cut)}\" is planned on this piece; planned on it: {string.Join(", ", planned.Select(TextRules.Harmless))}{(Length.Parse(cut, LengthUnit.Inch).Ok ? "; a length that is left to keep goes behind left" : "")}");

    /// <summary>A piece that was not there came to nothing: it is said where the question is whether it was cut.</summary>
    public static Fault NotFoundElsewhere() => new("a piece that is not found was not cut: Esc, and it waits; one of the yard is marked as missing by Enter on it, then n");

    /// <summary>What is left would get a label, and nobody keeps so little.</summary>
    public static Fault LeftLikeFeet(OddSize size, Length length) => new($"{size.What} is unusual: {size.Why}, inches {length.ToText(LengthUnit.Inch)}");

    public static Fault NoHardware(int id) => new($"plan {id} counts no hardware out");

    public static Fault MoreThanThePiece(Length length) => new($"that is more than the piece had: it was {length} long");

    public static Fault NotOutOf(string left, string piece) =>
        new($"{TextRules.Harmless(left)} is not sawn lengthwise out of {TextRules.Harmless(piece)}");

    public static Fault MoreThanItsFace() => new("that is more than the piece had: lengths and widths together are larger than its face");

    public static Fault WhereBad(Length left, IReadOnlyList<Span> bad) =>
        new($"the piece was bad or to be trimmed at {string.Join(", ", bad)}: say behind {left} where on it that lies, like: bad 10..14, or that none of it does: clean");

    public static Fault NoSuchGoodStretch(Length left, Length longest) =>
        new($"the {left} that is left can't be that good: the piece had no stretch over {longest} without a bad spot or a trimmed end");

    public static Fault NotBetweenBadSpots(IReadOnlyList<Length> stretches) =>
        new($"what came out right and what is left clean don't fit on the piece: between its bad spots and trimmed ends it had {string.Join(", ", stretches)}");

    public static Fault HardwareDone() => new("the hardware of this plan is counted out or given up already");

    public static Fault PinUnreadable(string text) =>
        new($"\"{TextRules.Harmless(text)}\" pins nothing; write the piece and the cut, like: K7F 3MXX for blocking");

    public static Fault PinOfPromised(string code) => new($"{code} can't be pinned: it waits to be cut for another plan or another stage of one");

    public static Fault NoSuchCut(string typed, IReadOnlyList<string> names) =>
        new($"no cut is named \"{TextRules.Harmless(typed)}\"{(names.Count == 0 ? "" : $"; there {(names.Count == 1 ? "is" : "are")}: {string.Join(", ", names.Select(TextRules.Harmless))}")}");

    public static Fault CutInSeveralStages(string cut, IReadOnlyList<string> stages) =>
        new($"several stages have a cut named {TextRules.Harmless(cut)}; write the stage before it, like: {TextRules.Harmless(stages[0])}: {TextRules.Harmless(cut)}");

    public static Fault NoSuchStockCode(string code) => new($"the stock file has no piece {TextRules.Harmless(code)}");

    public static Fault OneQuestion() => new("--explain, --compare and --save answer different questions: give one of them; --compare keeps a plan with --take");

    public static Fault TakeWithoutCompare() => new("--take goes with --compare");

    public static Fault NoSuchRival(int count) => new($"--take is a number from 1 to {count}");

    public static Fault Outdated(IReadOnlyList<(string Code, string Why)> pieces) =>
        new($"the yard has changed since this plan was found: {string.Join(", ", pieces.Select(piece => $"{piece.Code} is not as planned any more ({TextRules.Harmless(piece.Why)})"))}; match again");

    public static Fault MatchAgain() => new("the yard has changed since this plan was found; match again");

    public static Fault LackingNoMore(string cut, string stage) =>
        new($"{TextRules.Harmless(stage)} lacks no {TextRules.Harmless(cut)} any more that could be matched: it is made, or it fills a wall");

    public static Fault StageAlone() => new("--stage goes without --all, --piece, --made and --spoilt");

    public static Fault StageNotInPlan(string stage) => new($"the plan is not for a stage named {TextRules.Harmless(stage)}");

    public static Fault NothingWaitsFor(string stage) => new($"nothing of this plan waits for {TextRules.Harmless(stage)}");

    public static Fault NothingKeptOf(string code) => new($"no plan keeps anything of {code}, so that nothing of it is let go");

    public static Fault NothingWaits(int id) => new($"nothing of plan {id} waits any more");
}
