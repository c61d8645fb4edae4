using System.Text.Json;
using Offcuts.Core.Faults;
using Offcuts.Core.Measures;

namespace Offcuts.Print;

/// <summary>Reads the layout format that <c>labels/README.md</c> describes, and refuses what can't be printed.</summary>
internal sealed class LayoutReader
{
    private static readonly JsonDocumentOptions Options = new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        AllowDuplicateProperties = false,
        MaxDepth = 8,
    };

    private static readonly Length LargestPage = Length.Millimetres(1000);

    private readonly List<Fault> _faults = [];

    public static Result<LabelLayout> Read(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, Options);
            return new LayoutReader().ReadRoot(document.RootElement);
        }
        catch (JsonException broken)
        {
            // Only a field named twice has no place of its own.
            return broken.LineNumber is { } line
                ? PrintFaults.LayoutNotJson((int)line + 1, (int)(broken.BytePositionInLine ?? 0) + 1)
                : PrintFaults.LayoutFieldTwice();
        }
    }

    private Result<LabelLayout> ReadRoot(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object) return PrintFaults.LayoutNotObject("");
        Known(root, "", "name", "about", "page", "label", "columns", "rows", "first", "step", "inset", "module", "pin", "counts");
        var label = Pair(root, "label", "width", "height", null);
        var page = Pair(root, "page", "width", "height", label);
        var first = Pair(root, "first", "left", "top", (Length.Zero, Length.Zero));
        var step = Pair(root, "step", "right", "down", label);
        var draft = new LabelLayout
        {
            Name = Text(root, "name"),
            About = Text(root, "about"),
            PageWidth = page.A,
            PageHeight = page.B,
            LabelWidth = label.A,
            LabelHeight = label.B,
            Columns = Count(root, "columns"),
            Rows = Count(root, "rows"),
            Left = first.A,
            Top = first.B,
            StepRight = step.A,
            StepDown = step.B,
            Inset = One(root, "inset", "inset") ?? Missing("inset"),
            Pin = One(root, "pin", "pin") ?? Length.Zero,
            WritesCount = YesNo(root, "counts"),
            Module = root.TryGetProperty("module", out _) ? One(root, "module", "module") ?? Length.Zero : Length.Zero,
        };
        if (_faults.Count == 0) CheckPage(draft, root);
        if (_faults.Count > 0) return Result<LabelLayout>.Fail(_faults);
        return WithModule(draft, root.TryGetProperty("module", out _));
    }

    private void CheckPage(LabelLayout layout, JsonElement root)
    {
        Positive("label.width", layout.LabelWidth);
        Positive("label.height", layout.LabelHeight);
        if (root.TryGetProperty("module", out _)) Positive("module", layout.Module);
        if (layout.PageWidth > LargestPage || layout.PageHeight > LargestPage) _faults.Add(PrintFaults.LayoutPageTooLarge());
        if (_faults.Count > 0) return;

        if (layout.Columns > 1 && layout.StepRight < layout.LabelWidth)
            _faults.Add(PrintFaults.LayoutOverlapAcross(layout.LabelWidth, layout.StepRight));
        if (layout.Rows > 1 && layout.StepDown < layout.LabelHeight)
            _faults.Add(PrintFaults.LayoutOverlapDown(layout.LabelHeight, layout.StepDown));
        var right = layout.Left + layout.StepRight * (layout.Columns - 1) + layout.LabelWidth;
        var bottom = layout.Top + layout.StepDown * (layout.Rows - 1) + layout.LabelHeight;
        if (right > layout.PageWidth) _faults.Add(PrintFaults.LayoutOutsideRight(right, layout.PageWidth));
        if (bottom > layout.PageHeight) _faults.Add(PrintFaults.LayoutOutsideBottom(bottom, layout.PageHeight));
        var inset = layout.Inset * 2;
        if (inset >= layout.LabelWidth || inset >= layout.LabelHeight) _faults.Add(PrintFaults.LayoutInsetEatsAll());
    }

    // Without a module in the file the symbol takes the label's short side, but never more than half of the long one.
    private static Result<LabelLayout> WithModule(LabelLayout layout, bool given)
    {
        var width = layout.LabelWidth - layout.Inset * 2;
        var height = layout.LabelHeight - layout.Inset * 2;
        var (across, along) = layout.TextBeside ? (height, width.LessAtMost(layout.Pin)) : (width, height.LessAtMost(layout.Pin));
        if (!given)
        {
            var side = Length.Min(across, Length.FromUnits(along.Units / 2));
            layout = layout with { Module = Length.FromUnits(side.Units / QrSymbol.FullSize) };
        }

        if (layout.Module < LabelLayout.LeastModule) return PrintFaults.LayoutModuleSmall(layout.Module, LabelLayout.LeastModule);
        if (layout.QrSide > across) return PrintFaults.LayoutQuietZoneCut(layout.QrSide, across);
        var text = along.LessAtMost(layout.QrSide);
        var (textWidth, textHeight) = layout.TextBeside ? (text, height) : (width, text);
        return !textWidth.IsZero && !textHeight.IsZero && LabelSetting.HoldsEveryMark(layout)
            ? layout
            : PrintFaults.LayoutNoRoomForText(textWidth, textHeight);
    }

    private void Positive(string field, Length length)
    {
        if (length.IsZero) _faults.Add(PrintFaults.LayoutFieldZero(field));
    }

    private void Known(JsonElement element, string path, params string[] fields)
    {
        foreach (var property in element.EnumerateObject().Where(property => !fields.Contains(property.Name)))
            _faults.Add(PrintFaults.LayoutFieldUnknown(path + property.Name, string.Join(", ", fields.Select(field => path + field))));
    }

    private (Length A, Length B) Pair(JsonElement root, string name, string a, string b, (Length A, Length B)? otherwise)
    {
        if (!root.TryGetProperty(name, out var pair))
            return otherwise ?? (Missing(name), Length.Zero);
        if (pair.ValueKind != JsonValueKind.Object)
        {
            _faults.Add(PrintFaults.LayoutNotObject(name));
            return default;
        }

        Known(pair, name + ".", a, b);
        return (One(pair, a, $"{name}.{a}") ?? Missing($"{name}.{a}"), One(pair, b, $"{name}.{b}") ?? Missing($"{name}.{b}"));
    }

    private Length Missing(string field)
    {
        _faults.Add(PrintFaults.LayoutFieldMissing(field));
        return default;
    }

    // Null where the field is not there; zero with a fault where it can't be read.
    private Length? One(JsonElement element, string name, string path)
    {
        if (!element.TryGetProperty(name, out var field)) return null;
        if (field.ValueKind != JsonValueKind.String)
        {
            _faults.Add(PrintFaults.LayoutFieldNotText(path));
            return Length.Zero;
        }

        var read = Length.Parse(field.GetString()!);
        if (!read.Ok) _faults.Add(PrintFaults.LayoutFieldNotLength(path, read.Fault.Sentence));
        return read.Ok ? read.Value : Length.Zero;
    }

    private int Count(JsonElement root, string name)
    {
        if (!root.TryGetProperty(name, out var field)) return 1;
        if (field.ValueKind == JsonValueKind.Number && field.TryGetInt32(out var count) && count is >= 1 and <= 100) return count;
        _faults.Add(PrintFaults.LayoutFieldNotCount(name));
        return 1;
    }

    private bool YesNo(JsonElement root, string name)
    {
        if (!root.TryGetProperty(name, out var field)) return false;
        if (field.ValueKind is JsonValueKind.True or JsonValueKind.False) return field.GetBoolean();
        _faults.Add(PrintFaults.LayoutFieldNotYesNo(name));
        return false;
    }

    private string Text(JsonElement root, string name)
    {
        if (!root.TryGetProperty(name, out var field)) _faults.Add(PrintFaults.LayoutFieldMissing(name));
        else if (field.ValueKind != JsonValueKind.String) _faults.Add(PrintFaults.LayoutFieldNotText(name));
        else return TextRules.Harmless(field.GetString()!);
        return "";
    }
}
