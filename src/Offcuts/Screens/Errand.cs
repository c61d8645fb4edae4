using Offcuts.Core.HandOvers;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching.Runs;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What a place asks of the shell, since no place touches the yard itself. Closed.</summary>
internal abstract record Errand
{
    private Errand()
    {
    }

    /// <summary>History and family of a piece or bin.</summary>
    public sealed record LookUp(Code Code) : Errand;

    /// <summary>Another state for pieces.</summary>
    public sealed record Mark(IReadOnlyList<Code> Codes, PieceState State) : Errand;

    /// <summary>Another condition for pieces.</summary>
    public sealed record Judge(IReadOnlyList<Code> Codes, Condition Condition) : Errand;

    /// <summary>Pieces and bins lie somewhere else now.</summary>
    public sealed record PutAt(IReadOnlyList<Code> Codes, string Place) : Errand;

    /// <summary>Strap pieces together under one label.</summary>
    /// <param name="Codes">The pieces.</param>
    /// <param name="Name">What the bundle is called; may be empty.</param>
    /// <param name="Place">Where it lies; none where all lie at one place already.</param>
    public sealed record Strap(IReadOnlyList<Code> Codes, string Name, string? Place) : Errand;

    /// <summary>Keep pieces for a stage.</summary>
    public sealed record Reserve(IReadOnlyList<Code> Codes, string Stage) : Errand;

    /// <summary>Let any stage have reserved pieces.</summary>
    public sealed record Free(IReadOnlyList<Code> Codes) : Errand;

    /// <summary>Let any stage have all that is reserved for this one.</summary>
    public sealed record FreeAll(string Stage) : Errand;

    /// <summary>Print these labels with the next sheet.</summary>
    public sealed record QueueLabels(IReadOnlyList<Code> Codes) : Errand;

    /// <summary>Save what a typed line says.</summary>
    /// <param name="Batch">What it says.</param>
    /// <param name="NewNames">True where a name that nothing has yet is meant.</param>
    /// <param name="OddSizes">True where an unusual size is meant.</param>
    public sealed record Catalogue(TypedBatch Batch, bool NewNames = false, bool OddSizes = false) : Errand
    {
        /// <summary>The line as it was typed.</summary>
        public string Text { get; init; } = "";
    }

    /// <summary>Correct what a line catalogued.</summary>
    /// <param name="Line">What was saved.</param>
    /// <param name="Text">What it should have been.</param>
    /// <param name="Batch">How that is understood.</param>
    public sealed record Correct(SavedLine Line, string Text, TypedBatch Batch) : Errand;

    /// <summary>Write the labels that wait as a PDF.</summary>
    public sealed record PrintLabels(PaperWish Wish) : Errand;

    /// <summary>Write labels with new codes as a PDF.</summary>
    public sealed record PrintBlanks(int Count, PaperWish Wish) : Errand;

    /// <summary>A new stage at the end.</summary>
    public sealed record AddStage(string Name, DateOnly? Day) : Errand;

    /// <summary>One more need of a stage.</summary>
    /// <param name="Stage">The stage.</param>
    /// <param name="Line">The need as typed.</param>
    /// <param name="NewNames">True where a name that nothing has yet is meant.</param>
    /// <param name="OddSizes">True where a length that looks like a slip is meant.</param>
    public sealed record AddNeed(string Stage, string Line, bool NewNames = false, bool OddSizes = false) : Errand;

    /// <summary>Another need in the place of one.</summary>
    /// <param name="Stage">The stage.</param>
    /// <param name="Need">Name of the need as it stood.</param>
    /// <param name="Line">What it should be, as typed.</param>
    public sealed record ReplaceNeed(string Stage, string Need, string Line) : Errand;

    /// <summary>One need less.</summary>
    public sealed record DropNeed(string Stage, string Need) : Errand;

    /// <summary>A stage less.</summary>
    public sealed record RemoveStage(string Stage) : Errand;

    /// <summary>The day a stage begins.</summary>
    public sealed record SetDay(string Stage, DateOnly? Day) : Errand;

    /// <summary>Another name for a stage.</summary>
    public sealed record RenameStage(string Stage, string To) : Errand;

    /// <summary>Another place in the order, 1 for the first.</summary>
    public sealed record MoveStage(string Stage, int Position) : Errand;

    /// <summary>Work of seconds beside the screen, for what is meant.</summary>
    public abstract record Search(MatchWish Wish) : Errand;

    /// <summary>Give up what still waits in a kept plan.</summary>
    public sealed record DropPlan(int PlanId) : Errand;

    /// <summary>Find the best plan.</summary>
    public sealed record Match(MatchWish Wish) : Search(Wish);

