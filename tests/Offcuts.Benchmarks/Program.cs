using System.Diagnostics;
using System.Globalization;
using Offcuts.Benchmarks;
using Offcuts.Matching;
using Offcuts.Matching.Tests;

// One table from one run: the matcher, best-fit decreasing by hand, and a plain CP-SAT assignment model, side by side.
// Usage: dotnet run -c Release --project tests/Offcuts.Benchmarks [-- SECONDS [INSTANCES]]
var seconds = args.Length > 0 ? double.Parse(args[0], CultureInfo.InvariantCulture) : 20;
var count = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 3;

var instances = new List<(string Name, MatchRequest Request)>();
for (var seed = 1; seed <= count; seed++)
{
    instances.Add(($"uniform 60 no {seed}", Instances.Uniform(60, seed)));
    instances.Add(($"uniform 120 no {seed}", Instances.Uniform(120, seed)));
    instances.Add(($"triplets 60 no {seed}", Instances.Triplets(60, seed)));
    instances.Add(($"triplets 120 no {seed}", Instances.Triplets(120, seed)));
    instances.Add(($"yard 25x25 no {seed}", Instances.Yard(25, 25, seed)));
    instances.Add(($"yard 60x60 no {seed}", Instances.Yard(60, 60, seed)));
}

Console.WriteLine($"time limit {seconds} s each; unfilled, spend in cents and value given up in cents as value/bound; - where not proven or not given");
Console.WriteLine($"{"instance",-20} {"unfilled",10} {"spend",15} {"given up",15} {"s",7} {"MB",6} | {"by hand",14} | {"assignment model",20} {"s",7}");
foreach (var (name, request) in instances)
{
    GC.Collect();
    var watch = Stopwatch.StartNew();
    var plan = Matcher.Match(Problem.Create(request).Value, new MatchLimits { Time = TimeSpan.FromSeconds(seconds), Clock = TimeProvider.System });
    var took = watch.Elapsed.TotalSeconds;
    var memory = Process.GetCurrentProcess().WorkingSet64 / 1_000_000;
    var (unfilled, spend) = ByHand.Plan(request);
    watch.Restart();
    var model = AssignmentModel.Solve(request, seconds);
    var tiers = plan.Tiers;
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
        $"{name,-20} {$"{tiers.Unfilled.Value}/{tiers.Unfilled.Bound}",10} {$"{tiers.Spend.Value}/{tiers.Spend.Bound}",15} {$"{tiers.ValueGivenUp.Value}/{tiers.ValueGivenUp.Bound}",15} {took,7:0.00} {memory,6} | {$"{unfilled}, {spend}",14} | {(model is null ? "-" : string.Join(' ', model)),20} {watch.Elapsed.TotalSeconds,7:0.00}"));
}
