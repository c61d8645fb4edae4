using Offcuts.Core.Measures;

namespace Offcuts.Print;

/// <summary>Lays a cut sheet out on paper.</summary>
internal sealed class CutSheetPdf : IDisposable
{
    private const double Body = 9;
    private const double Small = 8;

    // A bar no wider than this has its rows beside it, so that twice as many pieces stand on a page; no letter is smaller for that.
    private const double BesideBar = 176;
    private const double Gap = 8;

    // So large are bars drawn at most, where that lets short ones have their rows beside them: a piece of 6 in still has room for its letter.
    private const double PointsAFoot = 40;

    private readonly CutSheetContent _content;
    private readonly PaperFlow _flow;
    private readonly PaperColumn[] _wide;
    private readonly PaperColumn[] _beside;

    // Which columns the last piece had: those that stand beside bars have their headings once a page.
    private PaperColumn[]? _last;

    private CutSheetPdf(CutSheetContent content, PaperFile paper, LengthUnit unit)
    {
        _content = content;
        _flow = unit == LengthUnit.Inch
            ? new PaperFlow(paper, 612, 792)
            : new PaperFlow(paper, PaperFile.Points(Length.Millimetres(210)), PaperFile.Points(Length.Millimetres(297)));
        const double sign = 16;
        double figure = unit == LengthUnit.Inch ? 58 : 54;
        _wide = [new("", sign), new("start", 85), new("length", 85), new("to", 85), new("what", 150), new("stage", 100)];
        _beside = [new("", sign), new("start", figure), new("length", figure), new("to", figure), new("what", _flow.Width - BesideBar - Gap - sign - 3 * figure)];
    }

    public static byte[] Write(CutSheetContent content, CutSheetOptions options)
    {
        using var paper = new PaperFile(content.Title, options.Printed);
        using var sheet = new CutSheetPdf(content, paper, options.Settings.Unit);
        sheet.Head();
        sheet.Fetch();
        sheet.Cut();
        sheet.Buy();
        sheet.Hardware();
        sheet.Section("5. Not filled");
        if (content.NotFilled.Count == 0) sheet.Line("Nothing: every cut is filled.");
        foreach (var line in content.NotFilled) sheet.Line(line);
        sheet.Section("6. How good the plan is, and what it saves");
        foreach (var line in content.Worth) sheet._flow.Paragraph(line, Body, indent: line.StartsWith(' ') ? 12 : 0);
        sheet.Cautions();
        if (options.Wall is { } wall)
        {
            sheet.Section($"8. Wall {wall.Wall}, row by row");
            WallSheetPdf.Parts(sheet._flow, wall, options);
        }

        sheet._flow.Finish($"{content.Title}. {content.Heading[0]}");
        return paper.ToBytes();
    }

    public void Dispose() => _flow.Dispose();

    private void Head()
    {
        _flow.Paragraph(_content.Title, 16, bold: true);
        foreach (var line in _content.Heading) Line(line);
        if (_content.Cautions.Count > 0)
            _flow.Paragraph($"Read the cautions in part 7 before you begin: {string.Join(", ", _content.Cautions.Select(each => each.Caution.Topic))}.", Body, bold: true);
    }

    private void Fetch()
    {
        Section("1. Fetch, place by place");
        if (_content.Picks.Count == 0) Line("Nothing.");
        PaperColumn[] columns = [new("no.", 28, Right: true), new("code", 62), new("material", 150), new("length", 80), new("first", 200)];
        for (var i = 0; i < _content.Picks.Count; i++)
        {
            _flow.Need(3 * Body * Lettering.LineHeight);
            if (i == 0) _flow.Heads(columns, Small);
            _flow.Space(2);
            _flow.Paragraph(_content.Picks[i].Place, Body, bold: true);
            foreach (var row in _content.Picks[i].Rows) _flow.Row(columns, [row.Number, row.Code, row.Material, row.Length, row.First], Body);
        }
    }

