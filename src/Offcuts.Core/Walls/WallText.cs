using System.Globalization;
using System.Text;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Walls;

/// <summary>
/// A wall sheet as text, one fact a line; what belongs to a leg stands below it. The page in this folder describes it; what is written
/// is read back to the same sheet. Whether the wall can be built is asked when it is laid out with its system.
/// </summary>
public static class WallText
{
    private const string FirstFact = "wall";

    private static readonly Dictionary<string, Turn> Turns = new() { ["left"] = Turn.Left, ["right"] = Turn.Right, ["end"] = Turn.End };
    private static readonly Dictionary<string, Hand> Hands = new() { ["left"] = Hand.Left, ["right"] = Hand.Right };
    private static readonly Dictionary<string, Face> Faces = new() { ["outside"] = Face.Outside, ["inside"] = Face.Inside };
    private static readonly Dictionary<string, TreatedWish> Treatments = new() { ["treated"] = TreatedWish.Yes, ["untreated"] = TreatedWish.No, ["either"] = TreatedWish.Any };

    private static readonly Dictionary<string, Use> Uses = new()
    {
        ["structural"] = Use.Structural,
        ["nonstructural"] = Use.Nonstructural,
        ["bracing"] = Use.Bracing,
        ["rough"] = Use.Rough,
    };

    /// <summary>Reads a sheet, whole or not at all: every fault with its line, and its column where it has one.</summary>
    public static Result<WallSheet> Read(string text) => ReadPlaced(text).Then<WallSheet>(placed => placed.Sheet);

    /// <summary>The same, with the lines on which things stand, for what is found wrong later.</summary>
    public static Result<PlacedWallSheet> ReadPlaced(string text)
    {
        var faults = new List<Fault>();
        var draft = new Draft();
        var lines = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        SheetLines.Read(text, SheetFacts.OfWall, faults, line =>
        {
            // A name that stands twice is placed where it stands again.
            lines[line.Fact] = lines[draft.Take(line)] = line.Number;
            line.End();
        });
        draft.CheckParts(faults);
        return SheetLines.Or(faults, () => Result<PlacedWallSheet>.Of(new PlacedWallSheet(draft.Sheet(), lines)));
    }

    /// <summary>True where the two walls are built alike: only their names or their notes are others.</summary>
    public static bool SameButName(WallSheet one, WallSheet other) => Write(one with { Name = other.Name, Notes = other.Notes }) == Write(other);

