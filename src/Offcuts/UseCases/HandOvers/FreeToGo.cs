using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Store;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A wall of which no filling is kept, ready to be filled from what is left to it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Request">What filling it depends on; its pieces are set when it comes to it.</param>
internal sealed record WallAsked(string Name, RunRequest Request);

/// <summary>
/// Looks up what can go to another build. A piece is free where the best plan of everything that is lacking leaves it alone: all stages
/// together, then the walls of which no filling is kept, in the order of the work, each from what is left. Since that one plan does
/// without all free pieces at once, they may go together, not only one at a time; and since it is the best by all tiers, what it keeps is
/// what gives up the least yard value. What is reserved, waits in a kept plan, is pinned or to be left alone, or is kept back stays.
/// </summary>
public sealed class FreeToGo(YardFile yard)
{
    /// <summary>Everything the answer depends on, read from the yard at one moment.</summary>
    /// <param name="without">Pieces that are taken as gone, to see what that would cost.</param>
    public FreeAsked Asked(IReadOnlyList<Code>? without = null)
    {
        var seen = yard.ChangeNumber;
        var gone = (without ?? []).ToHashSet();
        var plans = yard.Plans();
        var stages = yard.Stages();
        var (notes, doubts) = (new List<string>(), new List<string>());
        var needs = stages.ToDictionary(stage => stage.Name, stage => StageNeeds.Unplanned(stage, plans));
        var walls = new List<WallAsked>();
        foreach (var wall in yard.Walls()) Add(wall, needs, walls, doubts);

        Piece[] pieces = [.. yard.Pieces().Where(piece => !gone.Contains(piece.Code))];
        var promised = new Promised(plans.Where(plan => plan.Open));
        Stage[] lacking = [.. stages.Select(stage => needs[stage.Name]).Where(stage => stage.Cuts.Count + stage.Hardware.Count > 0)];
        var held = new Dictionary<Code, (Stays, string)>();
        foreach (var piece in pieces.Where(piece => promised.Pieces.Contains(piece.Code))) held[piece.Code] = (Stays.Planned, $"waits in plan {PlanOf(plans, piece.Code)}");
        foreach (var piece in pieces.Where(piece => piece.State == PieceState.Reserved)) held.TryAdd(piece.Code, (Stays.Reserved, $"reserved for {piece.ReservedFor}"));
        var wishes = KeptWishes.Of([.. plans], [.. stages], pieces);
        foreach (var pin in wishes.Pins) held.TryAdd(pin.Piece, (Stays.Wished, $"pinned for {pin.Cut} ({pin.Stage})"));
        foreach (var spare in wishes.Spares.Where(spare => spare.Wholly)) held.TryAdd(spare.Piece, (Stays.Wished, "to be left alone, as you wished"));
        var alone = wishes.Spares.Where(spare => spare.Wholly).Select(spare => spare.Piece).ToHashSet();
        return new FreeAsked
        {
            Seen = seen,
            Pieces = pieces,
            Held = held,
            Bins = yard.Bins(),
            BinsLeft = promised.Left(yard.Bins()),
            Prices = yard.Prices(),
            Settings = yard.Settings(),
            Walls = walls,
            Doubts = doubts,
            Notes = notes,
            Stages = lacking,
            Request = lacking.Length == 0 ? null : new MatchRequest
            {
                Pieces = [.. pieces.Where(piece => !promised.Pieces.Contains(piece.Code) && !alone.Contains(piece.Code))],
                Bins = promised.Left(yard.Bins()),
                Stages = lacking,
                Prices = yard.Prices(),
                Settings = yard.Settings(),
                Buy = KeptWishes.BuyOf(plans, lacking),
            },
        };
    }

    // What a wall still takes beside its runs comes to the needs of its stage, as far as it was not entered there.
    private void Add(StageWall wall, Dictionary<string, Stage> needs, List<WallAsked> walls, List<string> doubts)
    {
        var name = wall.Sheet.Name;
        if (!new TakeOffWall(yard).Of(name).TryGet(out var taken))
        {
            doubts.Add($"The wall {name} can't be built as its sheet stands, so what it takes is not known.");
            return;
        }

        if (taken.Left.Standing == taken.Left.Courses) return;
        needs[wall.Stage] = With(needs[wall.Stage], taken.Still);
        if (taken.Left.Kept is null)
        {
            if (new FillWall(yard).Request(name).TryGet(out var request)) walls.Add(new WallAsked(name, request));
            else doubts.Add($"The wall {name} can't be filled as its sheet stands, so what it takes is not known.");
            return;
        }

        if (taken.Left.Gone.Count > 0) doubts.Add($"The wall {name} is not filled as planned any more ({string.Join(", ", taken.Left.Gone.Take(4))} changed or gone): fill it again, then look here again.");
        else if (taken.Left.Kept.Plan.Courses.Any(course => course.Unfilled)) doubts.Add($"The filling that is kept of the wall {name} leaves something open; what would fill it is not looked for here.");
    }

    private static Stage With(Stage stage, Takeoff still)
    {
        var cuts = stage.Cuts.ToList();
        foreach (var cut in still.Cuts.Select(cut => cut.Cut))
        {
            var at = cuts.FindIndex(one => one.Name == cut.Name);
            if (at < 0) cuts.Add(cut);
            else if (cuts[at].Count < cut.Count) cuts[at] = cuts[at] with { Count = cut.Count };
        }

        var hardware = stage.Hardware.ToList();
        foreach (var need in still.HardwareNeeds(stage.Name))
        {
            var at = hardware.FindIndex(one => one.Name == need.Name);
            if (at < 0) hardware.Add(need);
            else if (hardware[at].Count < need.Count) hardware[at] = hardware[at] with { Count = need.Count };
        }

        return stage with { Cuts = cuts, Hardware = hardware };
    }

    private static int PlanOf(IReadOnlyList<KeptPlan> plans, Code code) =>
        plans.Last(plan => plan.Open && plan.Plan.Pieces.Zip(plan.Steps).Any(piece => piece.First.Source?.Code == code && piece.Second.State == StepState.Waiting)).Id;
}
