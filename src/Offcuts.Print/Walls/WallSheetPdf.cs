using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Print;

/// <summary>A wall on paper: every row to scale, what is laid in each course, what goes where and is cut first, and the cautions.</summary>
public static class WallSheetPdf
{
    private const double Body = 9;
    private const double Small = 8;

    /// <summary>The sheet as a PDF, pages across: Letter where the unit is the inch, else A4. The same call gives the same bytes.</summary>
    public static byte[] Write(WallPicture picture, CutSheetOptions options)
    {
        var title = $"Wall {picture.Wall} of {picture.Stage}";
        using var paper = new PaperFile(title, options.Printed);
        using var flow = options.Settings.Unit == LengthUnit.Inch
            ? new PaperFlow(paper, 792, 612)
            : new PaperFlow(paper, PaperFile.Points(Length.Millimetres(297)), PaperFile.Points(Length.Millimetres(210)));
        flow.Paragraph(title, 16, bold: true);
        if (options.Note.Length > 0) flow.Paragraph(options.Note, Body);
        flow.Paragraph($"Printed {options.Printed:yyyy-MM-dd}. Read the cautions at the end before you begin: {string.Join(", ", Cautions.ForWall(picture.Steel).Select(caution => caution.Topic))}.", Body, bold: true);
        Parts(flow, picture, options);
        flow.Finish($"{title}. Printed {options.Printed:yyyy-MM-dd}.");
        return paper.ToBytes();
    }

    /// <summary>Rows, staging list and cautions, where another sheet has come to.</summary>
    internal static void Parts(PaperFlow flow, WallPicture picture, CutSheetOptions options)
    {
        Rows(flow, picture, options);
        Staging(flow, picture, options);
        Mind(flow, picture, options);
    }

    private static void Rows(PaperFlow flow, WallPicture picture, CutSheetOptions options)
    {
        foreach (var never in picture.Never) flow.Paragraph($"! {never}.", Body, bold: true);
        flow.Paragraph(ElevationDrawing.Legend, Small);
        foreach (var row in picture.Rows)
        {
            var drawn = DrawnRow.Of(picture, row, options.Settings.Unit, options.CodeText);
            var parts = ElevationDrawing.Parts(drawn, flow.Width, flow.PageHeight - 60);
            flow.Need((parts.Count > 0 ? parts[0].Height : 0) + 4 * Body * Lettering.LineHeight + 10);
            flow.Space(10);
            flow.Paragraph(drawn.Title, Body + 1, bold: true);
            for (var i = 0; i < parts.Count; i++)
            {
                flow.Need(parts[i].Height + Small * Lettering.LineHeight + 3);
                if (parts.Count > 1) flow.Paragraph($"part {i + 1} of {parts.Count}, from the left: {parts[i].Stretch}", Small);
                flow.Space(3);
                parts[i].Draw(flow.Graphics, PaperFlow.Margin, flow.Y, options.Settings.Unit);
                flow.Space(parts[i].Height);
            }

            if (!picture.SaysLaying) continue;
            flow.Space(3);
            foreach (var line in Elevation.LayingLines(drawn)) flow.Paragraph(line, Small);
        }
    }

    private static void Staging(PaperFlow flow, WallPicture picture, CutSheetOptions options)
    {
        var staging = StagingList.Of(picture, options.Settings.Unit, options.CodeText);
        if (staging.Cuts.Count == 0) return;
        Section(flow, "What goes to which leg, by the place where it lies");
        PaperColumn[] columns = [new("no.", 28, Right: true), new("code", 62), new("material", 130), new("cut: row and course", flow.Width - 232)];
        flow.Heads(columns, Small, indent: 12);
        foreach (var place in staging.Groups.GroupBy(group => group.Place))
        {
            flow.Need(5 * Body * Lettering.LineHeight);
            flow.Paragraph(place.Key, Body, bold: true);
            foreach (var leg in place)
            {
                flow.Need(3 * Body * Lettering.LineHeight);
                flow.Paragraph($"to leg {leg.Leg}", Body, indent: 12);
                foreach (var piece in leg.Pieces) flow.Row(columns, [StagingList.NumberAlone(piece.Numbers), piece.Code, piece.Material, piece.Goes], Small, indent: 12);
            }
        }

        Section(flow, "What to cut first: the bottom courses come first");
        columns = [new("course", 40, Right: true), new("no.", 28, Right: true), new("code", 62), new("length", 70), new("lies at", 120), new("cut: row and course", flow.Width - 320)];
        flow.Heads(columns, Small);
        foreach (var cut in staging.Cuts) flow.Row(columns, [Number(cut.Course), StagingList.NumberAlone(cut.Numbers), cut.Code, cut.Length, cut.Place, cut.Goes], Small);
    }

    private static void Mind(PaperFlow flow, WallPicture picture, CutSheetOptions options)
    {
        Section(flow, "Cautions");
        foreach (var caution in Cautions.ForWall(picture.Steel))
        {
            flow.Need(3 * Body * Lettering.LineHeight);
            flow.Paragraph($"{caution.Topic}: {caution}", Body);
            flow.Space(2);
        }

        foreach (var applied in picture.Plan is { } plan ? Cautions.ForPlan(plan.AsPlan(), options.CodeText) : [])
        {
            if (Cautions.ForWall(picture.Steel).Contains(applied.Caution)) continue;
            flow.Need(3 * Body * Lettering.LineHeight);
            flow.Paragraph($"{applied.Caution.Topic}: {applied.Because}. {applied.Caution}", Body);
            flow.Space(2);
        }

        flow.Paragraph(Cautions.Closing, Body, bold: true);
    }

    private static void Section(PaperFlow flow, string title)
    {
        flow.Need(60);
        flow.Space(10);
        flow.Paragraph(title, 12, bold: true);
        flow.Space(2);
    }

    private static string Number(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
