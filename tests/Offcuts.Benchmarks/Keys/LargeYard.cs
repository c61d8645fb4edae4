using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Store;

namespace Offcuts.Benchmarks.Keys;

/// <summary>A yard of very many pieces, drawn from one seed: invented, and of no likeness but in the spread of sizes, places and marks.</summary>
internal static class LargeYard
{
    private static readonly string[] Materials = ["2x4", "2x4", "2x4", "2x6", "2x8", "2x10", "2x12", "1x4", "4x4", "#4", "#5", "foam 2-1/2x12 II", "foam 2-1/2x16 II", "pipe of steel"];

    private static readonly string[] Places = ["north rack", "south rack", "long pile", "behind the shed", "barn", "loft", "by the gate", "tarp", "bar pile", "trailer"];

    private static readonly string[] Notes = ["", "", "", "", "split near the mark", "bowed", "from the Müller job", "paint on one face"];

    /// <summary>Writes it to a file that is not there yet.</summary>
    /// <param name="path">The file.</param>
    /// <param name="pieces">How many.</param>
    public static void Write(string path, int pieces)
    {
        var random = new Random(20261128);
        T One<T>(T[] of) => of[random.Next(of.Length)];
        var codes = new HashSet<Code>();
        while (codes.Count < pieces) codes.Add(Code.Draw(random.Next));
        Material[] materials = [.. Materials.Select(name => MaterialReader.Read(name).Value)];
        using var yard = YardFile.Open(path, TimeProvider.System);
        var done = yard.Change($"drew {pieces} pieces", work =>
        {
            foreach (var code in codes)
            {
                work.Add(new Piece
                {
                    Code = code,
                    Material = One(materials),
                    Length = Length.Inches(random.Next(16, 16 * 12 * 16) / 16m),
                    Condition = random.Next(10) switch { < 6 => Condition.Sound, < 9 => Condition.Fair, _ => Condition.Poor },
                    Place = One(Places),
                    Note = One(Notes),
                    Nails = random.Next(3) == 0,
                    Oiled = random.Next(4) == 0,
                    Stamped = random.Next(2) == 0,
                });
            }
        });
        if (!done.Ok) throw new InvalidOperationException(done.Fault.ToString());
    }
}