    /// <summary>Say why a plan fills a cut as it does.</summary>
    /// <param name="Wish">What the plan was matched for.</param>
    /// <param name="Plan">The plan.</param>
    /// <param name="Stage">The cut's stage.</param>
    /// <param name="Cut">The cut's name.</param>
    /// <param name="KeptAs">Number of the kept plan; none for one that was just found.</param>
    public sealed record Explain(MatchWish Wish, Plan Plan, string Stage, string Cut, int? KeptAs = null) : Search(Wish);

    /// <summary>Find several plans to pick from.</summary>
    public sealed record Compare(MatchWish Wish) : Search(Wish);

    /// <summary>Stop looking and take the best plan so far.</summary>
    public sealed record StopMatch : Errand;

    /// <summary>Stop the change of many that is being made, where it is still this one: where it is not saved by then, nothing of it is.</summary>
    public sealed record StopWork(int Id) : Errand;

    /// <summary>Keep a plan that was found.</summary>
    /// <param name="Plan">The plan.</param>
    /// <param name="FoundAt">The yard's change number when its match began.</param>
    public sealed record Keep(Plan Plan, long FoundAt) : Errand;

    /// <summary>Say what was cut.</summary>
    public sealed record CarryOut(int PlanId, IReadOnlyList<CutAct> Acts, bool Hardware) : Errand;

    /// <summary>Take back the last change of the yard.</summary>
    /// <param name="Seen">The number of the last change that was shown when this was asked.</param>
    public sealed record TakeBack(long Seen) : Errand;

    /// <summary>Do again what was taken back last.</summary>
    /// <param name="Seen">The number of the last change that was shown when this was asked.</param>
    public sealed record DoAgain(long Seen) : Errand;

    /// <summary>Set a price from a typed line; it is dated today.</summary>
    /// <param name="Line">The line.</param>
    /// <param name="NewNames">True where a name that nothing has yet is meant.</param>
    /// <param name="OddSizes">True where a length that looks like a slip is meant.</param>
    public sealed record SetPrice(string Line, bool NewNames = false, bool OddSizes = false) : Errand;

    /// <summary>A price is today what it was.</summary>
    public sealed record PriceStillSo(StorePrice Price) : Errand;

    /// <summary>A price less.</summary>
    public sealed record RemovePrice(StorePrice Price) : Errand;

    /// <summary>Set what a typed line says.</summary>
    public sealed record SetSetting(string Line) : Errand;

    /// <summary>Look what may go to another build.</summary>
    public sealed record FindFree : Errand;

    /// <summary>Make up loads for all beds.</summary>
    public sealed record MakeLoads(IReadOnlyList<Code> Pieces, IReadOnlyList<Counted> Counted) : Errand
    {
        /// <summary>What one of something weighs by the person's word.</summary>
        public IReadOnlyDictionary<string, long> Weights { get; init; } = new Dictionary<string, long>();
    }

    /// <summary>Match what is free against another build's needs, told by files on one line.</summary>
    public sealed record MatchTheirs(string Files) : Errand;

    /// <summary>Show a label as it will be printed.</summary>
    public sealed record PreviewLabel(Code Code, string Layout) : Errand;

    /// <summary>Make a label void.</summary>
    public sealed record VoidLabel(Code Code) : Errand;

    /// <summary>Open a bundle into its pieces.</summary>
    public sealed record OpenBundle(Code Code) : Errand;

    /// <summary>Write the list of a hand-over, or of what is to go, as a PDF file.</summary>
    /// <param name="File">Where to.</param>
    /// <param name="Id">The hand-over; 0 for what is only marked.</param>
    /// <param name="Pieces">What is marked.</param>
    /// <param name="Counted">Counted things that are.</param>
    /// <param name="Loads">How it is driven; none where that was not made up.</param>
    public sealed record HandList(string File, int Id, IReadOnlyList<Code> Pieces, IReadOnlyList<Counted> Counted, LoadLists? Loads) : Errand
    {
        /// <summary>What one of something weighs by the person's word.</summary>
        public IReadOnlyDictionary<string, long> Weights { get; init; } = new Dictionary<string, long>();
    }

    /// <summary>A part of a loan is back, as typed.</summary>
    public sealed record HandPart(int Id, string What) : Errand;

    /// <summary>A part of a loan does not come back as it went, as typed.</summary>
    /// <param name="Id">The loan.</param>
    /// <param name="What">As typed.</param>
    /// <param name="Meant">True where new names and unusual sizes are meant.</param>
    public sealed record HandSettle(int Id, string What, bool Meant = false) : Errand
    {
        /// <summary>True where it was refused for nothing but a name or a size that looks like a slip.</summary>
        public bool Slip { get; init; }
    }

