using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Store;
using Offcuts.Tests.Screens;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>What can go to another build without any stage of this one getting worse. Yards, prices and stages are our own invention.</summary>
public sealed class FreeToGoTests : IDisposable
{
    private readonly TryYard _folder = new();
    private readonly YardFile _yard;

    public FreeToGoTests() => _yard = YardFile.Open(_folder.YardPath, _folder.Clock);

    private static MatchLimits Short => new() { Time = TimeSpan.FromSeconds(2), Clock = TimeProvider.System };

    // A second goes by whenever the time is asked for, so that a slow machine finds what a fast one does.
    private static MatchLimits Counted(int seconds) => new() { Time = TimeSpan.FromSeconds(seconds), Clock = new FixedClock { Asked = TimeSpan.FromSeconds(1) } };

    private WhatIsFree Free => new FreeToGo(_yard).Asked().Answer(MatchLimits.None).Value;

    public void Dispose()
    {
        _yard.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void Without_any_stage_everything_is_free_of_the_highest_value_first()
    {
        _folder.Must("price", "set", "2x4 8' 4.00");
        Board("2x4", 40);
        var longer = Board("2x4", 96);
        _folder.Must("add", "--new", "bolt x12");

        Free.Proven.Should().BeTrue();
        Free.Free.Select(piece => piece.Piece.Length).Should().Equal(Length.Inches(96), Length.Inches(40));
        Free.Free.First().Should().Be(new PieceToGo(_yard.Piece(longer)!, new Money(400), Stays.Free, ""));
        Free.Bins.Single().Free.Should().Be(12);
    }

    [Fact]
    public void Of_two_boards_that_would_each_do_alone_one_stays_since_they_may_go_together()
    {
        Board("2x4", 96);
        Board("2x4", 96);
        Need("post: 2x4 90");

        Free.Free.Should().HaveCount(1);
        Free.Pieces.Single(piece => !piece.IsFree).Why.Should().Be("needed: post (walls)");
        Free.Unfilled.Should().Be(0);
    }

    [Fact]
    public void The_piece_that_gives_up_the_least_value_stays()
    {
        _folder.Must("price", "set", "2x4 8' 4.00");
        var stub = Board("2x4", 31);
        Board("2x4", 96);
        Need("block: 2x4 30");

        Free.Pieces.Single(piece => !piece.IsFree).Piece.Code.Should().Be(stub);
    }

    [Fact]
    public void What_saves_money_stays_and_what_saves_none_may_go()
    {
        _folder.Must("price", "set", "2x4 8' 4.00");
        Board("2x4", 20);
        var saves = Board("2x4", 96);
        Need("post: 2x4 90 x2");

        Free.Pieces.Single(piece => !piece.IsFree).Piece.Code.Should().Be(saves);
        Free.Spend.Should().Be(new Money(400));
        Free.Proven.Should().BeTrue();
    }

    [Fact]
    public void What_is_reserved_planned_pinned_or_to_be_left_alone_stays_and_says_so()
    {
        var reserved = Board("2x6", 96);
        var planned = Board("2x4", 96);
        var alone = Board("2x4", 96);
        Need("post: 2x4 90");
        _folder.Must("reserve", "walls", reserved.Text);
        _folder.Must("plan", "--pin", $"{planned} for post", "--spare", alone.Text, "--save");

        Free.Free.Should().BeEmpty();
        Free.Pieces.Select(piece => piece.Why).Should().Equal("reserved for walls", "waits in plan 1", "to be left alone, as you wished");
    }

    [Fact]
    public void So_much_of_a_material_always_stays_the_sound_and_long_first()
    {
        var poor = Board("2x4", 120, "poor");
        var sound = Board("2x4", 96);
        var shorter = Board("2x4", 90);
        _folder.Must("settings", "keep-back", "2x4", "10'");

        // 8 ft are less than 10 ft, so the next sound one stays too, and that is enough.
        Free.Free.Single().Piece.Code.Should().Be(poor);
        Free.Pieces.Where(piece => piece.Stays == Stays.KeptBack).Select(piece => piece.Piece.Code).Should().Equal(sound, shorter);
        _folder.Must("settings", "keep-back", "2x4", "1");
        Free.Free.Select(piece => piece.Piece.Code).Should().BeEquivalentTo([poor, shorter]);
        _folder.Must("settings", "keep-back", "2x4", "none");
        Free.Free.Should().HaveCount(3);
    }

    [Fact]
    public void Of_counted_things_stays_what_stages_need_what_waits_in_plans_and_what_always_stays()
    {
        _folder.Must("add", "--new", "bolt x100 @shed");
        _folder.Must("add", "bolt x50 @barn");
        Need("bolts: bolt x60");
        _folder.Must("settings", "keep-back", "bolt", "55");

        // 150 less 60 less 55.
        Free.Bins.Select(bin => (bin.Free, bin.Why)).Should().Equal((0, "60 needed, 40 kept back"), (35, "15 kept back"));
        _folder.Must("plan", "--save");
        Free.Bins.Select(bin => (bin.Free, bin.Why)).Should().Equal((0, "60 wait in plans, 40 kept back"), (35, "15 kept back"));
    }

    [Fact]
    public void A_sheet_is_never_called_free_since_nothing_says_whether_it_is_needed()
    {
        _folder.Must("add", "plywood 3/4 8'x4'");

        Free.Free.Should().BeEmpty();
        Free.Notes.Should().Contain("Sheets are not matched, so nothing says whether a stage needs them: they go only where you say so.");
    }

    [Fact]
    public void A_wall_keeps_the_panels_that_save_it_money_whether_its_filling_is_kept_or_not()
    {
        KnownWall.FillSmall(_yard);
        var before = new FreeToGo(_yard).Asked().Answer(Short).Value;
        var kept = before.Pieces.Where(piece => !piece.IsFree).Select(piece => piece.Piece.Code).ToArray();
        kept.Should().NotBeEmpty();
        before.Pieces.Where(piece => piece.Stays == Stays.Needed).Should().OnlyContain(piece => piece.Why == "needed: wall shed" || piece.Why.StartsWith("needed: shed"));

        var filled = new FillWall(_yard).Fill("shed", buy: null, Short).Value;
        new FillWall(_yard).Keep(filled).Ok.Should().BeTrue();

        var after = new FreeToGo(_yard).Asked().Answer(Short).Value;
        after.Pieces.Where(piece => piece.Piece.Material is FoamPanel && !piece.IsFree).Should().OnlyContain(piece => piece.Stays == Stays.Planned);
        after.Pieces.Where(piece => piece.Stays == Stays.Planned).Select(piece => piece.Piece.Code)
            .Should().BeEquivalentTo(filled.Plan.Pieces.Where(piece => piece.Source is not null).Select(piece => piece.Source!.Code));
    }

    [Fact]
    public void A_wall_is_filled_as_well_from_what_is_kept_for_it_alone_and_keeps_no_more_than_a_filling_takes()
    {
        KnownWall.FillSmall(_yard);
        var free = new FreeToGo(_yard).Asked().Answer(Counted(1500)).Value;
        var request = new FillWall(_yard).Request("shed").Value;
        var kept = free.Pieces.Where(piece => piece.Why == "needed: wall shed").Select(piece => piece.Piece.Code).ToHashSet();
        kept.Should().NotBeEmpty();

        var again = RunFiller.Fill(RunProblem.Create(request with { Pieces = [.. request.Pieces.Where(piece => kept.Contains(piece.Code))] }).Value, MatchLimits.None);

        again.Tiers.UnfilledInAll.Value.Should().BeLessThanOrEqualTo(free.Unfilled);
        again.Tiers.Spend.Value.Should().BeLessThanOrEqualTo(free.Spend.Cents);
        kept.Count.Should().BeLessThanOrEqualTo(RunFiller.Fill(RunProblem.Create(request).Value, Counted(500)).Pieces.Count(piece => piece.Source is not null));
    }

    [Fact]
    public void What_a_wall_takes_beside_its_runs_stays_though_nobody_entered_it_as_needs()
    {
        KnownWall.FillSmall(_yard);
        var ties = new TakeOffWall(_yard).Of("shed").Value.Takeoff.Hardware[0].Count.Figure;
        var there = _yard.Bins().Where(bin => bin.Hardware.Name == "panel tie").Sum(bin => bin.Quantity);

        there.Should().BeGreaterThan((int)ties);
        new FreeToGo(_yard).Asked().Answer(Short).Value.Bins.Where(bin => bin.Bin.Hardware.Name == "panel tie").Sum(bin => bin.Free).Should().Be(there - (int)ties);
    }

    [Fact]
    public void Drawn_yards_are_no_worse_off_without_all_that_is_free_and_worse_without_more()
    {
        for (var seed = 1; seed <= 25; seed++)
        {
            var random = new Random(seed);
            Piece[] pieces = [.. Enumerable.Range(0, 9).Select(i => new Piece { Code = Code.Draw(random.Next), Material = MaterialReader.Read(random.Next(2) == 0 ? "2x4" : "2x6").Value, Length = Length.Inches(random.Next(20, 110)), Condition = (Condition)random.Next(3) })];
            RequiredCut Cut(string stage, string name) => new()
            {
                Stage = stage,
                Name = name,
                Material = MaterialReader.Read(random.Next(2) == 0 ? "2x4" : "2x6").Value,
                Shortest = Length.Inches(random.Next(15, 100)) is var length ? length : default,
                Longest = length,
                Count = random.Next(1, 4),
                Use = (Use)random.Next(4),
            };
            using var folder = new TryYard();
            using var yard = YardFile.Open(folder.YardPath, folder.Clock);
            yard.Change("drawn", work =>
            {
                foreach (var piece in pieces) work.Add(piece);
                foreach (var stage in (string[])["one", "two"]) work.AddStage(new Stage(stage, null, [Cut(stage, "a"), Cut(stage, "b")], []));
                work.SetPrice(new StorePrice { Material = MaterialReader.Read("2x4").Value, Length = Length.Inches(96), Price = new Money(400) });
            }).Ok.Should().BeTrue();

            var free = new FreeToGo(yard).Asked().Answer(MatchLimits.None).Value;
            var all = Tiers(yard, _ => true);
            var gone = free.Free.Select(piece => piece.Piece.Code).ToHashSet();
            var without = Tiers(yard, piece => !gone.Contains(piece.Code));

            free.Proven.Should().BeTrue($"seed {seed}");
            without.Should().Be(all, $"seed {seed}: nothing is filled or spent otherwise without all of it");
            var value = free.Pieces.Where(piece => !piece.IsFree).Select(piece => piece.Piece.Code).ToHashSet();
            foreach (var stays in value)
                Tiers(yard, piece => !gone.Contains(piece.Code) && piece.Code != stays).Should().NotBe(all, $"seed {seed}: {stays} is needed once the free ones are gone");
        }
    }

    // Stage by stage what is unfilled, then what is spent.
    private static string Tiers(YardFile yard, Func<Piece, bool> there)
    {
        var problem = Problem.Create(new MatchRequest { Pieces = [.. yard.Pieces().Where(there)], Stages = yard.Stages(), Prices = yard.Prices(), Settings = yard.Settings() }).Value;
        var tiers = Matcher.Match(problem, MatchLimits.None).Tiers;
        return string.Join(' ', tiers.UnfilledByStage.Select(figure => figure.Value).Append(tiers.Spend.Value));
    }

    private Code Board(string material, int inches, string marks = "")
    {
        _folder.Must("add", $"{material} {inches} {marks}");
        return _yard.Pieces()[^1].Code;
    }

    private void Need(string line)
    {
        if (_yard.Stages().Count == 0) _folder.Must("stage", "new", "walls");
        _folder.Must("stage", "need", "walls", line);
    }
}
