namespace Offcuts.Screens;

/// <summary>What each setting is, in a sentence.</summary>
internal static class SettingWords
{
    /// <summary>What a setting is for, and what it may be.</summary>
    /// <param name="line">The setting in the words by which it is set.</param>
    public static string About(string line) => line.Split(' ') switch
    {
        ["unit", ..] => "The unit of everything that is shown and printed, and of a bare number that is typed: in or mm. What is saved stays exactly as it is.",
        ["currency", ..] => "The sign before an amount of money: 1 to 4 characters.",
        ["tax", ..] => "Sales tax in percent, added to what is to be bought. Prices and what was saved stand without it.",
        ["species", ..] => "The softwood by which lumber is weighed.",
        ["kerf", "others", ..] => "What one saw cut destroys, of every family that has none of its own: lumber, rebar, foam, sheet, stick. 1/8 in is what an ordinary circular-saw blade takes (common practice).",
        ["kerf", ..] => "What one cut destroys of this family; ^X goes back to the kerf of the others. A sheared bar and a knifed panel lose nothing: 0.",
        ["keep", "others", ..] => "The shortest remainder that is worth a label, of every material that has none of its own. What is shorter is scrap.",
        ["keep", ..] => "The shortest remainder of this material that is worth a label; ^X goes back to that of the others.",
        ["use", ..] => "Which pieces may serve this use: none worse than this, and only with a grade stamp where that says yes. A filing rule of yours: whether a piece may carry load is for drawings, local code and licensed practice.",
        ["foam", ..] => "After so many days at a place the sun comes to, foam is pointed at on Today; 0 is never. 60 is from memory, with no source found: the paper of your panels' maker decides.",
        ["cover", ..] => "The sun does not come to this place, so foam that lies there is not pointed at; ^X takes that back.",
        _ => "",
    };

    /// <summary>The heading that stands over the first setting of a kind; empty where the kind goes on.</summary>
    public static string Group(string line, string before)
    {
        var (group, over) = (Of(line), Of(before));
        return group == over ? "" : group;
    }

    /// <summary>What holds where a setting is taken back.</summary>
    public static string Then(string back) => back.StartsWith("open ", StringComparison.Ordinal) ? "Foam there counts as lying in the sun" : "What holds for the others holds for it too";

    private static string Of(string line) => line.Split(' ')[0] switch
    {
        "unit" => "How it is written",
        "currency" or "tax" => "Money",
        "species" => "Weight",
        "kerf" => "What a cut destroys",
        "keep" => "What is worth a label",
        "use" => "What may serve what",
        "foam" or "cover" => "Foam in the sun",
        _ => "",
    };
}
