using System.Text;

namespace Offcuts.Print;

/// <summary>Lays a cut sheet out in 80 columns.</summary>
internal sealed class CutSheetText
{
    private const int Columns = 80;

    // The longest piece takes a full bar; two more columns are its brackets.
    private const int Cells = 74;

    private readonly StringBuilder _text = new();

    private CutSheetText()
    {
    }

    public static string Write(CutSheetContent content)
    {
        var sheet = new CutSheetText();
        sheet.Head(content);
        sheet.Fetch(content);
        sheet.Cut(content);
        sheet.Buy(content);
        sheet.Hardware(content);
        sheet.Section("5", "Not filled");
        sheet.List(content.NotFilled, "Nothing: every cut is filled.");
        sheet.Section("6", "How good the plan is, and what it saves");
        foreach (var line in content.Worth) sheet.Wrapped(line, line.StartsWith(' ') ? 4 : 2);
        sheet.Cautions(content);
        return sheet._text.ToString();
    }

    private void Head(CutSheetContent content)
    {
        Wrapped(content.Title.ToUpperInvariant(), 0);
        foreach (var line in content.Heading) Wrapped(line, 0);
        if (content.Cautions.Count > 0) Wrapped($"Read the cautions in part 7 before you begin: {string.Join(", ", content.Cautions.Select(each => each.Caution.Topic))}.", 0);
    }

    private void Fetch(CutSheetContent content)
    {
        Section("1", "Fetch, place by place");
        if (content.Picks.Count == 0) Line("  Nothing.");
        var table = new TextTable(4, new("no.", 4, Right: true), new("code", 8), new("material", 22), new("length", 13), new("first", 21));
        for (var i = 0; i < content.Picks.Count; i++)
        {
            if (i == 0) Line(table.Head());
            Wrapped(content.Picks[i].Place, 2);
            foreach (var row in content.Picks[i].Rows) Lines(table.Row(row.Number, row.Code, row.Material, row.Length, row.First));
        }
    }

    private void Cut(CutSheetContent content)
    {
        Section("2", "Cut");
        if (content.Pieces.Count + content.Alike.Count > 0)
        {
            Wrapped("Every start is measured from the marked end, where the label is; bars begin there. Bars are to one scale.", 2);
            Line($"  {PieceBar.Legend}");
            if (content.Rounded) Wrapped("~ stands before a length between two marks of the rule, rounded to the nearer.", 2);
        }
        else Line("  Nothing.");

        var longest = content.Pieces.Select(piece => piece.Bar.Length.Units).DefaultIfEmpty(1).Max();
        var table = new TextTable(4, new("", 2), new("start", 13), new("length", 13), new("to", 13), new("what", 16), new("stage", 9));
        foreach (var piece in content.Pieces)
        {
            Line("");
            Wrapped($"{piece.Number}: {piece.Head}", 2);
            if (piece.Marks.Length > 0) Wrapped(piece.Marks, 4);
            Wrapped(string.Join(" ", piece.Notes), 4);
            var cells = (int)Math.Max(1, (piece.Bar.Length.Units * Cells + longest / 2) / longest);
            Line($"    {piece.Bar.ToText(cells)}");
            Line(table.Head());
            foreach (var row in piece.Rows) Lines(table.Row(row.Sign, row.Start, row.Length, row.End, row.What, row.Stage));
        }

        foreach (var alike in content.Alike)
        {
            Line("");
            Wrapped(alike.Head, 2);
            Wrapped("No saw cut: they are used as they are.", 4);
            foreach (var line in alike.Goes) Wrapped(line, 4);
        }

        Rip("Rip:", CutSheetContent.RipLead, "to width", content.Rips);
        Rip("Cut to height:", HeightRows.Lead, "to height", content.ToHeight);
        Parts(content.PartsToHeight);
        if (content.Behind.Count == 0) return;
        Line("");
        Line("  Behind you:");
        foreach (var line in content.Behind) Wrapped(line, line.StartsWith(' ') ? 6 : 4);
    }

