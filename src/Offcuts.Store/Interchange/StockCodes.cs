using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Store.Interchange;

/// <summary>Reads the codes of a stock file by its policy and refuses the second of two that are the same.</summary>
internal sealed class StockCodes(CodePolicy policy)
{
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);
    private readonly Dictionary<Code, string> _written = [];
    private int _next;

    /// <summary>The written text of every stand-in.</summary>
    public IReadOnlyDictionary<Code, string> Written => _written;

    /// <summary>The code of a row. A bin needs none where codes are only written.</summary>
    public Code Read(CsvRow row, bool ofBin)
    {
        if (policy == CodePolicy.Checked)
        {
            var code = row.Code("code");
            if (!code.IsNone) Once(row, code.Text, code.ToString());
            return code;
        }

        if (ofBin && row.Empty("code")) return StandIn("");
        var text = row.NeededName("code", PieceRules.LongestName);
        if (text.Length > 0) Once(row, text, text);
        return StandIn(text);
    }

    /// <summary>The piece a piece was cut from. A file whose codes are only written knows no families.</summary>
    public Code ReadParent(CsvRow row) => policy == CodePolicy.Checked ? row.Code("cut_from") : default;

    private void Once(CsvRow row, string key, string shown)
    {
        if (!_lines.TryAdd(key, row.Line)) row.Refuse("code", FileFaults.CodeTwice(shown, _lines[key]));
    }

    // Draws with a counter in place of chance: stand-ins differ from each other and rise with the rows.
    private Code StandIn(string text)
    {
        var digits = new Stack<int>();
        var code = Code.Draw(size =>
        {
            if (digits.Count == 0) Push(_next++, size);
            return digits.Pop();
        });
        _written.Add(code, text);
        return code;

        void Push(int number, int size)
        {
            for (var i = 0; i < Code.BodyLength; i++, number /= size) digits.Push(number % size);
        }
    }
}
