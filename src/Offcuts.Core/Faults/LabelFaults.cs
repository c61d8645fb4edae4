namespace Offcuts.Core.Faults;

/// <summary>Every sentence about labels of places and bundles, about labels that are void, and about printers.</summary>
public static class LabelFaults
{
    public static Fault IsVoid(string code) => new($"the label {TextRules.Harmless(code)} is void: take it off and use another");

    public static Fault VoidAlready(string code) => new($"the label {TextRules.Harmless(code)} is void already");

    public static Fault StaysWithIts(string code, string what) =>
        new($"{TextRules.Harmless(code)} belongs to {TextRules.Harmless(what)}, and a code stays with it; print its label again: offcuts label print FILE --code {ShellWord.Of(code)}");

    public static Fault NoSuchLabel(string code) => new($"no label of this yard has the code {TextRules.Harmless(code)}");

    public static Fault IsAPlace(string code) => new($"{TextRules.Harmless(code)} is the label of a place");

    public static Fault IsABundle(string code) => new($"{TextRules.Harmless(code)} is the label of a bundle");

    public static Fault NoSuchBundle(string code) => new($"no bundle has the code {TextRules.Harmless(code)}; see: offcuts bundle list");

    public static Fault NoBundleNamed(string text, string why) =>
        new($"no bundle is named {TextRules.Harmless(text)}, and it is no code: {why}; see: offcuts bundle list");

    public static Fault BundlesOfOneName(string name, IEnumerable<string> codes) =>
        new($"several bundles are named {TextRules.Harmless(name)}; say which by its code: {string.Join(", ", codes.Select(TextRules.Harmless))}");

    public static Fault BundlesBeginSo(string words, IEnumerable<(string Name, string Code)> bundles) =>
        new($"{TextRules.Harmless(words)} may begin with more than one bundle's name; say which by its code: {string.Join(", ", bundles.Select(one => $"{TextRules.Harmless(one.Code)} ({TextRules.Harmless(one.Name)})"))}");

    public static Fault BundleTooSmall(int fewest) => new($"a bundle has {fewest} pieces or more");

    public static Fault InABundle(string piece, string bundle) => new($"{TextRules.Harmless(piece)} is in the bundle {TextRules.Harmless(bundle)} already");

    public static Fault BundleOfSeveralPlaces(string places) => new($"these pieces lie at several places ({TextRules.Harmless(places)}); say where the bundle lies: with --at, on the screen behind an @");

    public static Fault OpenedAlready(string code) => new($"the bundle {TextRules.Harmless(code)} was opened already");

    public static Fault ChangeOfPlace(string name) =>
        new($"that is the label of the place {TextRules.Harmless(name)}: a place has nothing to be changed; what lies there is changed by its own code");

    public static Fault ChangeOfBundle(string code) =>
        new($"{TextRules.Harmless(code)} is a bundle: as a whole it is only moved, with --place; its pieces are changed by their own codes, or once it is opened with: offcuts bundle open");

    public static Fault PlaceWithoutName() => new("a place has a name");

    public static Fault PrinterWithoutName() => new("a printer has a name");

    public static Fault NoSuchPrinter(string name, string known) =>
        new(known.Length == 0
            ? $"nothing is kept of a printer named {TextRules.Harmless(name)}; print a ruler page and say what it is off by: offcuts label printer {ShellWord.Of(name)} --right 1.5mm --down=-1mm"
            : $"nothing is kept of a printer named {TextRules.Harmless(name)}; there {(known.Contains(", ", StringComparison.Ordinal) ? "are" : "is")}: {TextRules.Harmless(known)}");

    public static Fault OffsetTooFar() => new("a printer is off by at most 20 mm; more than that is another sheet or tray");

    public static Fault OffsetUnreadable(string text) =>
        new($"\"{TextRules.Harmless(text)}\" is no distance with its unit; write it like 1.5 mm, -1 mm or 1/16 in");

    public static Fault OffsetMissing() => new("say what the printer is to be moved by with --right and --down, or --drop it");
}
