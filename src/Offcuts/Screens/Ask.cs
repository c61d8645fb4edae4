using Offcuts.Matching;

namespace Offcuts.Screens;

/// <summary>A question that is open at a place. It stands where the reading stands, and never covers what was typed.</summary>
internal abstract record Ask(string Question)
{
    /// <summary>The sheet that is asked about, where it is about one: the answer goes to that one, whichever is chosen by then.</summary>
    public NamedSheet? About { get; init; }

    /// <summary>Answered by one letter.</summary>
    public sealed record Choose(string Question, IReadOnlyList<Choice> Choices) : Ask(Question)
    {
        /// <summary>What a letter chooses, in either case; nothing where it is no answer.</summary>
        public Choice? Of(char letter) => Choices.FirstOrDefault(choice => choice.Letter == char.ToLowerInvariant(letter));
    }

    /// <summary>Answered on the typed line.</summary>
    /// <param name="Question">What is asked.</param>
    /// <param name="Topic">What the answer is for.</param>
    /// <param name="Label">The word before the line, while it is asked.</param>
    public sealed record Write(string Question, Topic Topic, string Label) : Ask(Question);
}

/// <summary>A sheet by its name, which stays the same where it stands elsewhere in a list by now.</summary>
/// <param name="Kind">Whether a wall's or a system's.</param>
/// <param name="Name">The name of the wall or the system.</param>
internal sealed record NamedSheet(SheetKind Kind, string Name);

/// <summary>One answer.</summary>
/// <param name="Letter">The key.</param>
/// <param name="Says">What it does.</param>
/// <param name="Errand">What is asked of the shell then.</param>
/// <param name="Want">What is wanted at this place then.</param>
/// <param name="Order">How the yard is to be ordered then.</param>
/// <param name="Rival">Which of the compared plans is taken then.</param>
/// <param name="Retyped">What the typed line holds then.</param>
internal sealed record Choice(char Letter, string Says, Errand? Errand = null, Want? Want = null, YardOrder? Order = null, Rival? Rival = null, string? Retyped = null)
{
    /// <summary>What is added to the form then.</summary>
    public FormAdd? Add { get; init; }
}

/// <summary>What a written answer is for.</summary>
internal enum Topic
{
    LabelFile,
    BlankCount,
    BlankFile,
    Correct,

    /// <summary>What a need should have been.</summary>
    CorrectNeed,
    StageName,
    StageDay,
    StageNewName,
    StagePosition,
    SheetFile,
    Happened,
    Pin,
    Spare,
    Release,
    PutAt,
    Strap,
    WallFile,
    WallStage,
    WallMove,
    SheetName,
    Stacked,
    Jump,
    Bed,
    HandTo,
    HandFile,
    Receipt,
    TheirNeeds,
    Weigh,
    HandListFile,
    HandPart,
    HandSettle,
}
