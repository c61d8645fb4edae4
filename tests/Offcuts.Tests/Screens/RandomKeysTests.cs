using System.Globalization;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>
/// Keys, clicks, pastes and sizes drawn by chance, at every place: whatever is pressed, nothing is thrown, no piece is lost and the screen stays whole.
/// <c>OFFCUTS_KEYS</c> says how many keys, <c>OFFCUTS_SEED</c> from which seed on; a run that fails names its seed and the last keys.
/// </summary>
[Collection(OnScreen.Name)]
public sealed class RandomKeysTests
{
    private static readonly string[] Lines = ["2x4 8' fair @x", "2x4 8' 3.98", "kerf foam 0", "stud: 2x4 7' x2", "nails", "8'+", "y", "footing", "12", "tax 5", "panel tie x3", "2x4 8' 板", "~", "3", "wall: 2x4", "trailer: 12' 60 lb", "x".PadRight(300, 'x')];

    private static readonly string[] Pasted = ["2x4 7'", "2x4 7'\n2x6 8'\r\n\n2x8 9' fair", "\u001b[31mred\u0007", "one\ttwo", "e\u0301tage", "a\n"];

    private static int Keys => int.TryParse(Environment.GetEnvironmentVariable("OFFCUTS_KEYS"), NumberStyles.None, CultureInfo.InvariantCulture, out var keys) ? keys : 400;

    private static int FirstSeed => int.TryParse(Environment.GetEnvironmentVariable("OFFCUTS_SEED"), NumberStyles.None, CultureInfo.InvariantCulture, out var seed) ? seed : 1;

    public static TheoryData<int> Seeds => [FirstSeed, FirstSeed + 1, FirstSeed + 2];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void No_key_at_any_place_breaks_anything(int seed)
    {
        ScreenRun.OnKnownYard(80, 24, run =>
        {
            var draw = new Random(seed);
            var last = new Queue<string>();
            for (var i = 0; i < Keys; i++)
            {
                var key = Next(draw, run);
                last.Enqueue(key);
                if (last.Count > 30) last.Dequeue();
                try
                {
                    Press(run, key, draw);
                }
                catch (Exception error)
                {
                    throw new InvalidOperationException($"seed {seed}, after {string.Join(' ', last)}", error);
                }

                run.Lines.Should().OnlyContain(line => Print.TextColumns.Width(line) <= 160, $"seed {seed}, after {string.Join(' ', last)}");
            }

            var pieces = run.Yard.Pieces(onHandOnly: false).Select(piece => piece.Code).ToHashSet();
            var takenBack = run.Yard.History(int.MaxValue).Select(entry => entry.What).Where(what => what.StartsWith("took back: catalogued", StringComparison.Ordinal)).ToArray();
            foreach (var code in KnownYard.Codes.Take(8).Where(code => !pieces.Contains(code)))
                takenBack.Should().Contain(what => what.Contains(code.ToString(), StringComparison.Ordinal), $"no piece is lost but by undo of its first line, seed {seed}");
            run.Folder.Must("check");
            while (run.Yard.NextToUndo() is not null) run.Yard.Undo().Ok.Should().BeTrue();
            run.Yard.Pieces(onHandOnly: false).Should().BeEmpty("every change of it can be taken back");
        }, at: Place.Today);
    }

    // What the place offers, most often; else something typed. No file is written: a test leaves none about.
    private static string Next(Random draw, ScreenRun run)
    {
        var state = run.Shell.State;
        var writes = state.Line.Ask is Ask.Write { Topic: Topic.LabelFile or Topic.BlankFile or Topic.SheetFile or Topic.WallFile or Topic.HandFile };
        if (writes) return "Esc";
        var offered = ShellKeys.Now(state).SelectMany(use => use.Chords).Where(chord => chord is not ("Ctrl+Q" or "Ctrl+C")).ToArray();
        return draw.Next(24) switch
        {
            < 12 when offered.Length > 0 => offered[draw.Next(offered.Length)],
            < 14 => "type",
            14 => "size",
            15 => "letter",
            16 => "paste",
            < 19 => "click",
            19 => "double click",
            20 => "wheel",
            21 => "tick",
            _ => "Enter",
        };
    }

    private static void Press(ScreenRun run, string key, Random draw)
    {
        switch (key)
        {
            case "type":
                run.Type(Lines[draw.Next(Lines.Length)]);
                break;
            case "letter":
                run.Type(((char)draw.Next(' ', '~')).ToString());
                break;
            case "size":
                if (draw.Next(4) == 0) run.Resize(draw.Next(1, 62), draw.Next(1, 22));
                else run.Resize(draw.Next(60, 160), draw.Next(20, 50));
                break;
            case "paste":
                run.Paste(Pasted[draw.Next(Pasted.Length)]);
                break;
            case "click":
                run.Click(draw.Next(160), draw.Next(2) == 0 ? draw.Next(50) : Math.Max(0, run.Lines.Length - 1 - draw.Next(3)));
                break;
            case "double click":
                run.DoubleClick(draw.Next(80), draw.Next(40));
                break;
            case "wheel":
                run.Wheel(draw.Next(2) == 0);
                break;
            case "tick":
                run.Tick();
                break;
            case { Length: 1 }:
                run.Type(key);
                break;
            default:
                run.Press(key);
                break;
        }
    }
}
