using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.UseCases;
using Offcuts.Walls;

namespace Offcuts.Commands;

/// <summary>Sheets, runs and takeoffs as JSON for scripts: lengths as exact decimals in millimetres, volumes in cubic metres.</summary>
internal static class WallJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>A system's sheet.</summary>
    public static string Write(SystemSheet sheet) => Text(new JsonObject
    {
        ["schema"] = 1,
        ["system"] = sheet.Name,
        ["panel"] = sheet.Panel.Name,
        ["panel_length_mm"] = sheet.PanelLength.InMillimetres,
        ["panel_height_mm"] = sheet.PanelHeight.InMillimetres,
        ["panel_thickness_mm"] = sheet.Thickness.InMillimetres,
        ["interval_mm"] = sheet.Interval.InMillimetres,
        ["tie"] = sheet.Tie.Name,
        ["tie_spacing_mm"] = sheet.TieSpacing.InMillimetres,
        ["reversible"] = sheet.Reversible,
        ["stagger_mm"] = sheet.Stagger.InMillimetres,
        ["shortest_piece_mm"] = sheet.ShortestPiece.InMillimetres,
        ["lap"] = WallWords.Of(sheet.Lap),
        ["corner"] = Fittings(sheet.AtCorner),
        ["tee"] = Fittings(sheet.AtTee),
        ["end"] = Fittings(sheet.AtEnd),
        ["course"] = Fittings(sheet.AtCourse),
        ["cleat"] = sheet.Cleat is { } cleat ? new JsonObject { ["material"] = cleat.Material.Name, ["length_mm"] = cleat.Length.InMillimetres } : null,
        ["shortest_board_mm"] = sheet.ShortestBoard.InMillimetres,
        ["notes"] = Strings(sheet.Notes),
    });

    /// <summary>A wall's sheet, with the stretches in which nothing can be laid.</summary>
    public static string Write(StageWall wall, IReadOnlyList<Unfillable> never) => Text(new JsonObject
    {
        ["schema"] = 1,
        ["stage"] = wall.Stage,
        ["wall"] = wall.Sheet.Name,
        ["system"] = wall.Sheet.System,
        ["height_mm"] = wall.Sheet.Height.InMillimetres,
        ["core_mm"] = wall.Sheet.CoreWidth.InMillimetres,
        ["lap"] = wall.Sheet.Lap is { } lap ? WallWords.Of(lap) : null,
        ["closed"] = wall.Sheet.Closed,
        ["legs"] = new JsonArray([.. wall.Sheet.Legs.Select(Node)]),
        ["sheet"] = WallText.Write(wall.Sheet),
        ["nothing_can_be_laid"] = Strings(never.Select(stretch => stretch.Says)),
        ["cautions"] = Strings(TakeoffText.Cautions(wall.Sheet.Steel is not null)),
    });

    /// <summary>A wall's runs, course by course.</summary>
    public static string Write(StageWall kept, LaidWall wall) => Text(new JsonObject
    {
        ["schema"] = 1,
        ["stage"] = kept.Stage,
        ["wall"] = kept.Sheet.Name,
        ["legs"] = new JsonArray([.. wall.Legs.Select(leg => (JsonNode)new JsonObject { ["leg"] = leg.Leg.Name, ["axis_before_start_mm"] = leg.AxisBefore.InMillimetres })]),
        ["runs"] = new JsonArray([.. wall.Runs.Concat(wall.FootingRuns).Select(Node)]),
        ["cut_to_height"] = new JsonArray([.. wall.Notches.Select(Node)]),
        ["cautions"] = Strings(TakeoffText.Cautions(kept.Sheet.Steel is not null)),
    });

    /// <summary>A takeoff, every figure with what it is made of.</summary>
    public static string Write(WallTakenOff taken) => Text(new JsonObject
    {
        ["schema"] = 1,
        ["stage"] = taken.Kept.Stage,
        ["wall"] = taken.Kept.Sheet.Name,
        ["runs"] = new JsonArray([.. taken.Takeoff.Runs.Select(run => (JsonNode)new JsonObject
        {
            ["material"] = run.Material.Name,
            ["length_mm"] = run.Total.InMillimetres,
            ["at_least"] = run.AtLeast,
            ["lines"] = new JsonArray([.. run.Lines.Select(line => (JsonNode)new JsonObject { ["what"] = line.What, ["length_mm"] = line.Length.InMillimetres })]),
        })]),
        ["hardware"] = new JsonArray([.. taken.Takeoff.Hardware.Select(one => (JsonNode)new JsonObject { ["hardware"] = one.Hardware.Name, ["count"] = one.Count.Figure, ["lines"] = Lines(one.Count) })]),
        ["cuts"] = new JsonArray([.. taken.Takeoff.Cuts.Select(cut => (JsonNode)new JsonObject
        {
            ["group"] = cut.Group,
            ["cut"] = cut.Cut.Name,
            ["material"] = cut.Cut.Material.Name,
            ["length_mm"] = cut.Cut.Shortest.InMillimetres,
            ["count"] = cut.Cut.Count,
            ["use"] = UseCases.Words.Of(cut.Cut.Use),
            ["treated"] = cut.Cut.Treated.ToString().ToLowerInvariant(),
            ["lines"] = Lines(cut.Count),
        })]),
        ["concrete"] = new JsonArray([.. taken.Takeoff.Concrete.Select(concrete => (JsonNode)new JsonObject
        {
            ["of"] = concrete.Name,
            ["net_m3"] = Rounded(concrete.Net.CubicMetres),
            ["net_yd3"] = Rounded(concrete.Net.CubicYards),
            ["allowance_percent"] = concrete.AllowancePermille / 10m,
            ["order_m3"] = Rounded(concrete.Total.CubicMetres),
            ["order_yd3"] = Rounded(concrete.Total.CubicYards),
            ["lines"] = new JsonArray([.. concrete.Lines.Select(line => (JsonNode)new JsonObject { ["what"] = line.What, ["m3"] = Rounded(line.Volume.CubicMetres) })]),
        })]),
        ["courses"] = taken.Left.Courses,
        ["courses_that_stand"] = taken.Left.Standing,
        ["courses_cut_and_waiting"] = taken.Left.Cut,
        ["filling_kept_as_plan"] = taken.Left.Kept?.PlanId,
        ["pieces_to_cut_of_the_yard"] = taken.Left.FromYard,
        ["pieces_to_cut_new"] = taken.Left.ToBuy,
        ["pieces_not_as_planned"] = Strings(taken.Left.Gone.Select(code => code.Text)),
        ["stock"] = new JsonArray([.. taken.Stock.Select(Node)]),
        ["stock_leaves_out"] = Strings(taken.LeftOut),
        ["notes"] = Strings(taken.Takeoff.Notes),
        ["cautions"] = Strings(TakeoffText.Cautions(taken.Kept.Sheet.Steel is not null)),
    });

    private static JsonNode Node(Leg leg) => new JsonObject
    {
        ["leg"] = leg.Name,
        ["length_mm"] = leg.Length.InMillimetres,
        ["turn"] = WallWords.Of(leg.Turn),
        ["starts"] = Node(leg.Start),
        ["ends"] = Node(leg.Finish),
        ["openings"] = new JsonArray([.. leg.Openings.Select(opening => (JsonNode)new JsonObject
        {
            ["opening"] = opening.Name,
            ["at_mm"] = opening.Offset.InMillimetres,
            ["wide_mm"] = opening.Width.InMillimetres,
            ["high_mm"] = opening.Height.InMillimetres,
            ["sill_mm"] = opening.Sill.InMillimetres,
        })]),
    };

    private static JsonNode? Node(Junction? junction) => junction is null ? null : new JsonObject
    {
        ["leg"] = junction.Leg,
        ["at_mm"] = junction.Offset.InMillimetres,
        ["face"] = WallWords.Of(junction.Face),
    };

    private static JsonNode Node(Run run) => new JsonObject
    {
        ["run"] = run.Name,
        ["leg"] = run.Leg,
        ["material"] = run.Material.Name,
        ["first_tie_mm"] = run.Lines.FirstTie.InMillimetres,
        ["interval_mm"] = run.Lines.Interval.InMillimetres,
        ["tie_spacing_mm"] = run.Lines.TieSpacing.InMillimetres,
        ["courses"] = new JsonArray([.. run.Courses.Select(course => (JsonNode)new JsonObject
        {
            ["course"] = course.Number,
            ["height_mm"] = course.Height.InMillimetres,
            ["stretches"] = new JsonArray([.. course.Stretches.Select(stretch => (JsonNode)new JsonObject
            {
                ["start_mm"] = stretch.Start.InMillimetres,
                ["end_mm"] = stretch.End.InMillimetres,
                ["offset_mm"] = TakeoffText.Offset(run, stretch).InMillimetres,
            })]),
        })]),
    };

    private static JsonNode Node(Notch notch) => new JsonObject
    {
        ["leg"] = notch.Leg,
        ["course"] = notch.Course,
        ["opening"] = notch.Opening,
        ["start_mm"] = notch.Where.Start.InMillimetres,
        ["end_mm"] = notch.Where.End.InMillimetres,
        ["below_mm"] = notch.Below.InMillimetres,
        ["above_mm"] = notch.Above.InMillimetres,
    };

    private static JsonNode Node(StockLine line) => new JsonObject
    {
        ["material"] = line.Material.Name,
        ["at_least"] = line.AtLeast,
        ["needed"] = line.NeededCount,
        ["needed_mm"] = line.NeededLength.IsZero ? null : line.NeededLength.InMillimetres,
        ["on_hand"] = line.OnHandCount,
        ["on_hand_mm"] = line.NeededLength.IsZero ? null : line.OnHandLength.InMillimetres,
        ["other_needs"] = line.OtherCount,
        ["other_needs_mm"] = line.NeededLength.IsZero ? null : line.OtherLength.InMillimetres,
        ["verdict"] = line.Verdict switch { StockVerdict.Enough => "enough", StockVerdict.PerhapsEnough => "perhaps-enough", _ => "short" },
        ["by_plan"] = line.ByPlan == 0 ? null : line.ByPlan,
        ["short_by"] = line.ShortBy,
        ["short_with_other_needs"] = line.ShortWithOthers,
        ["of_mm"] = line.NewLength.IsZero ? null : line.NewLength.InMillimetres,
        ["order_by"] = line.Verdict == StockVerdict.Short ? line.OrderBy?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : null,
    };

    private static JsonArray Fittings(IEnumerable<Fitting> fittings) =>
        new([.. fittings.Select(fitting => (JsonNode)new JsonObject { ["count"] = fitting.Count, ["hardware"] = fitting.Hardware.Name })]);

    private static JsonArray Lines(Count count) => new([.. count.Lines.Select(line => (JsonNode)new JsonObject { ["what"] = line.What, ["figure"] = line.Figure })]);

    private static JsonArray Strings(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);

    private static decimal Rounded(decimal volume) => decimal.Round(volume, 6);

    private static string Text(JsonObject json) => TextRules.HarmlessJson(json.ToJsonString(Options));
}
