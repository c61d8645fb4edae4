using System.Text.Json;
using System.Text.Json.Serialization;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Store;

// The fields of a laying, as they stand in its document; lengths in 1/320 mm.

internal sealed record LayingJson(
    [property: JsonPropertyName("tiers")] LayingTiersJson Tiers,
    [property: JsonPropertyName("courses")] LaidCourseJson[] Courses,
    [property: JsonPropertyName("extra_ties")] ExtraTieJson[] ExtraTies,
    [property: JsonPropertyName("anew"), JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Anew = null);

internal sealed record LayingTiersJson(
    [property: JsonPropertyName("unfilled")] CourseFigureJson[] Unfilled,
    [property: JsonPropertyName("spend_cents")] long[] Spend,
    [property: JsonPropertyName("value_given_up_cents")] long[] ValueGivenUp,
    [property: JsonPropertyName("extra_ties")] long[] ExtraTies,
    [property: JsonPropertyName("joints")] long[] Joints,
    [property: JsonPropertyName("saw_cuts")] long[] SawCuts);

internal sealed record CourseFigureJson([property: JsonPropertyName("course")] int Course, [property: JsonPropertyName("figure")] long[] Figure);

internal sealed record LaidCourseJson(
    [property: JsonPropertyName("run")] string Run,
    [property: JsonPropertyName("course")] int Course,
    [property: JsonPropertyName("pieces")] LaidPieceJson[] Pieces,
    [property: JsonPropertyName("reason")] string? Reason);

internal sealed record LaidPieceJson(
    [property: JsonPropertyName("from")] long From,
    [property: JsonPropertyName("to")] long To,
    [property: JsonPropertyName("piece")] int Piece,
    [property: JsonPropertyName("cut")] int Cut,
    [property: JsonPropertyName("turned")] bool Turned);

internal sealed record StoodPieceJson(
    [property: JsonPropertyName("from")] long From,
    [property: JsonPropertyName("to")] long To,
    [property: JsonPropertyName("code")] string? Code,
    [property: JsonPropertyName("turned")] bool Turned);

internal sealed record ExtraTieJson(
    [property: JsonPropertyName("leg")] string Leg,
    [property: JsonPropertyName("course")] int Course,
    [property: JsonPropertyName("at")] long At,
    [property: JsonPropertyName("cleat_on")] string? CleatOn);

/// <summary>What a run plan says beside the ordinary plan that is kept with it, as text and back, without loss.</summary>
internal static class LayingText
{
    public static string Write(RunPlan plan) => JsonSerializer.Serialize(new LayingJson(
        new LayingTiersJson(
            [.. plan.Tiers.Unfilled.Select(level => new CourseFigureJson(level.Course, Json(level.Unfilled)))],
            Json(plan.Tiers.Spend), Json(plan.Tiers.ValueGivenUp), Json(plan.Tiers.ExtraTies), Json(plan.Tiers.Joints), Json(plan.Tiers.SawCuts)),
        [.. plan.Courses.Select(course => new LaidCourseJson(
            course.Run, course.Course, [.. course.Pieces.Select(one => new LaidPieceJson(one.From.Units, one.To.Units, one.Piece, one.Cut, one.Turned))], course.Reason))],
        [.. plan.ExtraTies.Select(tie => new ExtraTieJson(tie.Leg, tie.Course, tie.At.Units, tie.CleatOn))],
        plan.Anew));

    /// <summary>Throws <see cref="FormatException"/> where it is no laying.</summary>
    public static RunPlan Read(string text, Plan plan)
    {
        var json = Parse(text);
        return new RunPlan
        {
            Stage = plan.Stages[0],
            Tiers = new RunTiers(
                [.. json.Tiers.Unfilled.Select(level => new CourseFigure(level.Course, Figure(level.Figure)))],
                Figure(json.Tiers.Spend), Figure(json.Tiers.ValueGivenUp), Figure(json.Tiers.ExtraTies), Figure(json.Tiers.Joints), Figure(json.Tiers.SawCuts)),
            Courses = [.. json.Courses.Select(course => new LaidCourse(
                course.Run,
                course.Course,
                [.. course.Pieces.Select(one => new LaidPiece(Length.FromUnits(one.From), Length.FromUnits(one.To), one.Piece, one.Cut, one.Turned))],
                course.Reason))],
            ExtraTies = [.. json.ExtraTies.Select(tie => new ExtraTie(tie.Leg, tie.Course, Length.FromUnits(tie.At), tie.CleatOn))],
            Pieces = plan.Pieces,
            Savings = plan.Savings,
            Buys = plan.Buys,
            Unpriced = plan.Unpriced,
            Anew = json.Anew,
        };
    }

    /// <summary>Lengths as a JSON array.</summary>
    public static string Write(IEnumerable<Length> lengths) => JsonSerializer.Serialize(lengths.Select(length => length.Units));

    /// <summary>Lengths of a JSON array. Throws <see cref="FormatException"/> where it is none.</summary>
    public static IReadOnlyList<Length> ReadLengths(string text)
    {
        try
        {
            return [.. (JsonSerializer.Deserialize<long[]>(text) ?? throw new FormatException("joints are missing")).Select(Length.FromUnits)];
        }
        catch (JsonException error)
        {
            throw new FormatException("joints can't be read", error);
        }
    }

    /// <summary>The pieces of a course that stands.</summary>
    public static string Write(IEnumerable<StoodPiece> pieces) =>
        JsonSerializer.Serialize(pieces.Select(one => new StoodPieceJson(one.From.Units, one.To.Units, one.Code.IsNone ? null : one.Code.Text, one.Turned)));

    /// <summary>The same back. Throws <see cref="FormatException"/> where it is none.</summary>
    public static IReadOnlyList<StoodPiece> ReadPieces(string text)
    {
        try
        {
            return
            [
                .. (JsonSerializer.Deserialize<StoodPieceJson[]>(text) ?? throw new FormatException("pieces are missing"))
                    .Select(one => new StoodPiece(Length.FromUnits(one.From), Length.FromUnits(one.To), one.Code is { } code ? Code(code) : default, one.Turned)),
            ];
        }
        catch (JsonException error)
        {
            throw new FormatException("pieces can't be read", error);
        }
    }

    private static Code Code(string text) => Core.Yard.Code.Parse(text).TryGet(out var code) ? code : throw new FormatException($"{text} is no code");

    private static LayingJson Parse(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<LayingJson>(text) ?? throw new FormatException("a laying is empty");
        }
        catch (JsonException error)
        {
            throw new FormatException("a laying can't be read", error);
        }
    }

    private static long[] Json(Figure figure) => [figure.Value, figure.Bound];

    private static Figure Figure(long[] pair) => new(pair[0], pair[1]);
}
