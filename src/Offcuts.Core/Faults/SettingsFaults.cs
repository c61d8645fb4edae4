namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a setting that cannot be.</summary>
public static class SettingsFaults
{
    public static Fault Unknown(string name) =>
        new($"\"{TextRules.Harmless(name)}\" can't be set; there are unit, currency, tax, species, kerf, keep, keep-back, use, foam, cover and open");

    public static Fault UnitUnknown() => new("the unit is in or mm");

    public static Fault CurrencyUnreadable() => new("a currency sign has 1 to 4 characters and no digit");

    public static Fault TaxUnreadable() => new("tax is a percentage from 0 to 100 with at most three decimals, like 8.25");

    public static Fault SpeciesUnknown(IEnumerable<string> known) => new($"the species is one of: {string.Join(", ", known)}");

    public static Fault KerfUnreadable() =>
        new("write a family and its kerf, like: kerf foam 0; families are lumber, rebar, foam, sheet, stick; for all not named, kerf others 1/8; to go back to that, kerf foam usual");

    public static Fault LengthUnreadable(string text, Fault why) => new($"{TextRules.Harmless(text)}: {why.Sentence}");

    public static Fault KerfTooWide() => new("a kerf over 1 in is no saw cut");

    public static Fault KeepUnreadable() => new("write a material and its keep length, like: keep 2x4 18; for all materials not named, keep others 12; to go back to that, keep 2x4 usual");

    public static Fault FoamUnreadable(int most) =>
        new($"write after how many days in the sun foam is pointed at, like: foam 60; from 0, which is never, to {most}");

    public static Fault CoverUnreadable() => new("name a place where the sun does not come, like: cover the barn; to take that back: open the barn");

    public static Fault CoverTooLong(int most) => new($"the name of a place has at most {most} characters and none that steers a terminal");

    public static Fault NotCovered(string place, IEnumerable<string> covered) =>
        new($"\"{TextRules.Harmless(place)}\" is not among the places under cover{(covered.Any() ? $"; there are {string.Join(", ", covered.Select(TextRules.Harmless))}" : "; there is none")}");

    public static Fault RuleUnreadable() => new("a rule is set like: use bracing worst fair stamp no");
}
