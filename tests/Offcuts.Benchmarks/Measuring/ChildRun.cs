using System.Text.Json;
using Offcuts.Benchmarks.Classes;

namespace Offcuts.Benchmarks.Measuring;

/// <summary>
/// The child's side of a <see cref="Worker"/>: one contender works through whatever it is told to, a line of JSON for each class on standard
/// input, and answers with a line for each instance. Before the first yard a small one is solved and not counted, before the first wall two
/// small ones, so that no instance pays for the compiler and for loading the engine. Both sides know how to draw an instance, so none goes from one to the other.
/// </summary>
internal static class ChildRun
{
    /// <summary>Works until nothing more comes.</summary>
    public static int Run(Options options, string child)
    {
        var contender = Enum.Parse<Contender>(child);
        var classes = options.Classes().ToDictionary(one => one.Name);
        var warm = new HashSet<bool>();
        while (Console.ReadLine() is { } line)
        {
            var order = JsonSerializer.Deserialize<Order>(line)!;
            for (var number = 1; number <= order.Count; number++)
            {
                var instance = classes[order.Class].Draw(number);
                var walls = instance.Wall is not null;
                if (warm.Add(walls)) foreach (var small in walls ? Classes.Walls.Small : [SmallYard]) Contest.Run(contender, small, 1);
                Console.WriteLine(JsonSerializer.Serialize(Contest.Run(contender, instance, order.Seconds)));
            }
        }

        return 0;
    }

    private static Instance SmallYard => Yards.Draw(new YardSize(12, 8, 10, 1, Enough: false), 1);
}

/// <summary>What a worker is told to do: so many instances of a class with so many seconds each.</summary>
internal sealed record Order(string Class, double Seconds, int Count);
