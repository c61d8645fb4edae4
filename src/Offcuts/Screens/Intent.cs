namespace Offcuts.Screens;

/// <summary>What a person can mean at the keyboard. Closed: every key of every place says one of these.</summary>
internal abstract record Intent
{
    private Intent()
    {
    }

    /// <summary>The typed line now holds this.</summary>
    public sealed record Type(string Text) : Intent;

    /// <summary>Several lines were pasted at once.</summary>
    public sealed record Paste(IReadOnlyList<string> Lines) : Intent;

    /// <summary>The typed line is ready, or the chosen thing is wanted.</summary>
    public sealed record Enter : Intent;

    /// <summary>Back, one step.</summary>
    public sealed record Escape : Intent;

    /// <summary>A letter answers the question that is open.</summary>
    public sealed record Answer(char Letter) : Intent;

    /// <summary>So many lines down the list; up where negative.</summary>
    public sealed record Move(int By) : Intent;

    /// <summary>A screenful down the list; up where negative. The view turns it into lines.</summary>
    public sealed record Page(int By) : Intent;

    /// <summary>A screenful on in what is told of the chosen one; back where negative. The view turns it into as many lines as there are.</summary>
    public sealed record Read(int By) : Intent;

    /// <summary>To the first or the last line of the list.</summary>
    public sealed record Edge(bool Last) : Intent;

    /// <summary>An earlier or a later typed line.</summary>
    public sealed record Recall(int Step) : Intent;

    /// <summary>The arrows move in the other list.</summary>
    public sealed record OtherList : Intent;

    /// <summary>Something this place can do.</summary>
    public sealed record Do(Want Want) : Intent;

    /// <summary>Another place.</summary>
    public sealed record GoTo(Place Place) : Intent;

    /// <summary>The next place, or the one before.</summary>
    public sealed record Along(int Step) : Intent;

    /// <summary>Take back the last change of the yard.</summary>
    public sealed record TakeBack : Intent;

    /// <summary>Do again what was taken back last.</summary>
    public sealed record DoAgain : Intent;

    /// <summary>What can be done here.</summary>
    public sealed record Help : Intent;

    /// <summary>A code is to be scanned or typed, and what it hangs on shown.</summary>
    public sealed record Jump : Intent;

    /// <summary>Leave the program.</summary>
    public sealed record Leave : Intent;
}

/// <summary>What can be wanted at one place or another beyond typing and moving.</summary>
internal enum Want
{
    SetState,
    Reserve,
    QueueLabel,
    Mark,
    MarkAll,
    PutAt,
    Judge,
    SetOrder,
    ShowGone,
    PrintLabels,
    PrintBlanks,
    Correct,
    NewStage,
    SetDay,
    Rename,
    TakeOff,
    PickStage,
    FreePieces,
    Match,
    Keep,
    CutAll,
    CutOtherwise,
    Buying,
    Sheet,
    OtherPlan,
    Why,
    Compare,
    Wish,
    Pin,
    Spare,
    Release,
    Elevation,
    Counts,
    Staging,
    Fill,
    Stack,
    Sheets,
    Systems,
    NewSheet,
    EditSheet,
    CopySheet,
    RenameSheet,
    EnterSheet,
    MoveSheet,
    DropSheet,
    AddLine,
    DoubleLine,
    DropLine,
    StepBack,
    StepAhead,
    SaveAnyway,
    SaveOver,
    TakeOther,
    LeaveForm,
    ChangeLine,
    StillSo,
    OtherPage,
    Loads,
    SetBed,
    HandOver,
    HandGift,
    HandLoan,
    HandSale,
    Confirm,
    ComeBack,
    BackInPart,
    Settle,
    Theirs,
    Weigh,
    ListFile,
    Void,
    OpenBundle,
    Strap,
}
