using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Nodes;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What matters today.</summary>
internal static class TodayCommand
{
    /// <summary>The command <c>today</c>.</summary>
    public static Command Today(CommandContext context)
    {
        var json = new Option<bool>("--json") { Description = "As JSON" };
        var command = context.Command("today", "What matters now: the stage in hand and what it lacks, what to order by when, what needs a hand", ["offcuts today", "offcuts today --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var today = context.World.Today;
            var matters = new SeeToday(yard).On(today);
            if (parse.GetValue(json)) context.World.Out.WriteLine(Json(matters, today));
            else foreach (var line in TodayText.Lines(matters, today)) context.Say(line);
            return Exit.Done;
        }));
        return command;
    }

    // { "schema": 1, "day": .., "matters": [{ "kind", "when", "day", "pressing", "what", "about": [..], "stage" .., "plan", "command" }] }
    private static string Json(IReadOnlyList<Matter> matters, DateOnly today) => YardJson.Write(new JsonObject
    {
        ["schema"] = 1,
        ["day"] = ListJson.Day(today),
        ["matters"] = new JsonArray([.. matters.Select(matter => new JsonObject
        {
            ["kind"] = JsonNamingPolicy.SnakeCaseLower.ConvertName(matter.Kind.ToString()),
            ["when"] = matter.When(today),
            ["day"] = ListJson.Day(matter.Day),
            ["pressing"] = matter.Pressing,
            ["what"] = matter.What,
            ["about"] = new JsonArray([.. matter.About.Select(line => JsonValue.Create(line))]),
            ["subject"] = matter.Subject,
            ["plan"] = matter.PlanId == 0 ? null : matter.PlanId,
            ["command"] = matter.Command,
        })]),
    });
}
