using System.Text;

namespace Offcuts.Screens;

/// <summary>
/// Text three lines high, to be read from the pile: letters of three by five dots, two dots a cell one above the other. What has no letter here is a blank.
/// </summary>
internal static class LargeLetters
{
    /// <summary>Lines that it takes.</summary>
    public const int Lines = 3;

    private const int Wide = 3;
    private const int High = 5;
    private const int Step = Wide + 1;

    /// <summary>How many letters fit.</summary>
    public static int Fit(int width) => Math.Max(0, (width + 1) / Step);

    /// <summary>The lines of a text; what does not fit is left off.</summary>
    public static IReadOnlyList<string> Of(string text, int width)
    {
        var letters = text[..Math.Min(text.Length, Fit(width))];
        var lines = new string[Lines];
        for (var line = 0; line < Lines; line++)
        {
            var cells = new StringBuilder();
            foreach (var letter in letters)
            {
                for (var x = 0; x < Wide; x++) cells.Append((Dot(letter, x, 2 * line), Dot(letter, x, (2 * line) + 1)) switch
                {
                    (true, true) => '█',
                    (true, false) => '▀',
                    (false, true) => '▄',
                    _ => ' ',
                });
                cells.Append(' ');
            }

            lines[line] = cells.ToString().TrimEnd();
        }

        return lines;
    }

    // The sign between a board's two sizes is small; every other letter is a capital.
    private static bool Dot(char letter, int x, int y) =>
        y < High && Dots.TryGetValue(letter == '×' ? 'x' : letter == 'x' ? letter : char.ToUpperInvariant(letter), out var dots) && dots[(y * (Wide + 1)) + x] == '1';

    // Five rows of three dots each.
    private static readonly Dictionary<char, string> Dots = new()
    {
        ['A'] = "010 101 111 101 101",
        ['B'] = "110 101 110 101 110",
        ['C'] = "011 100 100 100 011",
        ['D'] = "110 101 101 101 110",
        ['E'] = "111 100 110 100 111",
        ['F'] = "111 100 110 100 100",
        ['G'] = "011 100 101 101 011",
        ['H'] = "101 101 111 101 101",
        ['I'] = "111 010 010 010 111",
        ['J'] = "001 001 001 101 010",
        ['K'] = "101 101 110 101 101",
        ['L'] = "100 100 100 100 111",
        ['M'] = "101 111 111 101 101",
        ['N'] = "110 101 101 101 101",
        ['O'] = "010 101 101 101 010",
        ['P'] = "110 101 110 100 100",
        ['Q'] = "010 101 101 110 011",
        ['R'] = "110 101 110 101 101",
        ['S'] = "011 100 010 001 110",
        ['T'] = "111 010 010 010 010",
        ['U'] = "101 101 101 101 111",
        ['V'] = "101 101 101 101 010",
        ['W'] = "101 101 111 111 101",
        ['X'] = "101 101 010 101 101",
        ['Y'] = "101 101 010 010 010",
        ['Z'] = "111 001 010 100 111",
        ['0'] = "111 101 101 101 111",
        ['1'] = "010 110 010 010 111",
        ['2'] = "111 001 111 100 111",
        ['3'] = "111 001 111 001 111",
        ['4'] = "101 101 111 001 001",
        ['5'] = "111 100 111 001 111",
        ['6'] = "111 100 111 101 111",
        ['7'] = "111 001 001 001 001",
        ['8'] = "111 101 111 101 111",
        ['9'] = "111 101 111 001 111",
        ['\''] = "010 010 000 000 000",
        ['"'] = "101 101 000 000 000",
        ['-'] = "000 000 111 000 000",
        ['/'] = "001 001 010 100 100",
        ['#'] = "101 111 101 111 101",
        ['.'] = "000 000 000 000 010",
        [','] = "000 000 000 010 100",
        ['@'] = "010 101 111 100 011",
        [':'] = "000 010 000 010 000",
        ['x'] = "000 101 010 101 000",
        ['+'] = "000 010 111 010 000",
    };
}
