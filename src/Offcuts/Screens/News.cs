using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What the shell tells the places. Closed.</summary>
internal abstract record News
{
    private News()
    {
    }

    /// <summary>The yard as it is now.</summary>
    public sealed record Fresh(YardSnapshot Yard) : News
    {
        /// <summary>True where nobody but this screen has changed it since the last reading.</summary>
        public bool Own { get; init; }
    }

    /// <summary>What was looked up.</summary>
    public sealed record LookedUp(PieceCard Card) : News;

    /// <summary>An errand was done.</summary>
    public sealed record Done(Errand Errand, string Told) : News
    {
        /// <summary>The line that was saved or corrected, so that it can be corrected; nothing for other errands.</summary>
        public SavedLine? Line { get; init; }
    }

    /// <summary>An errand was refused; nothing was changed.</summary>
    public sealed record Refused(Errand Errand, IReadOnlyList<Fault> Faults) : News;

    /// <summary>How far a change, or reading the yard, has come; nothing where it is through.</summary>
    /// <param name="Progress">How far.</param>
    /// <param name="MayStop">True where it can be stopped.</param>
    /// <param name="Id">Which one it is.</param>
    public sealed record Working(WorkProgress? Progress, bool MayStop, int Id = 0) : News;

    /// <summary>How far a match has come.</summary>
    /// <param name="Progress">Its figures; nothing before it has any.</param>
    public sealed record Matching(MatchProgress? Progress) : News
    {
        /// <summary>For how many seconds it has run.</summary>
        public int Seconds { get; init; }
    }

    /// <summary>The plan that a match found.</summary>
    public sealed record Matched(Plan Plan) : News
    {
        /// <summary>What ended the match.</summary>
        public MatchEnd End { get; init; }
    }

    /// <summary>Why a cut is filled as it is, line by line.</summary>
    public sealed record Explained(IReadOnlyList<string> Lines) : News;

    /// <summary>Several plans to pick from.</summary>
    public sealed record Compared(IReadOnlyList<Rival> Rivals, bool Stopped = false) : News;

    /// <summary>What a wall would enter among the needs of its stage was looked up.</summary>
    /// <param name="Wall">Its name.</param>
    /// <param name="NewNames">Names among it that nothing has yet.</param>
    public sealed record WouldEnter(string Wall, IReadOnlyList<NewName> NewNames) : News;

    /// <summary>A wall was looked up.</summary>
    public sealed record WallOpened(WallCard Card) : News;

    /// <summary>The wall of the plan that is shown was looked up, to be drawn there.</summary>
    public sealed record WallDrawn(WallCard Card) : News;

    /// <summary>The laying that was found for a wall.</summary>
    public sealed record WallFilled(UseCases.WallFilled Filled) : News;

    /// <summary>A filling was kept as a plan of this number.</summary>
    public sealed record WallKept(string Wall, int Id) : News;

    /// <summary>Courses were stacked.</summary>
    public sealed record Stacked(WallStacked Outcome) : News;

    /// <summary>How far the reading of pictures has come.</summary>
    public sealed record Counting(CountProgress Progress) : News;

    /// <summary>What a count says.</summary>
    public sealed record Counted(YardCount Count) : News;

    /// <summary>A label as it will be printed by a layout.</summary>
    public sealed record Previewed(Code Code, string Layout, IReadOnlyList<string> Lines) : News;

    /// <summary>What of the free things serves the other build.</summary>
    /// <param name="Free">What is free.</param>
    /// <param name="Match">What of it serves them.</param>
    /// <param name="Lines">The same line by line.</param>
    public sealed record TheirsMatched(WhatIsFree Free, TheirMatch Match, IReadOnlyList<string> Lines) : News;

    /// <summary>What fits one place.</summary>
    public sealed record Fitting(FitsFound Found) : News;

    /// <summary>What may go to another build.</summary>
    public sealed record FreeFound(WhatIsFree Free) : News;

    /// <summary>Loads of what is to go.</summary>
    public sealed record LoadsMade(Core.HandOvers.LoadLists Loads) : News;

    /// <summary>A plan was kept.</summary>
    public sealed record Kept(PlanKept Plan) : News;

    /// <summary>A plan, or a part of it, was carried out.</summary>
    public sealed record Cut(int PlanId, CarriedOut Outcome) : News;
}

/// <summary>What is known of one piece or bin beyond itself.</summary>
/// <param name="Code">Its code.</param>
/// <param name="History">What was done to it, newest first.</param>
/// <param name="Family">Its family tree; empty where it has none.</param>
internal sealed record PieceCard(Code Code, IReadOnlyList<string> History, IReadOnlyList<string> Family);

/// <summary>One line for the person, about what just happened.</summary>
internal sealed record Notice(string Text, Tone Tone = Tone.Plain)
{
    public static Notice None { get; } = new("");

    public static Notice Of(IReadOnlyList<Fault> faults) =>
        new(faults.Count == 1 ? faults[0].ToString() : $"{faults[0]} (and {faults.Count - 1} more)", Tone.Fault);
}

/// <summary>A place's next state, what it asks of the shell, and what it says.</summary>
internal readonly record struct Turn<TState>(TState State, Errand? Errand = null, Notice? Notice = null);
