using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;

namespace Offcuts.Core.Yard;

/// <summary>One thing that can hurt somebody or spoil the work, in our own words.</summary>
/// <param name="Topic">What it is about, in two or three words.</param>
/// <param name="Text">What to mind, in whole sentences.</param>
/// <param name="Source">The rule or study it rests on; <c>common practice</c> where there is none.</param>
public sealed record Caution(string Topic, string Text, string Source)
{
    /// <summary>The text with its source behind it: <c>Pull all nails .. [29 CFR 1926.25(a)]</c>.</summary>
    public override string ToString() => $"{Text} [{Source}]";
}

/// <summary>A caution, and what called for it.</summary>
/// <param name="Caution">The caution.</param>
/// <param name="Because">What in the plan or the yard calls for it: <c>reclaimed lumber goes to structural use: joist (floor)</c>.</param>
public sealed record AppliedCaution(Caution Caution, string Because);

/// <summary>
/// Every caution of the program, and which of them apply. They remind; they decide nothing. Wherever some are shown,
/// <see cref="Closing"/> stands below them once.
/// </summary>
public static class Cautions
{
    /// <summary>What stands below any list of cautions.</summary>
    public const string Closing = "Local code and licensed practice decide.";

    /// <summary>Stripped lumber is being put away.</summary>
    public static Caution PuttingAway { get; } = new(
        "putting away lumber",
        "Pull every nail before stacking. Stack on level, solid sills. Keep scrap with nails in it out of walkways. By hand, no pile higher than 16 ft.",
        "29 CFR 1926.250(b)(8), 1926.25(a)");

    /// <summary>Nails are still in a piece that is about to be handled or cut.</summary>
    public static Caution Nails { get; } = new(
        "nails left in",
        "Pull the nails before the saw goes in, and keep pulled nails and scrap with nails out of walkways.",
        "29 CFR 1926.25(a), 1926.250(b)(8)");

    /// <summary>Reclaimed lumber goes to a structural use.</summary>
    public static Caution GradeMark { get; } = new(
        "reclaimed lumber under load",
        "Lumber that carries load needs a grade mark; a cut can take the mark off. Whether used lumber may carry load again is for the building official to approve.",
        "IRC R502.1, R602.1, R802.1; IRC 2012 R104.9.1");

    /// <summary>Salvaged lumber may have lost grade.</summary>
    public static Caution LostGrade { get; } = new(
        "grade lost to wear",
        "Nail holes and broken edges were what most often lowered the grade of salvaged lumber: look at each piece again.",
        "USDA Forest Products Laboratory, Fort Ord deconstruction study");

    /// <summary>Reclaimed lumber holds people or wet concrete.</summary>
    public static Caution FormsAndBraces { get; } = new(
        "forms and braces",
        "Forms and braces are designed, built and braced for every load they meet. Damaged shoring is not used. Inspect before, during and after the pour.",
        "29 CFR 1926.703(a)(1), (b)");

    /// <summary>A wall is filled with concrete between foam.</summary>
    public static Caution WallsBlowOut { get; } = new(
        "walls blow out",
        "Wet concrete can push a wall of foam open. Bracing, steel, how high and how fast it is poured are not decided here: they are for the drawings, the local code and a licensed person.",
        "29 CFR 1926.703(a)(1); that walls blow out: common practice");

    /// <summary>Concrete is poured.</summary>
    public static Caution FreshConcrete { get; } = new(
        "fresh concrete",
        "Fresh concrete burns skin and eyes. Wear gloves, boots and glasses; wash it off at once, and take off what is soaked with it.",
        "common practice");

    /// <summary>A form is being stripped.</summary>
    /// <remarks>1926.703(e) is from memory, sure.</remarks>
    public static Caution Stripping { get; } = new(
        "stripping a form",
        "Forms stay on until the concrete carries its own weight. Loosen them with wooden wedges, never with a bar against green concrete.",
        "29 CFR 1926.703(e); US Army FM 5-428 par. 5-86");

    /// <summary>Bars will stand up where somebody can fall on them.</summary>
    public static Caution BarEnds { get; } = new(
        "rebar standing up",
        "Guard every bar end that somebody could fall onto.",
        "29 CFR 1926.701(b)");

    /// <summary>Treated wood is handled or sawn.</summary>
    public static Caution TreatedWood { get; } = new(
        "treated wood",
        "Never burn treated wood. Wear a mask and gloves when sawing it. Keep it away from food and feed.",
        "EPA consumer information sheet on treated wood");