    private void Cut()
    {
        // Its heading does not stand alone at the foot of a page.
        if (_content.Pieces.Count > 0) _flow.Need(60 + 3 * Body * Lettering.LineHeight + Room(_content.Pieces[0]));
        Section("2. Cut");
        if (_content.Pieces.Count + _content.Alike.Count == 0) Line("Nothing.");
        else
        {
            Line("Every start is measured from the marked end, where the label is; bars begin there. Bars are to one scale: white is a cut, black the saw, crossed a bad spot, ruled upright a trim, grey scrap, a heavy frame a remainder to keep, a broken one a span left as it is.");
            if (_content.Rounded) Line("~ stands before a length between two marks of the rule, rounded to the nearer.");
        }

        var longest = _content.Pieces.Select(piece => piece.Bar.Length.Units).DefaultIfEmpty(1).Max();
        var perUnit = Math.Min(_flow.Width / longest, Math.Max(PointsAFoot / Length.PerFoot, BesideBar / longest));
        foreach (var piece in _content.Pieces) Piece(piece, perUnit);
        foreach (var alike in _content.Alike)
        {
            _flow.Need(4 * Body * Lettering.LineHeight);
            _flow.Space(8);
            _flow.Paragraph(alike.Head, Body + 1, bold: true);
            Line("No saw cut: they are used as they are.");
            foreach (var line in alike.Goes) _flow.Paragraph(line, Body, indent: 12);
        }

        Rip("Rip", CutSheetContent.RipLead, "to width", _content.Rips);
        Rip("Cut to height", HeightRows.Lead, "to height", _content.ToHeight);
        Parts();
        if (_content.Behind.Count == 0) return;
        _flow.Space(6);
        _flow.Paragraph("Behind you", Body, bold: true);
        foreach (var line in _content.Behind) _flow.Paragraph(line, Body, indent: line.StartsWith(' ') ? 12 : 0);
    }

    private static double Room(CutPiece piece) => (6 + Math.Min(6, piece.Rows.Count)) * Body * Lettering.LineHeight + BarDrawing.Height + 20;

    private void Piece(CutPiece piece, double perUnit)
    {
        if (piece.Bar.Length.Units * perUnit <= BesideBar) RowsBeside(piece, perUnit);
        else RowsBelow(piece, perUnit);
    }

    private void RowsBelow(CutPiece piece, double perUnit)
    {
        // Head, notes, bar and the first rows stay together.
        _flow.Need(Room(piece));
        _flow.Space(8);
        _flow.Paragraph($"{piece.Number}: {piece.Head}", Body + 1, bold: true);
        if (piece.Marks.Length > 0) _flow.Paragraph(piece.Marks, Small, bold: true);
        _flow.Paragraph(string.Join(" ", piece.Notes), Body);
        _flow.Space(3);
        BarDrawing.Draw(_flow.Graphics, piece.Bar, piece.Rows, PaperFlow.Margin, _flow.Y, perUnit);
        _flow.Space(BarDrawing.Height + 3);
        _flow.Heads(_wide, Small);
        _last = _wide;
        foreach (var row in piece.Rows) _flow.Row(_wide, [row.Sign, row.Start, row.Length, row.End, row.What, row.Stage], Body);
    }

    private void RowsBeside(CutPiece piece, double perUnit)
    {
        const int together = 8;
        _flow.Need((5 + Math.Min(together, piece.Rows.Count)) * Body * Lettering.LineHeight);
        _flow.Space(6);
        _flow.Paragraph($"{piece.Number}: {piece.Head}", Body + 1, bold: true);
        _flow.Paragraph(string.Join(" ", piece.Notes.Prepend(piece.Marks.Length > 0 ? piece.Marks + "." : "").Where(note => note.Length > 0)), Body);
        _flow.Space(2);
        var (page, top) = (_flow.Graphics, _flow.Y);
        BarDrawing.Draw(page, piece.Bar, piece.Rows, PaperFlow.Margin, top, perUnit);
        if (_last != _beside) _flow.Heads(_beside, Small, BesideBar + Gap);
        _last = _beside;
        foreach (var row in piece.Rows) _flow.Row(_beside, [row.Sign, row.Start, row.Length, row.End, _content.SeveralStages && row.Stage.Length > 0 ? $"{row.What} ({row.Stage})" : row.What], Body, BesideBar + Gap);
        if (ReferenceEquals(page, _flow.Graphics)) _flow.Space(Math.Max(0, top + BarDrawing.Height - _flow.Y));
    }

