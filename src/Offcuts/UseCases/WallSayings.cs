using System.Globalization;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>What was understood of each line of a wall sheet whose wall can be built.</summary>
internal sealed class WallSayings(LaidWall wall, LengthUnit unit)
{
    private readonly Takeoff _takeoff = Takeoff.Of(wall, "");

    /// <summary>By line, from 1.</summary>
    public IReadOnlyDictionary<int, string> Of(string text)
    {
        var says = new Dictionary<int, string>();
        var (leg, opening) = (-1, -1);
        foreach (var (i, line) in text.Split('\n').Index())
        {
            var fact = SheetFact.Of(SheetFacts.OfWall, line)?.Name;
            if (fact == "leg") (leg, opening) = (leg + 1, -1);
            else if (fact == "opening") opening++;
            var said = fact switch
            {
                "system" => $"{wall.System.Panel}, ties every {Text(wall.System.TieSpacing)}",
                "height" => Courses(),
                "core" => $"{Text(wall.Sheet.CoreWidth + wall.System.Thickness + wall.System.Thickness)} thick with both faces",
                "leg" => LegSays(leg),
                "opening" => OpeningSays(wall.Legs[leg].Leg.Openings[opening]),
                "starts" or "ends" => TeeSays(wall.Legs[leg].Leg, fact),
                "horizontal bars" => Cuts("steel", "level"),
                "vertical bars" => Cuts("steel", "upright"),
                "bucks" or "braces" => Cuts(fact, ""),
                "footing boards" => $"{Text(_takeoff.Runs[^1].Total)} of {_takeoff.Runs[^1].Material}",
                "stakes" => Cuts("footing", "stake"),
                "spreaders" => Cuts("footing", "spreader"),
                "allowance" => $"{TakeoffText.Concrete(_takeoff, unit)} to order",
                _ => "",
            };
            if (said.Length > 0) says[i + 1] = said;
        }

        return says;
    }

    private string Courses()
    {
        var last = wall.Runs.SelectMany(run => run.Courses).FirstOrDefault(course => course.Number == wall.Courses)?.Height ?? wall.System.PanelHeight;
        return $"{Words.Count(wall.Courses, "course")} of {Text(wall.System.PanelHeight)}{(last < wall.System.PanelHeight ? $", the last ripped to {Text(last)}" : "")}";
    }

    private string LegSays(int leg)
    {
        string Row(int face) => Text(Length.FromUnits(wall.Runs[(2 * leg) + face].Courses[0].Stretches.Sum(stretch => stretch.Length.Units)));
        var end = wall.Legs[leg].End switch
        {
            LegEnd.OutsideCorner => "outside corner at its end",
            LegEnd.InsideCorner => "inside corner at its end",
            LegEnd.Tee => "tee at its end",
            _ => "free end",
        };
        return $"course 1: outside {Row(0)}, inside {Row(1)}; {end}";
    }

    private string OpeningSays(Opening opening)
    {
        var whole = wall.CoursesTakenBy(opening);
        var taken = whole.Count == 0 ? "takes no course wholly" : whole.Count == 1 ? $"takes course {whole[0]}" : $"takes courses {whole[0]} to {whole[^1]}";
        return $"{(opening.IsDoor ? "door" : $"{Text(opening.Sill)} to {Text(opening.Top)} up")}, {Text(opening.Offset)} to {Text(opening.End)} along; {taken}";
    }

    private string TeeSays(Leg leg, string fact)
    {
        var tee = fact == "starts" ? leg.Start! : leg.Finish!;
        return $"tee on the {WallWords.Of(tee.Face)} of {tee.Leg}, its middle {Text(tee.Offset)} along";
    }

    private string Cuts(string group, string word)
    {
        var cuts = _takeoff.Cuts.Where(cut => cut.Group == group && cut.Cut.Name[Takeoff.NeedPrefix(wall.Sheet.Name).Length..].Contains(word, StringComparison.Ordinal)).ToArray();
        return $"{Words.Count((int)cuts.Sum(cut => cut.Count.Figure), "cut")}, {Text(Length.FromUnits(cuts.Sum(cut => cut.Cut.Shortest.Units * cut.Count.Figure)))} in all";
    }

    private string Text(Length length) => length.ToText(unit);
}