    /// <summary>Untreated wood may come to lie on concrete.</summary>
    public static Caution WoodOnConcrete { get; } = new(
        "wood on concrete",
        "Wood that lies on concrete is treated or naturally durable where the code asks for it.",
        "IRC R317.1");

    /// <summary>Foam is stored, cut or built in.</summary>
    public static Caution Foam { get; } = new(
        "foam",
        "Foam needs a thermal barrier inside the house. Keep it out of the sun, and no petroleum form oil, solvent or hot work near it.",
        "IRC R608.4, R316.4; sun, oil and heat: common practice");

    /// <summary>Form oil was on a piece.</summary>
    public static Caution FormOil { get; } = new(
        "oiled lumber",
        "Do not burn lumber that had form oil on it, and do not use it indoors.",
        "common practice");

    /// <summary>A board is sawn lengthwise.</summary>
    /// <remarks>1910.213(c)(1) and (2) are from memory, sure; (c)(3) was read in a letter of interpretation.</remarks>
    public static Caution Ripping { get; } = new(
        "ripping",
        "Sawn lengthwise, wood can close on the blade and throw the board back. Rip only with the guard on, a spreader behind the blade and fingers that stop a kickback; keep out of the line of the board, push its end with a stick, and rip nothing too short to be guided. Used lumber hides nails: look for them along the whole line.",
        "29 CFR 1910.213(c)(1)-(3); standing aside, push stick, short wood and nails: common practice");

    /// <summary>Something is driven.</summary>
    /// <remarks>
    /// They bind commercial vehicles and are a measure for others. The half of the weight was read in the rule that brought it (Federal Register, July 6, 1994,
    /// document 94-16069, now 393.106(d)); two tie-downs from 5 ft on, by 393.110, and the flag on what stands out more than 4 ft behind, by 393.87, were read as
    /// others quote them, not in the code itself.
    /// </remarks>
    public static Caution TieDown { get; } = new(
        "driving a load",
        "Tie every load down, with straps good for at least half its weight together, and a long one at two places or more; what stands out behind gets a flag. Heavy things lie low, over or just before the axle. No bed, hitch or tyre carries more than its plate says. What the road asks of you where you drive is for the law there.",
        "49 CFR 393.106(d), 393.110, 393.87 (for commercial vehicles); where the weight lies and plates: common practice");

    /// <summary>Hardened concrete comes off.</summary>
    public static Caution ConcreteDust { get; } = new(
        "concrete dust",
        "Sawing or grinding hardened concrete off a form makes silica dust: keep it wet or drawn off, and out of your lungs.",
        "29 CFR 1926.1153");

    /// <summary>Every caution, in the order of the work.</summary>
    public static IReadOnlyList<Caution> All { get; } =
    [
        Stripping, PuttingAway, Nails, Ripping, ConcreteDust, FormOil, TreatedWood, Foam,
        GradeMark, LostGrade, FormsAndBraces, WallsBlowOut, FreshConcrete, WoodOnConcrete, BarEnds, TieDown,
    ];

    /// <summary>What to mind while a form comes off and its pieces are catalogued, whatever they are.</summary>
    public static IReadOnlyList<Caution> WhenStripping { get; } = [Stripping, PuttingAway, ConcreteDust];

    /// <summary>What to mind in building and pouring a wall; stands on every wall sheet and print.</summary>
    /// <param name="steel">True where bars stand in it.</param>
    public static IReadOnlyList<Caution> ForWall(bool steel) =>
        [WallsBlowOut, FreshConcrete, FormsAndBraces, Foam, .. steel ? (Caution[])[BarEnds] : []];

    /// <summary>What to mind in handling these pieces, in the order of <see cref="All"/>; empty where nothing applies.</summary>
    /// <param name="pieces">The pieces; one whose label is still to come is known by its material.</param>
    public static IReadOnlyList<AppliedCaution> ForPieces(IEnumerable<Piece> pieces)
    {
        string Named(Piece piece) => piece.Code.IsNone ? piece.Material.Name : piece.Code.ToString();
        var all = pieces.ToArray();
        var found = new List<AppliedCaution>();
        Add(found, Nails, "nails are still in", all.Where(piece => piece.Nails).Select(Named));
        Add(found, ConcreteDust, "concrete clings to", all.Where(piece => piece.Concrete).Select(Named));
        Add(found, FormOil, "form oil was on", all.Where(piece => piece.Oiled).Select(Named));
        Add(found, TreatedWood, "these are treated:", all.Where(piece => piece.Treated).Select(Named));
        Add(found, Foam, "these are foam:", all.Where(piece => piece.Material is FoamPanel).Select(Named));
        Add(found, BarEnds, "these are bars:", all.Where(piece => piece.Material is Rebar).Select(Named));
        return found;
    }

