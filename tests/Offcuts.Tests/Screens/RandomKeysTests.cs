using System.Globalization;
using Offcuts.Screens;

namespace Offcuts.Tests.Screens;

/// <summary>
/// Keys and sizes drawn by chance, at every place: whatever is pressed, nothing is thrown, no piece is lost and the screen stays whole.
/// <c>OFFCUTS_KEYS</c> says how many keys; a run that fails names its seed and the last keys.
/// </summary>
[Collection(OnScreen.Name)]
public sealed class RandomKeysTests
{
    private static readonly string[] Lines = ["2x4 8' fair @x", "2x4 8' 3.98", "kerf foam 0", "stud: 2x4 7' x2", "nails", "8'+", "y", "footing", "12", "tax 5", "panel tie x3"];

    private static int Keys => int.TryParse(Environment.GetEnvironmentVariable("OFFCUTS_KEYS"), NumberStyles.None, CultureInfo.InvariantCulture, out var keys) ? keys : 400;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
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
            pieces.Should().Contain(KnownYard.Codes.Take(8), "no piece is lost");
            while (run.Yard.NextToUndo() is not null) run.Yard.Undo().Ok.Should().BeTrue();
            run.Yard.Pieces(onHandOnly: false).Should().BeEmpty("every change of it can be taken back");
        }, at: Place.Today);
    }

    // What the place offers, most often; else something typed. No file is written: a test leaves none about.
    private static string Next(Random draw, ScreenRun run)
    {
        var state = run.Shell.State;
        var writes = state.Line.Ask is Ask.Write { Topic: Topic.LabelFile or Topic.BlankFile or Topic.SheetFile or Topic.WallFile };
        if (writes) return "Esc";
        var offered = ShellKeys.Now(state).SelectMany(use => use.Chords).Where(chord => chord is not ("Ctrl+Q" or "Ctrl+C")).ToArray();
        return draw.Next(10) switch
        {
            < 6 when offered.Length > 0 => offered[draw.Next(offered.Length)],
            6 => "type",
            7 => "size",
            8 => "letter",
            _ => draw.Next(3) == 0 ? "tick" : "Enter",
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
                run.Resize(draw.Next(50, 160), draw.Next(15, 50));
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
