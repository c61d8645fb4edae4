namespace Offcuts.Core.Faults;

/// <summary>Every sentence about a setting that cannot be.</summary>
public static class SettingsFaults
{
    public static Fault Unknown(string name) =>
        new($"\"{TextRules.Harmless(name)}\" can't be set; there are unit, currency, tax, species, kerf, keep and use");

    public static Fault UnitUnknown() => new("the unit is in or mm");

    public static Fault CurrencyUnreadable() => new("a currency sign has 1 to 4 characters and no digit");

    public static Fault TaxUnreadable() => new("tax is a percentage from 0 to 100 with at most three decimals, like 8.25");

    public static Fault SpeciesUnknown(IEnumerable<string> known) => new($"the species is one of: {string.Join(", ", known)}");

    public static Fault KerfUnreadable() =>
        new("a kerf is set by family and length, like kerf foam 0; families are lumber, rebar, foam, sheet, stick, others; usual in place of the length forgets it");

    public static Fault KerfTooWide() => new("a kerf over 1 in is no saw cut");

    public static Fault KeepUnreadable() => new("a keep length is set by material and length, like keep 2x4 18; others for all the rest, usual in place of the length forgets it");

    public static Fault RuleUnreadable() => new("a rule is set like: use bracing worst fair stamp no");
}
