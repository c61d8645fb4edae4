using System.Globalization;
using Offcuts.Core.Measures;

namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a label layout that cannot be, and about a print that cannot be made.</summary>
public static class PrintFaults
{
    public static Fault LayoutNotJson(int line, int column) =>
        new("a label layout is written in JSON; it can't be read from here on", column, line);

    public static Fault LayoutFieldTwice() => new("a field stands twice in the label layout");

    public static Fault LayoutNotObject(string field) =>
        new(field.Length == 0 ? "a label layout is one JSON object" : $"{field} is an object, like {{ \"width\": \"4 in\", \"height\": \"2 in\" }}");

    public static Fault LayoutFieldUnknown(string field, string known) =>
        new($"{TextRules.Harmless(field)} is no field of a label layout; there are {known}");

    public static Fault LayoutFieldMissing(string field) => new($"{field} is missing");

    public static Fault LayoutFieldNotText(string field) => new($"{field} is a text in quotes");

    public static Fault LayoutFieldNotCount(string field) => new($"{field} is a whole number from 1 to 100");

    public static Fault LayoutFieldNotYesNo(string field) => new($"{field} is true or false");

    public static Fault LayoutFieldNotLength(string field, string why) => new($"{field}: {why}");

    public static Fault LayoutFieldZero(string field) => new($"{field} is more than 0");

    public static Fault LayoutPageTooLarge() => new("a page is at most 1 m (39-3/8\") wide and high");

    public static Fault LayoutOutsideRight(Length end, Length page) =>
        new($"the last label of a row ends {end} from the left edge, but the page is only {page} wide");

    public static Fault LayoutOutsideBottom(Length end, Length page) =>
        new($"the last label of a column ends {end} from the top edge, but the page is only {page} high");

    public static Fault LayoutOverlapAcross(Length label, Length step) =>
        new($"a label is {label} wide, but the next one begins after {step}");

    public static Fault LayoutOverlapDown(Length label, Length step) =>
        new($"a label is {label} high, but the next one begins after {step}");

    public static Fault LayoutInsetEatsAll() => new("the inset leaves nothing of the label");

    public static Fault LayoutModuleSmall(Length module, Length least) =>
        new($"a QR module would be {Rough(module)} wide; to be read off rough wood it needs {Rough(least)} or more");

    public static Fault LayoutQuietZoneCut(Length side, Length room) =>
        new($"the QR symbol with its quiet zone is {Rough(side)} wide, but the label has {Rough(room)} for it: its quiet zone would be cut");

    public static Fault LayoutNoRoomForText(Length width, Length height) =>
        new($"beside or below the QR symbol {Rough(width)} x {Rough(height)} is left for the text: too little for the code, the length and every mark that matters for safety");

    public static Fault LayoutUnknown(string name, string known) =>
        new($"there is no label layout named {TextRules.Harmless(name)}; there are {known}");

    public static Fault NothingWaits() => new("no label waits to be printed");

    public static Fault BlanksOutside(int most) => new($"print 1 to {most} blank labels at once");

    public static Fault StartOutsideSheet(int startAt, int perPage) =>
        new(perPage == 1 ? $"a page has one label; {startAt} is not it" : $"a sheet has labels 1 to {perPage}; {startAt} is none of them");

    public static Fault NothingToPrint() => new("there is nothing to print");

    // Two decimals, rounded down, so that what is too small never reads as enough.
    private static string Rough(Length length) =>
        (Math.Floor(length.InMillimetres * 100) / 100).ToString("0.##", CultureInfo.InvariantCulture) + " mm";
}
