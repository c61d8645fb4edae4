using Offcuts.Core.Plans;
using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>The questions of the place of the stages.</summary>
internal static class StagesAsks
{
    public static Ask NewStage { get; } =
        new Ask.Write("What is the new stage called? The day it begins may stand behind it, like: stem wall 2026-05-31", Topic.StageName, "stage");

    public static Ask Day(Stage stage) =>
        new Ask.Write($"Which day does {stage.Name} begin? Like 2026-05-31; empty for none", Topic.StageDay, "day");

    public static Ask Rename(Stage stage) => new Ask.Write($"What is {stage.Name} to be called?", Topic.StageNewName, "name");

    public static Ask CorrectNeed(Stage stage, string need) => new Ask.Write($"Correct \"{need}\" of {stage.Name}", Topic.CorrectNeed, "right");

    public static Ask Position(Stage stage, int count) =>
        new Ask.Write($"Which place in the order of the work has {stage.Name}? 1 to {count}; an earlier stage is never left short for a later one", Topic.StagePosition, "place");

    public static Ask DropNeed(Stage stage, string need) => new Ask.Choose(
        $"Take \"{need}\" off what {stage.Name} needs?",
        [new('y', "take it off", new Errand.DropNeed(stage.Name, need))]);

    public static Ask Free(Stage stage, IReadOnlyList<Piece> reserved) => new Ask.Choose(
        $"Let any stage have what is reserved for {stage.Name}? {string.Join(", ", reserved.Take(12).Select(piece => piece.Code))}{(reserved.Count > 12 ? $" and {reserved.Count - 12} more" : "")}",
        [new('y', "let it go", new Errand.FreeAll(stage.Name))]);

    public static Ask Remove(Stage stage, IReadOnlyList<KeptPlan> open) => new Ask.Choose(
        $"Remove the stage {stage.Name} with all its needs? Pieces reserved for it become free{GivenUp(stage, open)}",
        [new('y', "remove it", new Errand.RemoveStage(stage.Name))]);

    // Its open plans go with it, and with them what they have for other stages.
    private static string GivenUp(Stage stage, IReadOnlyList<KeptPlan> open)
    {
        if (open.Count == 0) return "";
        string[] others = [.. open.SelectMany(plan => plan.Plan.Stages).Distinct().Where(name => name != stage.Name)];
        return $", and what waits in plan {string.Join(", ", open.Select(plan => plan.Id))} is given up{(others.Length > 0 ? $", for {string.Join(", ", others)} too" : "")}";
    }
}
