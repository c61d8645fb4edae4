namespace Offcuts.Core.Walls;

/// <summary>Everything that the lines of the two sheets may tell, in the order in which they are written.</summary>
public static class SheetFacts
{
    /// <summary>Of a system sheet.</summary>
    public static IReadOnlyList<SheetFact> OfSystem { get; } =
    [
        new("system", "system           what people call it", Needed: true) { Shape = "system NAME", Tells = "what people call it, at most 60 letters" },
        new("panel length", "panel length     4'", Needed: true) { Shape = "panel length LENGTH", Tells = "length of a whole panel" },
        new("panel height", "panel height     1'", Needed: true) { Shape = "panel height LENGTH", Tells = "height of a panel, which is that of a course" },
        new("panel thickness", "panel thickness  2-1/2\"", Needed: true) { Shape = "panel thickness LENGTH", Tells = "thickness of the foam of one face" },
        new("foam type", "foam type        II") { Shape = "foam type TYPE", Tells = "I, II, VIII, IX, XI or XIV of ASTM C578" },
        new("interval", "interval         2\"", Needed: true) { Shape = "interval LENGTH", Tells = "from one pattern line to the next; it divides panel length and tie spacing" },
        new("tie", "tie              panel tie", Needed: true) { Shape = "tie NAME", Tells = "what holds the two faces together" },
        new("tie spacing", "tie spacing      1'", Needed: true) { Shape = "tie spacing LENGTH", Tells = "from one regular tie to the next" },
        new("reversible", "reversible       no", Needed: true) { Shape = "reversible yes|no", Tells = "yes where a panel may be turned end for end" },
        new("stagger", "stagger          1'", Needed: true) { Shape = "stagger LENGTH", Tells = "how far a joint keeps from those of the next courses; half a panel at most, 0 for no such rule" },
        new("shortest piece", "shortest piece   6\"", Needed: true) { Shape = "shortest piece LENGTH", Tells = "no shorter piece is laid" },
        new("lap", "lap              alternate", Needed: true) { Shape = "lap alternate|same", Tells = "whether the legs of a corner change places from course to course" },
        new("corner", "corner           2 corner bracket", Often: true) { Shape = "corner COUNT NAME", Tells = "so many of it at each corner in each course" },
        new("tee", "tee              4 corner bracket", Often: true) { Shape = "tee COUNT NAME", Tells = "so many of it at each tee in each course" },
        new("end", "end              2 end bracket", Often: true) { Shape = "end COUNT NAME", Tells = "so many of it at each free end in each course" },
        new("course", "course           1 sealing strip", Often: true) { Shape = "course COUNT NAME", Tells = "so many of it for each leg in each course" },
        new("cleat", "cleat            24\" of 2x4") { Shape = "cleat LENGTH of MATERIAL", Tells = "form boards may meet anywhere with this behind the joint; without it they meet at stakes" },
        new("shortest board", "shortest board   2'") { Shape = "shortest board LENGTH", Tells = "no shorter form board is laid" },
        new("note", "note             whatever else", Often: true) { Shape = "note TEXT", Tells = "whatever else" },
    ];

    /// <summary>Of a wall sheet.</summary>
    public static IReadOnlyList<SheetFact> OfWall { get; } =
    [
        new("wall", "wall             garage", Needed: true) { Shape = "wall NAME", Tells = "what people call it, at most 20 letters" },
        new("system", "system           generic, invented", Needed: true) { Shape = "system NAME", Tells = "name of its system sheet" },
        new("height", "height           8'", Needed: true) { Shape = "height LENGTH", Tells = "from bottom to top" },
        new("core", "core             6\"", Needed: true) { Shape = "core LENGTH", Tells = "width of the concrete, from foam to foam" },
        new("lap", "lap              alternate") { Shape = "lap alternate|same", Tells = "as in the system sheet, where this wall differs from it" },
        new("closed", "closed           yes", Needed: true) { Shape = "closed yes|no", Tells = "yes where the last leg turns into the first" },
        new("leg", "leg A: 28' left", Needed: true, Often: true) { Shape = "leg NAME: LENGTH left|right|end", Tells = "length of its outside foam face, and what comes at its end for somebody who walks along it" },
        new("outside", "outside right", Often: true) { Shape = "outside left|right", Tells = "on which hand the outside lies, said below the first leg of a chain" },
        new("starts", "starts at 14' inside of A", Often: true) { Shape = "starts at LENGTH inside|outside of LEG", Tells = "the leg above starts in a tee: from that leg's start on its outside face to the middle of this one" },
        new("ends", "ends at 14' inside of C", Often: true) { Shape = "ends at LENGTH inside|outside of LEG", Tells = "the leg above ends in a tee, at this place of that leg" },
        new("opening", "opening front door: at 4' wide 3' high 7' sill 0\"", Often: true) { Shape = "opening NAME: at LENGTH wide LENGTH high LENGTH sill LENGTH", Tells = "a hole in the leg above, buck included: from the leg's start to its near edge, its size, its height over the bottom; sill 0 is a door" },
        new("horizontal bars", "horizontal bars  every 16\" lap 24\" of #4") { Shape = "horizontal bars every LENGTH lap LENGTH of BAR", Tells = "bars along the courses, as your drawings have them" },
        new("vertical bars", "vertical bars    every 24\" lap 24\" of #4") { Shape = "vertical bars every LENGTH lap LENGTH of BAR", Tells = "bars that stand up, as your drawings have them" },
        new("longest bar", "longest bar      20'") { Shape = "longest bar LENGTH", Tells = "longer lines are made of several bars with a lap" },
        new("cover", "cover            2\"") { Shape = "cover LENGTH", Tells = "what every bar keeps from both ends of the concrete" },
        new("bucks", "bucks            wide 11\" nonstructural treated of 2x12") { Shape = "bucks wide LENGTH structural|nonstructural|bracing|rough treated|untreated|either of LUMBER", Tells = "the boards around the openings" },
        new("braces", "braces           every 6' rise 6' run 4' of 2x4") { Shape = "braces every LENGTH rise LENGTH run LENGTH of MATERIAL", Tells = "uprights and kickers along the inside, as your drawings have them" },
        new("footing boards", "footing boards   beyond 6\" deep 8\" of 2x10") { Shape = "footing boards beyond LENGTH deep LENGTH of LUMBER", Tells = "boards along both sides of the footing; deep may be left out where its concrete is not to be counted" },
        new("stakes", "stakes           24\" every 3' of 2x4") { Shape = "stakes LENGTH every LENGTH of MATERIAL", Tells = "how long, how far apart, of what" },
        new("spreaders", "spreaders        1x4") { Shape = "spreaders MATERIAL", Tells = "what they are cut from" },
        new("allowance", "allowance        5 %") { Shape = "allowance PERCENT", Tells = "what is ordered over the volume of the concrete" },
        new("note", "note             whatever else", Often: true) { Shape = "note TEXT", Tells = "whatever else" },
    ];
}
