using System.CommandLine;
using System.CommandLine.Parsing;
using Offcuts.Core.Faults;
using Offcuts.Print;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>The rows of a wall drawn: in text, or to scale as a PDF.</summary>
internal static class WallDrawCommand
{
    /// <summary>The command <c>wall draw</c>.</summary>
    public static Command Of(CommandContext context)
    {
        var name = new Argument<string>("wall") { Description = "Name of the wall" };
        var leg = new Option<string>("--leg") { Description = "Only the rows of this leg", HelpName = "NAME" };
        var width = new Option<int>("--width") { Description = $"Columns, {ElevationOptions.LeastWidth} to 400", HelpName = "COLUMNS", DefaultValueFactory = _ => 80 };
        width.Validators.Add(value =>
        {
            if (value.Tokens.Count == 1 && int.TryParse(value.Tokens[0].Value, out var columns) && columns is < ElevationOptions.LeastWidth or > 400) value.AddError(CommandFaults.DrawingWidth(ElevationOptions.LeastWidth, 400).Sentence);
        });
        var ascii = new Option<bool>("--ascii") { Description = "Nothing but ASCII" };
        var staging = new Option<bool>("--staging") { Description = "Which pieces go to which leg, by the place where they lie, and what to cut first" };
        var pdf = new Option<string>("--pdf") { Description = "Write the drawing to scale, the staging list and the cautions as a PDF", HelpName = "FILE" };
        var command = context.Command(
            "draw",
            "Draw each row of a wall: courses, joints, ties, openings, and which piece lies where once the wall is planned",
            ["offcuts wall draw garage", "offcuts wall draw garage --leg A --width 120", "offcuts wall draw garage --pdf garage.pdf"],
            name, leg, width, ascii, staging, pdf);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var found = new SeeWall(yard).Of(parse.GetValue(name)!);
            if (!found.TryGet(out var picture)) return context.Refuse(found.Faults);
            if (parse.GetValue(leg) is { } only)
            {
                picture = picture with { Rows = [.. picture.Rows.Where(row => SeeWall.IsOf(row, only))] };
                if (picture.Rows.Count == 0) return context.Refuse([WallFaults.NoLegToDraw(picture.Wall, only)]);
            }

            if (parse.GetValue(pdf) is { } file)
            {
                WholeFile.Write(file, stream => stream.Write(WallSheetPdf.Write(picture, SheetOptions.For(yard, context.World.Today))));
                context.Say($"Wrote {file}");
                return Exit.Done;
            }

            var unit = yard.Settings().Unit;
            var drawn = parse.GetValue(staging)
                ? StagingList.Of(picture, unit).Text(Math.Max(60, parse.GetValue(width)))
                : Elevation.Text(picture, new ElevationOptions { Width = parse.GetValue(width), Ascii = parse.GetValue(ascii), Unit = unit });
            foreach (var line in drawn.TrimEnd('\n').Split('\n')) context.SayAsItIs(line);
            return Exit.Done;
        }));
        return command;
    }
}