    /// <summary>The sheet as text, lines ended by a line feed.</summary>
    public static string Write(WallSheet sheet)
    {
        var text = new StringBuilder();
        void Line(string fact, string value) => text.Append(CultureInfo.InvariantCulture, $"{fact,-15}  {value}\n");
        Line(FirstFact, sheet.Name);
        Line("system", sheet.System);
        Line("height", Of(sheet.Height));
        Line("core", Of(sheet.CoreWidth));
        if (sheet.Lap is { } lap) Line("lap", WallWords.Of(lap));
        Line("closed", sheet.Closed ? "yes" : "no");
        foreach (var leg in sheet.Legs) WriteLeg(text, leg);
        if (sheet.Steel is { } steel)
        {
            if (steel.Horizontal is { } level) Line("horizontal bars", Of(level));
            if (steel.Vertical is { } upright) Line("vertical bars", Of(upright));
            Line("longest bar", Of(steel.LongestBar));
            if (!steel.Cover.IsZero) Line("cover", Of(steel.Cover));
        }

        if (sheet.Bucks is { } bucks) Line("bucks", $"wide {Of(bucks.Width)} {Word(Uses, bucks.Use)} {Word(Treatments, bucks.Treated)} of {bucks.Lumber.Name}");
        if (sheet.Braces is { } braces) Line("braces", $"every {Of(braces.Spacing)} rise {Of(braces.Rise)} run {Of(braces.Run)} of {braces.Material.Name}");
        if (sheet.Footing is { } footing)
        {
            Line("footing boards", $"beyond {Of(footing.Beyond)}{(footing.Depth.IsZero ? "" : $" deep {Of(footing.Depth)}")} of {footing.Board.Name}");
            Line("stakes", $"{Of(footing.StakeLength)} every {Of(footing.Spacing)} of {footing.Stake.Name}");
            Line("spreaders", footing.Spreader.Name);
        }

        if (sheet.AllowancePermille > 0) Line("allowance", $"{(sheet.AllowancePermille / 10m).ToString("0.#", CultureInfo.InvariantCulture)} %");
        foreach (var note in sheet.Notes) Line("note", note);
        return text.ToString();
    }

    private static void WriteLeg(StringBuilder text, Leg leg)
    {
        void Line(string value) => text.Append(value).Append('\n');
        Line($"leg {leg.Name}: {Of(leg.Length)} {WallWords.Of(leg.Turn)}");
        if (leg.Outside is { } hand) Line($"  outside {WallWords.Of(hand)}");
        if (leg.Start is { } start) Line($"  starts at {Of(start.Offset)} {WallWords.Of(start.Face)} of {start.Leg}");
        if (leg.Finish is { } finish) Line($"  ends at {Of(finish.Offset)} {WallWords.Of(finish.Face)} of {finish.Leg}");
        foreach (var opening in leg.Openings)
            Line($"  opening {opening.Name}: at {Of(opening.Offset)} wide {Of(opening.Width)} high {Of(opening.Height)} sill {Of(opening.Sill)}");
    }

    private static string Of(Length length) => SystemText.Of(length);

    private static string Of(Bars bars) => $"every {Of(bars.Spacing)} lap {Of(bars.Overlap)} of {bars.Bar.Name}";

    private static string Word<T>(Dictionary<string, T> words, T value)
        where T : struct, Enum => words.First(word => word.Value.Equals(value)).Key;

    // What the lines have told so far.
    private sealed class Draft
    {
        private readonly List<Leg> _legs = [];
        private readonly List<string> _notes = [];
        private WallSheet _sheet = new() { Name = "", System = "", Height = default, CoreWidth = default, Legs = [] };
        private Bars? _level;
        private Bars? _upright;
        private (Length Length, int Line)? _longestBar;
        private (Length Length, int Line)? _cover;
        private (Length Beyond, Length Depth, Lumber? Board, int Line)? _boards;
        private (Length Length, Length Spacing, Material? Material, int Line)? _stakes;
        private (Material? Material, int Line)? _spreaders;
        private int _barLine;

        /// <summary>Takes a line in, and says what it is about: its fact, with the name of a leg or an opening behind it.</summary>
        public string Take(SheetLine line)
        {
            switch (line.Fact)
            {
                case FirstFact: _sheet = _sheet with { Name = line.Rest("a name") }; break;
                case "system": _sheet = _sheet with { System = line.Rest("a name") }; break;
                case "height": _sheet = _sheet with { Height = line.Length() }; break;
                case "core": _sheet = _sheet with { CoreWidth = line.Length() }; break;
                case "lap": _sheet = _sheet with { Lap = line.OneOf(SystemText.Laps) }; break;
                case "closed": _sheet = _sheet with { Closed = line.OneOf(SystemText.YesNo) }; break;
                case "leg": _legs.Add(ReadLeg(line)); break;
                case "outside" or "starts" or "ends" or "opening": TakeOfLeg(line); break;
                case "horizontal bars": (_level, _barLine) = (ReadBars(line), line.Number); break;
                case "vertical bars": (_upright, _barLine) = (ReadBars(line), line.Number); break;
                case "longest bar": _longestBar = (line.Length(), line.Number); break;
                case "cover": _cover = (line.Length(), line.Number); break;
                case "bucks": _sheet = _sheet with { Bucks = ReadBucks(line) }; break;
                case "braces": _sheet = _sheet with { Braces = ReadBraces(line) }; break;
                case "footing boards": _boards = ReadBoards(line); break;
                case "stakes": _stakes = ReadStakes(line); break;
                case "spreaders": _spreaders = (Cut(line, "spreaders"), line.Number); break;
                case "allowance": _sheet = _sheet with { AllowancePermille = line.Permille() }; break;
                case "note": _notes.Add(line.Rest("a note")); break;
                default: throw new ArgumentOutOfRangeException(nameof(line), line.Fact, "no such fact");
            }

            return line.Fact switch
            {
                "leg" => $"leg {_legs[^1].Name}",
                "opening" when _legs.Count > 0 && _legs[^1].Openings.Count > 0 => $"opening {_legs[^1].Openings[^1].Name}",
                _ => line.Fact,
            };
        }

        /// <summary>Adds a fault where lines that belong together don't stand together.</summary>
        public void CheckParts(List<Fault> faults)
        {
            void Missing(bool missing, string fact, int line)
            {
                if (missing) faults.Add(WallFaults.FactMissing(fact, SheetFacts.OfWall.First(known => known.Name == fact).Example) with { Line = line });
            }

            Missing(_barLine > 0 && _longestBar is null, "longest bar", _barLine);
            Missing((_longestBar ?? _cover) is not null && _barLine == 0, "horizontal bars", (_longestBar ?? _cover)?.Line ?? 0);
            if ((_boards?.Line ?? _stakes?.Line ?? _spreaders?.Line) is not { } footing) return;
            Missing(_boards is null, "footing boards", footing);
            Missing(_stakes is null, "stakes", footing);
            Missing(_spreaders is null, "spreaders", footing);
        }

        public WallSheet Sheet() => _sheet with
        {
            Legs = _legs,
            Notes = _notes,
            Steel = _longestBar is { } bar ? new Steel { Horizontal = _level, Vertical = _upright, LongestBar = bar.Length, Cover = _cover?.Length ?? default } : null,
            Footing = _boards is { Board: { } board } boards && _stakes is { Material: { } stake } stakes && _spreaders is { Material: { } spreader }
                ? new FootingForms { Board = board, Beyond = boards.Beyond, Depth = boards.Depth, Spacing = stakes.Spacing, Stake = stake, StakeLength = stakes.Length, Spreader = spreader }
                : null,
        };

        private void TakeOfLeg(SheetLine line)
        {
            if (_legs.Count == 0)
            {
                line.Fail(WallFaults.FactWithoutLeg(line.Fact), false);
                return;
            }

            var leg = _legs[^1];
            if ((line.Fact == "outside" && leg.Outside is not null) || (line.Fact == "starts" && leg.Start is not null) || (line.Fact == "ends" && leg.Finish is not null))
            {
                line.Fail(WallFaults.FactTwiceOfLeg(line.Fact, leg.Name), false);
                return;
            }

            _legs[^1] = line.Fact switch
            {
                "outside" => leg with { Outside = line.OneOf(Hands) },
                "starts" => leg with { Start = ReadJunction(line) },
                "ends" => leg with { Finish = ReadJunction(line) },
                _ => leg with { Openings = [.. leg.Openings, ReadOpening(line)] },
            };
        }

        private static Leg ReadLeg(SheetLine line)
        {
            var name = line.Name("a name");
            if (!line.Failed && Angle(line.Ahead()) is { } angle) line.Fail(WallFaults.NotSquare(angle) with { Column = line.Text.TrimEnd().Length - angle.Length + 1 }, false);
            var length = line.Length();
            var ahead = line.Ahead();
            if (!line.Failed && ahead.Length > 0 && !Turns.ContainsKey(ahead.ToLowerInvariant()) && (ahead.Any(char.IsDigit) || Turns.ContainsKey(ahead.Split(' ')[0].ToLowerInvariant())))
                line.Fail(WallFaults.NotSquare(ahead) with { Column = line.Text.TrimEnd().Length - ahead.Length + 1 }, false);
            return new Leg { Name = name, Length = length, Turn = line.OneOf(Turns) };
        }

        // Behind feet a bare number that is more than any inches: somebody means degrees.
        private static string? Angle(string ahead) =>
            ahead.LastIndexOf(' ') is > 0 and var space && ahead[(space + 1)..] is var last
            && decimal.TryParse(last.TrimEnd('°'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees) && degrees >= 12
            && ahead[..space].TrimEnd() is var feet && LengthReader.Read(feet, 0, bare: null).TryGet(out var read) && read.End == feet.Length ? last : null;

        private static Junction ReadJunction(SheetLine line)
        {
            var offset = line.Then("at").Length();
            var face = line.OneOf(Faces);
            return new Junction(line.Then("of").Rest("the name of a leg"), offset, face);
        }

        private static Opening ReadOpening(SheetLine line)
        {
            var name = line.Name("a name");
            var offset = line.Then("at").Length();
            var width = line.Then("wide").Length();
            var height = line.Then("high").Length();
            return new Opening(name, offset, width, height, line.Then("sill").Length());
        }

        private static Bars? ReadBars(SheetLine line)
        {
            var spacing = line.Then("every").Length();
            var lap = line.Then("lap").Length();
            var bar = line.Then("of").Material<Rebar>(MaterialReader.Read, WallFaults.NoBar);
            return bar is null ? null : new Bars(bar, spacing, lap);
        }

        private static Bucks? ReadBucks(SheetLine line)
        {
            var width = line.Then("wide").Length();
            var use = line.OneOf(Uses);
            var treated = line.OneOf(Treatments);
            var lumber = line.Then("of").Material<Lumber>(MaterialReader.Read, name => WallFaults.NotLumber(name, "bucks"));
            return lumber is null ? null : new Bucks(lumber, width, use, treated);
        }

        private static Braces? ReadBraces(SheetLine line)
        {
            var spacing = line.Then("every").Length();
            var rise = line.Then("rise").Length();
            var run = line.Then("run").Length();
            line.Then("of");
            return Cut(line, "braces") is { } material ? new Braces(material, spacing, rise, run) : null;
        }

        private static (Length Beyond, Length Depth, Lumber? Board, int Line) ReadBoards(SheetLine line)
        {
            var beyond = line.Then("beyond").Length();
            var depth = line.Next("deep") ? line.Length() : default;
            return (beyond, depth, line.Then("of").Material<Lumber>(MaterialReader.Read, name => WallFaults.NotLumber(name, "footing boards")), line.Number);
        }

        private static (Length Length, Length Spacing, Material? Material, int Line) ReadStakes(SheetLine line)
        {
            var length = line.Length();
            var spacing = line.Then("every").Length();
            line.Then("of");
            return (length, spacing, Cut(line, "stakes"), line.Number);
        }

        private static Material? Cut(SheetLine line, string what)
        {
            var material = line.Material<Material>(MaterialReader.Read, name => WallFaults.NotCut(name, what));
            return material is null || WallWords.IsCut(material) ? material : line.Fail(WallFaults.NotCut(material.Name, what), default(Material));
        }
    }
}