    private void Parts()
    {
        if (_content.PartsToHeight.Count == 0) return;
        PaperColumn[] columns = [new("no.", 28, Right: true), new("code", 62), new("cut", 30), new("from its end", 110), new("what stays", 125), new("what is sawn out", 170)];
        _flow.Need((4 + Math.Min(6, _content.PartsToHeight.Count)) * Body * Lettering.LineHeight);
        _flow.Space(8);
        _flow.Paragraph("Cut to height in part", Body + 1, bold: true);
        Line(HeightRows.PartLead);
        _flow.Space(3);
        _flow.Heads(columns, Small);
        foreach (var row in _content.PartsToHeight) _flow.Row(columns, [row.Number, row.Code, row.Cut, row.Part, row.Stays, row.Out], Body);
    }

    private void Rip(string title, string lead, string to, IReadOnlyList<RipRow> rips)
    {
        if (rips.Count == 0) return;
        PaperColumn[] columns = [new("no.", 28, Right: true), new("code", 62), new("cuts", 60), new(to, 95), new("strip", 70), new("the strip becomes", 206)];
        _flow.Need((4 + Math.Min(6, rips.Count)) * Body * Lettering.LineHeight);
        _flow.Space(8);
        _flow.Paragraph(title, Body + 1, bold: true);
        Line(lead);
        _flow.Space(3);
        _flow.Heads(columns, Small);
        foreach (var row in rips) _flow.Row(columns, [row.Number, row.Code, row.Cuts, row.Width, row.Strip, row.Becomes], Body);
    }

    private void Buy()
    {
        Section("3. Buy");
        var rows = _content.Buys;
        if (rows.Count == 0)
        {
            Line("Nothing.");
            return;
        }

        PaperColumn[] columns = [new("count", 40, Right: true), new("what", 150), new("each", 60, Right: true), new("cost", 66, Right: true), new("", 205)];
        _flow.Heads(columns, Small);
        foreach (var row in rows) _flow.Row(columns, [row.Count, row.What, row.Each, row.Cost, row.About], Body);
        foreach (var (label, amount) in _content.Sums) _flow.Row(columns, ["", label, "", amount, ""], Body, bold: true);
        foreach (var near in _content.Near) Line(near);
    }

    private void Hardware()
    {
        Section("4. Hardware");
        if (_content.Hardware.Count == 0 && _content.WallHardware.Count == 0) Line("None.");
        if (_content.Hardware.Count > 0) OfStages();
        if (_content.WallHardware.Count == 0) return;
        Line(_content.WallHardwareLead);
        PaperColumn[] columns = [new("what", 220), new("stage", 110), new("needed", 50, Right: true), new("from yard", 56, Right: true), new("short", 40, Right: true)];
        _flow.Heads(columns, Small);
        foreach (var row in _content.WallHardware) _flow.Row(columns, [row.Name, row.Stage, row.Needed, row.FromYard, row.Wanting], Body);
    }

    private void OfStages()
    {
        if (_content.HardwareDone) Line("Counted out already.");
        else if (_content.HardwareClosed) Line("Given up: dropped, or matched again.");
        PaperColumn[] columns =
        [
            new("what", 205), new("stage", 110), new("needed", 50, Right: true), new("from yard", 56, Right: true),
            new("to buy", 44, Right: true), new("short", 40, Right: true),
        ];
        _flow.Heads(columns, Small);
        foreach (var row in _content.Hardware) _flow.Row(columns, [row.Name, row.Stage, row.Needed, row.FromYard, row.ToBuy, row.Wanting], Body);
    }

    private void Cautions()
    {
        Section("7. Cautions");
        foreach (var applied in _content.Cautions)
        {
            _flow.Need(4 * Body * Lettering.LineHeight);
            _flow.Paragraph($"{applied.Caution.Topic}: {applied.Because}.", Body, bold: true);
            _flow.Paragraph(applied.Caution.ToString(), Body, indent: 12);
            _flow.Space(2);
        }

        _flow.Paragraph(Core.Yard.Cautions.Closing, Body, bold: true);
    }

    private void Section(string title)
    {
        _flow.Need(60);
        _flow.Space(10);
        _flow.Paragraph(title, 12, bold: true);
        _flow.Space(2);
    }

    private void Line(string text) => _flow.Paragraph(text, Body);
}
