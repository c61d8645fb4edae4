using CsCheck;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Walls;

/// <summary>Draws sheets that a file can hold. A wall drawn here may well be one that nobody can build.</summary>
internal static class SheetGenerators
{
    private static readonly Gen<Length> Lengths = Gen.OneOf(
        Gen.Int[1, 6000].Select(sixteenths => Length.FromUnits(sixteenths * (Length.PerInch / 16))),
        Gen.Int[1, 9000].Select(sixtyFourths => Length.FromUnits(sixtyFourths * 127)),
        Gen.Int[1, 90_000].Select(tenths => Length.FromUnits(tenths * 32)),
        Gen.Long[1, Length.Longest.Units].Select(Length.FromUnits));

    private static Gen<string> OneOf(params string[] words) => Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static readonly Gen<Length> LengthsOrNone = Gen.OneOf(Gen.Const(Length.Zero), Lengths);

    private static readonly Gen<string> Words = OneOf("A", "north", "at", "of", "left 45", "Höß", "2'", "big door", "#4", "end", "«quoted»", "a-b_c", "0");

    private static readonly Gen<string> Notes = OneOf("Anything at all: 4' of it.", "wall", "leg A: 2'", "50 % more");

    private static readonly Gen<Material> Cuts = OneOf("2x4", "1x4", "5/4x6", "pipe of steel", "every 3'").Select(name => MaterialReader.Read(name).Value)
        .Where(material => material is Lumber or Stick);

    private static readonly Gen<Lumber> Boards = OneOf("2x10", "2x12", "1x6").Select(name => (Lumber)MaterialReader.Read(name).Value);

    private static readonly Gen<Rebar> Rebars = Gen.Int[3, 11].Select(number => (Rebar)MaterialReader.Read($"#{number}").Value);

    private static readonly Gen<Hardware> Counted = OneOf("panel tie", "spacing rod", "2 hole bracket", "of", "Klammer ß").Select(name => (Hardware)MaterialReader.ReadCounted(name).Value);

    private static readonly Gen<Fitting[]> Fittings = Gen.Select(Gen.Int[1, 1000], Counted, (count, hardware) => new Fitting(count, hardware)).Array[0, 3]
        .Select(fittings => fittings.DistinctBy(fitting => fitting.Hardware).ToArray());

    public static readonly Gen<SystemSheet> Systems =
        from interval in Gen.Int[64, 600]
        from panels in Gen.Int[1, 40]
        from ties in Gen.Int[1, 10]
        from lengths in Gen.Select(Lengths, Lengths, LengthsOrNone)
        from foam in OneOf("", "I", "II", "VIII", "IX", "XI", "XIV")
        from fittings in Fittings.Array[4]
        from cleat in Gen.Select(Gen.Bool, Lengths, Cuts)
        from tie in Counted
        from rest in Gen.Select(Gen.Bool, Gen.Bool, Notes.Array[0, 3], Words)
        let step = Length.FromUnits(interval * 127)
        select new SystemSheet
        {
            Name = rest.Item4,
            PanelLength = step * panels,
            PanelHeight = lengths.Item1,
            Thickness = lengths.Item2,
            Foam = foam.Length == 0 ? null : EpsType.Find(foam),
            Interval = step,
            TieSpacing = step * ties,
            Tie = tie,
            Reversible = rest.Item1,
            Stagger = Length.FromUnits(step.Units * panels / 2),
            ShortestPiece = step,
            Lap = rest.Item2 ? Lap.Alternate : Lap.Same,
            AtCorner = fittings[0],
            AtTee = fittings[1],
            AtEnd = fittings[2],
            AtCourse = fittings[3],
            Cleat = cleat.Item1 ? new Cleat(cleat.Item3, cleat.Item2) : null,
            ShortestBoard = lengths.Item3,
            Notes = rest.Item3,
        };

    private static readonly Gen<Junction?> Junctions =
        from there in Gen.Bool
        from leg in Words
        from offset in LengthsOrNone
        from face in Gen.Enum<Face>()
        select there ? new Junction(leg, offset, face) : null;

    private static readonly Gen<Leg> Legs =
        from name in Words
        from length in Lengths
        from turn in Gen.Enum<Turn>()
        from start in Junctions
        from finish in Junctions
        from outside in Gen.Select(Gen.Bool, Gen.Enum<Hand>())
        from openings in Gen.Select(Words, LengthsOrNone, Lengths, Lengths, LengthsOrNone, (word, at, wide, high, sill) => new Opening(word, at, wide, high, sill)).Array[0, 2]
        select new Leg { Name = name, Length = length, Turn = turn, Start = start, Finish = finish, Outside = outside.Item1 ? outside.Item2 : null, Openings = openings };

    private static readonly Gen<Bars> Bars = Gen.Select(Rebars, Lengths, LengthsOrNone, (bar, spacing, lap) => new Bars(bar, spacing, lap));

    private static readonly Gen<Steel?> Steels =
        from which in Gen.Int[0, 3]
        from level in Bars
        from upright in Bars
        from longest in Lengths
        from cover in LengthsOrNone
        select which == 0 ? null : new Steel { Horizontal = (which & 1) > 0 ? level : null, Vertical = (which & 2) > 0 ? upright : null, LongestBar = longest, Cover = cover };

    private static readonly Gen<FootingForms?> Footings =
        from there in Gen.Bool
        from boards in Boards
        from lengths in Gen.Select(LengthsOrNone, Lengths, Lengths, LengthsOrNone)
        from stake in Cuts
        from spreader in Cuts
        select there ? new FootingForms { Board = boards, Beyond = lengths.Item1, Spacing = lengths.Item2, StakeLength = lengths.Item3, Depth = lengths.Item4, Stake = stake, Spreader = spreader } : null;

    public static readonly Gen<WallSheet> Walls =
        from names in Gen.Select(Words, Words)
        from lengths in Gen.Select(Lengths, Lengths)
        from lap in Gen.Select(Gen.Bool, Gen.Enum<Lap>())
        from closed in Gen.Bool
        from legs in Legs.Array[1, 5]
        from steel in Steels
        from bucks in Gen.Select(Gen.Bool, Boards, Lengths, Gen.Enum<Use>(), Gen.Enum<TreatedWish>())
        from braces in Gen.Select(Gen.Bool, Cuts, Lengths, Lengths, Lengths)
        from footing in Footings
        from allowance in Gen.Int[0, 1000]
        from notes in Notes.Array[0, 2]
        select new WallSheet
        {
            Name = names.Item1,
            System = names.Item2,
            Height = lengths.Item1,
            CoreWidth = lengths.Item2,
            Lap = lap.Item1 ? lap.Item2 : null,
            Closed = closed,
            Legs = legs,
            Steel = steel,
            Bucks = bucks.Item1 ? new Bucks(bucks.Item2, bucks.Item3, bucks.Item4, bucks.Item5) : null,
            Braces = braces.Item1 ? new Braces(braces.Item2, braces.Item3, braces.Item4, braces.Item5) : null,
            Footing = footing,
            AllowancePermille = allowance,
            Notes = notes,
        };
}