    /// <summary>
    /// What to mind in carrying out a plan, in the order of <see cref="All"/>; empty where nothing applies. A plan that sends
    /// reclaimed lumber to structural use or to bracing always says so here.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="codeText">How a code is written; as on labels where none is given.</param>
    public static IReadOnlyList<AppliedCaution> ForPlan(Plan plan, Func<Code, string>? codeText = null)
    {
        string Named(PlannedPiece piece) =>
            piece.Source is not { } source ? $"new {piece.Material}" : codeText?.Invoke(source.Code) ?? source.Code.ToString();
        IEnumerable<string> Sources(IEnumerable<PlannedPiece> pieces, Func<Piece, bool> which) =>
            pieces.Where(piece => which(piece.Source!)).Select(Named);

        var found = new List<AppliedCaution>();
        var yard = plan.Pieces.Where(piece => piece.Source is not null).ToArray();
        Add(found, Nails, "nails are still in", Sources(yard, piece => piece.Nails));
        Add(found, Ripping, "these are ripped:", yard.Where(piece => piece.Material is Lumber && piece.Cuts.Any(cut => cut.Rip is not null)).Select(Named));
        Add(found, ConcreteDust, "concrete clings to", Sources(yard, piece => piece.Concrete));
        Add(found, FormOil, "form oil was on", Sources(yard, piece => piece.Oiled));
        Add(found, TreatedWood, "these are treated:", plan.Pieces.Where(IsTreated).Select(Named));
        Add(found, Foam, "foam is cut:", plan.Pieces.Where(piece => piece.Material is FoamPanel).Select(Named));

        var reclaimed = yard.Where(piece => piece.Material is Lumber or Stick).ToArray();
        var underLoad = Cuts(reclaimed, cut => cut.Use == Use.Structural);
        var braces = Cuts(reclaimed, cut => cut.Use == Use.Bracing);
        Add(found, GradeMark, "reclaimed lumber goes to structural use:", underLoad);
        Add(found, LostGrade, "reclaimed lumber goes where its strength counts:", underLoad.Concat(braces));
        Add(found, FormsAndBraces, "reclaimed lumber goes to bracing:", braces);
        var untreated = plan.Pieces.Where(piece => piece.Material is Lumber or Stick && !IsTreated(piece)).ToArray();
        Add(found, WoodOnConcrete, "untreated wood is cut for:", Cuts(untreated, cut => MayLieOnConcrete(cut.Cut)));
        Add(found, BarEnds, "bars are cut for:", Cuts(plan.Pieces.Where(piece => piece.Material is Rebar), _ => true));
        return found;
    }

    // A cut's name is all that tells where it goes. These words are ours; a name without them is not warned about.
    private static readonly string[] GroundWords = ["sill", "mudsill", "plate", "sleeper", "ledger"];

    private static bool MayLieOnConcrete(string name) =>
        name.Split([' ', '-', '_', '/', ',', '.'], StringSplitOptions.RemoveEmptyEntries)
            .Any(word => GroundWords.Any(ground => word.TrimEnd('s', 'S').Equals(ground, StringComparison.OrdinalIgnoreCase)));

    private static bool IsTreated(PlannedPiece piece) => piece.Source?.Treated ?? piece.Bought!.Treated;

    private static IEnumerable<string> Cuts(IEnumerable<PlannedPiece> pieces, Func<PlannedCut, bool> which) =>
        pieces.SelectMany(piece => piece.Cuts).Where(which).Select(cut => $"{TextRules.Harmless(cut.Cut)} ({TextRules.Harmless(cut.Stage)})");

    private static void Add(List<AppliedCaution> found, Caution caution, string why, IEnumerable<string> what)
    {
        var named = what.Distinct().ToArray();
        if (named.Length == 0) return;
        const int most = 6;
        var shown = string.Join(", ", named.Take(most));
        found.Add(new AppliedCaution(caution, named.Length > most ? $"{why} {shown} and {named.Length - most} more" : $"{why} {shown}"));
    }
}
