namespace Offcuts.Screens;

/// <summary>The keys of the place of the stages.</summary>
internal static class StagesKeys
{
    public static IReadOnlyList<KeyUse> Of(StagesState state) => state.OnNeeds ? OnNeeds : OnStages;

    private static readonly KeyUse[] OnStages = All(
        new KeyUse("Ctrl+E", "rename", new Intent.Do(Want.Rename), "Give the chosen stage another name; among the needs: correct the chosen one"));

    private static readonly KeyUse[] OnNeeds = All(
        new KeyUse("Ctrl+E", "correct", new Intent.Do(Want.Rename), "Correct the chosen need; among the stages: give the chosen one another name"));

    private static KeyUse[] All(KeyUse change) =>
    [
        new("Enter", "add need", new Intent.Enter(), "Add what the line says to the chosen stage"),
        new("Tab", "other list", new Intent.OtherList(), "The arrows move among the stages, or among the needs of the chosen one"),
        new("Up", "", new Intent.Move(-1), "One up"),
        new("Down", "", new Intent.Move(1), "One down"),
        new("PageUp", "", new Intent.Page(-1), "A screenful up"),
        new("PageDown", "", new Intent.Page(1), "A screenful down"),
        new("Ctrl+Home", "", new Intent.Edge(false), "To the first"),
        new("Ctrl+End", "", new Intent.Edge(true), "To the last"),
        new("Ctrl+K", "new stage", new Intent.Do(Want.NewStage), "Enter another stage, at the end of the order"),
        new("Ctrl+D", "day", new Intent.Do(Want.SetDay), "The day the chosen stage begins"),
        new("Ctrl+O", "order", new Intent.Do(Want.SetOrder), "Move the chosen stage to another place in the order of the work"),
        change,
        new("Ctrl+X", "take off", new Intent.Do(Want.TakeOff), "Take off the chosen need, or remove the chosen stage"),
        new("Ctrl+L", "pick", new Intent.Do(Want.PickStage), "Pick stages to be matched together; without any, all are"),
        new("Ctrl+T", "free pieces", new Intent.Do(Want.FreePieces), "Let any stage have the pieces that are reserved for the chosen one; single ones are let go on the Yard"),
        new("Ctrl+R", "match", new Intent.Do(Want.Match), "Find the best plan for the picked stages, or for all"),
        new("Ctrl+Up", "", new Intent.Recall(-1), "Bring back the line typed before"),
        new("Ctrl+Down", "", new Intent.Recall(1), "Back towards the line that was being typed"),
    ];
}