    private void Parts(IReadOnlyList<PartRow> parts)
    {
        if (parts.Count == 0) return;
        Line("");
        Line("  Cut to height in part:");
        Wrapped(HeightRows.PartLead, 4);
        var table = new TextTable(4, new("no.", 4, Right: true), new("code", 8), new("cut", 3), new("from its end", 16), new("what stays", 16), new("what is sawn out", 18));
        Line(table.Head());
        foreach (var row in parts) Lines(table.Row(row.Number, row.Code, row.Cut, row.Part, row.Stays, row.Out));
    }

    private void Rip(string title, string lead, string to, IReadOnlyList<RipRow> rips)
    {
        if (rips.Count == 0) return;
        Line("");
        Line($"  {title}");
        Wrapped(lead, 4);
        var table = new TextTable(4, new("no.", 4, Right: true), new("code", 8), new("cuts", 8), new(to, 14), new("strip", 9), new("the strip becomes", 23));
        Line(table.Head());
        foreach (var row in rips) Lines(table.Row(row.Number, row.Code, row.Cuts, row.Width, row.Strip, row.Becomes));
    }

    private void Buy(CutSheetContent content)
    {
        Section("3", "Buy");
        var rows = content.Buys;
        if (rows.Count == 0)
        {
            Line("  Nothing.");
            return;
        }

        var table = new TextTable(2, new("count", 5, Right: true), new("what", 32), new("each", 11, Right: true), new("cost", 12, Right: true));
        Line(table.Head());
        foreach (var row in rows)
        {
            Lines(table.Row(row.Count, row.What, row.Each, row.Cost));
            if (row.About.Length > 0) Wrapped(row.About, 9);
        }

        foreach (var (label, amount) in content.Sums) Lines(table.Row("", label, "", amount));
        foreach (var near in content.Near) Wrapped(near, 2);
    }

    private void Hardware(CutSheetContent content)
    {
        Section("4", "Hardware");
        if (content.Hardware.Count == 0 && content.WallHardware.Count == 0) Line("  None.");
        if (content.Hardware.Count > 0)
        {
            if (content.HardwareDone) Line("  Counted out already.");
            else if (content.HardwareClosed) Line("  Given up: dropped, or matched again.");
            var table = new TextTable(2, new("what", 30), new("stage", 14), new("needed", 6, Right: true), new("yard", 6, Right: true), new("buy", 5, Right: true), new("short", 5, Right: true));
            Line(table.Head());
            foreach (var row in content.Hardware) Lines(table.Row(row.Name, row.Stage, row.Needed, row.FromYard, row.ToBuy, row.Wanting));
        }

        if (content.WallHardware.Count == 0) return;
        Wrapped(content.WallHardwareLead, 2);
        var wall = new TextTable(2, new("what", 30), new("stage", 14), new("needed", 6, Right: true), new("yard", 6, Right: true), new("short", 5, Right: true));
        Line(wall.Head());
        foreach (var row in content.WallHardware) Lines(wall.Row(row.Name, row.Stage, row.Needed, row.FromYard, row.Wanting));
    }

    private void Cautions(CutSheetContent content)
    {
        Section("7", "Cautions");
        foreach (var applied in content.Cautions)
        {
            Wrapped($"{applied.Caution.Topic.ToUpperInvariant()}: {applied.Because}.", 2);
            Wrapped(applied.Caution.Text, 4);
            Wrapped($"[{applied.Caution.Source}]", 4);
        }

        Wrapped(Core.Yard.Cautions.Closing, 2);
    }

    private void Section(string number, string title)
    {
        Line("");
        Line($"{number}. {title}");
        Line(new string('-', number.Length + 2 + title.Length));
    }

    private void List(IReadOnlyList<string> lines, string none)
    {
        if (lines.Count == 0) Line("  " + none);
        foreach (var line in lines) Wrapped(line, 2);
    }

    private void Wrapped(string text, int indent) =>
        Lines(TextColumns.Wrap(text, Columns - indent).Select(line => new string(' ', indent) + line));

    private void Lines(IEnumerable<string> lines)
    {
        foreach (var line in lines) Line(line);
    }

    private void Line(string line) => _text.Append(line.TrimEnd()).Append('\n');
}