    /// <summary>Hand over.</summary>
    /// <param name="Wish">What, to whom, on what terms.</param>
    /// <param name="Known">What was found to be free.</param>
    public sealed record HandOver(HandWish Wish, WhatIsFree Known) : Errand;

    /// <summary>Describe a bed.</summary>
    public sealed record SetBed(string Line) : Errand;

    /// <summary>The other side has it: by its receipt, or by word where that is empty.</summary>
    public sealed record ConfirmHand(int Id, string Receipt) : Errand;

    /// <summary>All of a loan is back.</summary>
    public sealed record HandBack(int Id) : Errand;

    /// <summary>Show another place, with what is meant there chosen.</summary>
    public sealed record Open(Place Where) : Errand
    {
        /// <summary>What is to stand on its line.</summary>
        public string Line { get; init; } = "";

        /// <summary>The stage or the wall.</summary>
        public string Name { get; init; } = "";

        /// <summary>The kept plan; 0 for none.</summary>
        public int PlanId { get; init; }
    }

    /// <summary>Read pictures and scanners' files, and hold them against the yard.</summary>
    /// <param name="Path">A folder or a file.</param>
    /// <param name="At">Where all was seen; empty where the folders or labels of places say it.</param>
    /// <param name="Partly">True where no place was counted whole.</param>
    public sealed record CountFiles(string Path, string At, bool Partly) : Errand;

    /// <summary>Reckon what was read already once more.</summary>
    public sealed record CountAgain(YardCount Count, bool Partly) : Errand;

    /// <summary>Make the yard what a count says.</summary>
    public sealed record AcceptCount(YardCount Count) : Errand;

    /// <summary>Give a place a label.</summary>
    public sealed record LabelPlace(string Place) : Errand;

    /// <summary>Leave the program.</summary>
    public sealed record Leave : Errand;

    /// <summary>Look a wall up with all that is counted and drawn of it.</summary>
    public sealed record OpenWall(string Wall) : Errand;

    /// <summary>Look up the wall that the plan on the screen fills, to be drawn there.</summary>
    public sealed record DrawWall(string Wall) : Errand;

    /// <summary>Find what fits one place.</summary>
    public sealed record FindFit(OneOffNeed Need) : Errand;

    /// <summary>Find the best laying of a wall.</summary>
    public sealed record FillWall(string Wall, bool? Buy) : Errand;

    /// <summary>Keep how a wall is filled.</summary>
    public sealed record KeepWall(WallFilled Filled) : Errand;

    /// <summary>Say that courses of a wall are stacked.</summary>
    public sealed record StackWall(StackedWish Wish) : Errand;

    /// <summary>Save the sheet of a wall or a system.</summary>
    /// <param name="Kind">Which.</param>
    /// <param name="Stage">The stage of a new wall.</param>
    /// <param name="Edit">What was typed.</param>
    public sealed record SaveSheet(SheetKind Kind, string Stage, SheetEdit Edit) : Errand;

    /// <summary>Look which names a wall would enter that nothing has yet, and ask whether it is to enter its needs.</summary>
    public sealed record AskToEnter(string Wall) : Errand;

    /// <summary>Enter what a wall is cut and counted among the needs of its stage.</summary>
    /// <param name="Wall">Its name.</param>
    /// <param name="Meant">The names that nothing has yet and that were said to be meant; any other is refused.</param>
    public sealed record EnterWall(string Wall, IReadOnlyList<string> Meant) : Errand;

    /// <summary>Build a wall in another stage.</summary>
    public sealed record MoveWall(string Wall, string Stage) : Errand;

    /// <summary>A wall less.</summary>
    public sealed record DropWall(string Wall) : Errand;

    /// <summary>A system less.</summary>
    public sealed record DropSystem(string System) : Errand;

    /// <summary>Write a wall's rows as a PDF, with the cut sheet where a plan fills them.</summary>
    public sealed record PrintWall(string Wall, RunPlan? Plan, string File) : Errand
    {
        /// <summary>How far its pieces have come, where it goes on with a filling that is begun.</summary>
        public KeptPlan? Steps { get; init; }
    }

    /// <summary>Write a kept plan's cut sheet as a PDF.</summary>
    public sealed record PrintSheet(int PlanId, string File) : Errand;
}

/// <summary>Where and how labels are printed.</summary>
/// <param name="Layout">Name of a layout.</param>
/// <param name="Start">First free label of the first sheet, from 1.</param>
/// <param name="File">The PDF file.</param>
internal sealed record PaperWish(string Layout, int Start, string File);
