using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Matching.Runs;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>A kept filling that was filled again around what is begun of it.</summary>
/// <param name="Begun">What was begun.</param>
/// <param name="Plan">The filling from now on, under the same number: its pieces stand where they stood, new ones behind them.</param>
/// <param name="GivenUp">Which of its pieces are given up, since nothing of them is needed any more.</param>
/// <param name="Filled">Places in begun courses that lacked a piece and have one again.</param>
/// <param name="StillOpen">Places in begun courses for which there is none.</param>
internal sealed record FilledAgain(BegunFilling Begun, RunPlan Plan, IReadOnlyList<int> GivenUp, IReadOnlyList<BegunPlace> Filled, IReadOnlyList<BegunPlace> StillOpen)
{
    /// <summary>How far its pieces have come then.</summary>
    public KeptPlan Steps => Begun.Steps with
    {
        Plan = Plan.AsPlan(),
        Steps = [.. Plan.Pieces.Select((_, p) => p >= Begun.Steps.Steps.Count ? PlanStep.Waiting : GivenUp.Contains(p) ? PlanStep.Dropped : Begun.Steps.Steps[p])],
    };
}

/// <summary>A place in a begun course that lacked a piece.</summary>
/// <param name="Course">The course.</param>
/// <param name="Where">From end to end on the leg's axis.</param>
internal sealed record BegunPlace(BegunCourse Course, Span Where);

/// <summary>
/// Fills a wall again whose filling is begun. First each place in a begun course that lacks a piece gets one, with its ends on the pattern where they
/// meet another: of one piece, the one that loses least and a new one only where there is none, else of several. Then the other courses are
/// filled from all that is left, what is left of the pieces that wait for begun courses among it.
/// </summary>
/// <param name="begun">What is begun.</param>
/// <param name="others">The other courses, and what they are filled from.</param>
/// <param name="laid">The wall laid out.</param>
/// <param name="settled">Courses that stand, or are cut and wait to be stacked.</param>
internal sealed class FillAgain(BegunFilling begun, RunRequest others, LaidWall laid, IReadOnlyList<StackedCourse> settled)
{
    // A place is small: what is not found by then is not there.
    private static readonly TimeSpan OfAPlace = TimeSpan.FromSeconds(1);

    private readonly SawBench _bench = new(begun, others.Settings, (run, course) => IsLow(laid, run, course));
    private readonly List<Piece> _stock = [.. others.Pieces];
    private readonly List<BegunPlace> _filled = [];
    private readonly List<BegunPlace> _open = [];
    private readonly List<Piece> _taken = [];
    private bool _any;

    // True where joints were chosen within a gap, from which the courses beside it keep their stagger: with others those might take less.
    private bool _jointsChosen;

    /// <summary>Fills it within the limits.</summary>
    public FilledAgain Fill(MatchLimits limits)
    {
        var bound = new BegunBound(others, [.. _bench.Rests().Keys]);
        var before = begun.Courses.SelectMany(course => course.Waits).Select(one => one.Piece).Distinct().Sum(piece => begun.Kept.Plan.Pieces[piece].Bought?.Price.Cents ?? 0);
        foreach (var course in begun.Courses)
        {
            foreach (var gap in course.Gaps)
            {
                var filled = FillGap(course, gap, limits);
                (filled ? _filled : _open).Add(new BegunPlace(course, gap.Where));
                _jointsChosen |= !filled && gap.Lacking.Count > 1;
            }
        }

        var rests = _bench.Rests();
        var standing = begun.Courses.Select(Now).ToDictionary(course => (course.Run, course.Course));
        var request = others with
        {
            Pieces = [.. _stock, .. rests.Keys],
            Runs = [.. others.Runs.Select(run => run with { Standing = [.. run.Standing.Select(course => standing.TryGetValue((run.Name, course.Number), out var now) ? new StandingCourse(course.Number, [.. now.Joints]) : course)] })],
            Prices = Less(others.Prices),
        };
        var inGaps = Bought() - before;
        var found = AsPriced(RunFiller.Fill(RunProblem.Create(request).Value, limits.Progress is { } told ? limits with { Progress = Beside(told, before, inGaps) } : limits));
        _bench.Take(found, rests);
        return Together(found, before, inGaps, Least(bound, found.Tiers));
    }

    private BesideBegun Beside(IProgress<MatchProgress> told, long before, long inGaps)
    {
        var (lacking, always) = (_open.Select(place => place.Course).Distinct().Count(), LeftOpen.Count());
        return new BesideBegun(told, lacking + always, always, before, _filled.Count + _open.Count == 0 ? null : inGaps);
    }

    // Begun courses that were planned to stay open, and lack nothing that was planned.
    private IEnumerable<BegunCourse> LeftOpen => begun.Courses.Where(course => course.Laid.Unfilled && _open.All(place => place.Course != course));

    // What is spent at least beside what is begun. Bounds hold of plans that leave open what this one does, so that what is not known to be the least open
    // tells nothing of plans that fill a gap with something else.
    private long Least(BegunBound bound, RunTiers found)
    {
        if (_filled.Count + _open.Count == 0) return found.Spend.Bound;
        if (_open.Count > 0 || found.Unfilled.Any(level => !level.Unfilled.Proven)) return 0;
        var byLength = found.UnfilledInAll.Value == 0 && begun.Courses.All(course => !course.Laid.Unfilled) ? bound.ByLength(begun.Courses.SelectMany(course => course.Gaps.Select(gap => (course.Run, gap.Where)))) : 0;
        var limited = others.Prices.All.Any(price => price.Limit is not null);
        return Math.Max(byLength, _jointsChosen || limited ? 0 : bound.WithoutTaken(found.Spend.Bound, _taken) ?? 0);
    }

    private FilledAgain Together(RunPlan found, long before, long inGaps, long least)
    {
        var old = begun.Kept.Plan;
        var (pieces, givenUp) = _bench.Pieces();
        var anew = found.Courses.ToDictionary(course => (course.Run, course.Course));
        var here = begun.Courses.ToDictionary(course => (course.Laid.Run, course.Laid.Course));
        LaidCourse[] courses =
        [
            .. old.Courses.Select(course => here.TryGetValue((course.Run, course.Course), out var one) ? Now(one)
                : anew.Remove((course.Run, course.Course), out var laidAnew) ? laidAnew with { Pieces = [.. _bench.LaidIn(course.Run, course.Course)] } : course),
            .. found.Courses.Where(course => anew.ContainsKey((course.Run, course.Course))).Select(course => course with { Pieces = [.. _bench.LaidIn(course.Run, course.Course)] }),
        ];
        Run[] runs = [.. laid.Runs, .. laid.FootingRuns];
        var plan = CutToHeight.In(old with
        {
            Pieces = pieces,
            Courses = courses,
            ExtraTies = [.. old.ExtraTies.Concat(found.ExtraTies).Concat(TiesInGaps()).Distinct()],
            Tiers = Tiers(found.Tiers, before, inGaps, least),
            Savings = WithBegun(found.Savings, new Money(before + inGaps)),
            Unpriced = found.Unpriced,
            Buys = found.Buys,
            Anew = found.Courses.Count,
        }, laid.Runs, others.Settings, laid.Notches).TiesOfJoints(runs);
        // What is cut was cut by the kerf and the keep length of that day.
        return new FilledAgain(begun, plan with { Pieces = [.. plan.Pieces.Select((piece, p) => p < begun.Steps.Steps.Count && begun.Steps.Steps[p].State != StepState.Waiting ? old.Pieces[p] : piece)] }, givenUp, _filled, _open);
    }

    // What begun courses still take would be bought as well, were all new.
    private static PlanSavings WithBegun(PlanSavings found, Money begun) => found with { AllNew = found.AllNew + begun, Spend = found.Spend + begun };

    // Those of the courses that are filled anew; what begun courses still take is bought whatever those do. Where their gaps were filled first, each for
    // itself, another choice there might leave more to the others: then only what is spent at least is claimed, as far as it is known whatever the choice.
    private RunTiers Tiers(RunTiers found, long before, long inGaps, long least)
    {
        static Figure Open(Figure figure) => figure with { Bound = 0 };
        Figure Stock(Figure figure) => _taken.Count > 0 || _jointsChosen ? Open(figure) : figure;
        Figure After(Figure figure) => _any ? Open(figure) : figure;
        var lacking = _open.Select(place => place.Course).Distinct().GroupBy(course => course.Laid.Course).ToDictionary(same => same.Key, same => same.Count());
        var never = LeftOpen.GroupBy(course => course.Laid.Course).ToDictionary(same => same.Key, same => same.Count());
        var levels = found.Unfilled.ToDictionary(level => level.Course, level => level.Unfilled);
        var spend = found.Spend;
        return new RunTiers(
            [
                .. from number in levels.Keys.Concat(lacking.Keys).Concat(never.Keys).Distinct().Order()
                   let level = Stock(levels.GetValueOrDefault(number))
                   let always = never.GetValueOrDefault(number)
                   select new CourseFigure(number, new Figure(level.Value + always + lacking.GetValueOrDefault(number), level.Bound + always)),
            ],
            new Figure(spend.Value + before + inGaps, before + least),
            // What is left of new pieces is worth no more than what they cost.
            _any ? found.ValueGivenUp with { Bound = Math.Min(found.ValueGivenUp.Value, -(spend.Value + before + inGaps)) } : found.ValueGivenUp,
            After(found.ExtraTies),
            After(found.Joints),
            After(found.SawCuts));
    }

    // A begun course as it is now: what stays, what was put into its gaps, and where there is nothing for one what was to lie there.
    private LaidCourse Now(BegunCourse course)
    {
        var lacking = _open.Where(place => place.Course == course).ToArray();
        return course.Laid with
        {
            Pieces =
            [
                .. course.Cut.Concat(course.Gaps.Where(gap => lacking.Any(place => place.Where == gap.Where)).SelectMany(gap => gap.Lacking))
                    .Concat(_bench.LaidIn(course.Laid.Run, course.Laid.Course)).OrderBy(one => one.From),
            ],
        };
    }

    private IEnumerable<ExtraTie> TiesInGaps() =>
        from place in _filled
        from joint in Now(place.Course).Joints
        where joint >= place.Where.Start && joint <= place.Where.End && !place.Course.Run.Lines.IsTie(joint)
        let cleat = place.Course.Run.Joints != JointRule.OnPattern
        where !cleat || !place.Course.Run.Lines.IsLine(joint)
        select new ExtraTie(place.Course.Run.Leg, place.Course.Laid.Course, joint, cleat ? place.Course.Run.Name : null);

    private bool FillGap(BegunCourse course, BegunGap gap, MatchLimits limits)
    {
        var (run, rests) = (course.Run, _bench.Rests());
        bool Meets(Length at) => course.Course.Stretches.All(stretch => stretch.Start != at && stretch.End != at);
        var onPattern = run.Joints == JointRule.OnPattern;
        var need = new OneOffNeed(run.Material, gap.Where.Length)
        {
            LeftOnPattern = onPattern && Meets(gap.Where.Start),
            RightOnPattern = onPattern && Meets(gap.Where.End),
            Interval = run.Lines.Interval,
            Reversible = run.Reversible,
            Use = UseOf(run.Material),
            Stage = others.Stage,
        };
        var fresh = Fresh(run).ToDictionary(one => one.Piece, one => one.Price, (IEqualityComparer<Piece>)ReferenceEqualityComparer.Instance);
        var found = OneOffSearch.Find(need, [.. rests.Keys, .. _stock, .. fresh.Keys], others.Prices, others.Settings);
        if (found.Ok && found.Value.OrderBy(one => fresh.TryGetValue(one.Piece, out var price) ? price.Price.Cents : 0).FirstOrDefault() is { } best)
        {
            var cut = (new PlannedCut(others.Stage, Name(course, gap, 0, 1), best.Start, need.Length, need.Use), new SawBench.Place(run.Name, course.Laid.Course, gap.Where.Start, gap.Where.End, best.Turned));
            if (rests.TryGetValue(best.Piece, out var rest)) _bench.Add(rest, [cut]);
            else _bench.Add(New(run, fresh.TryGetValue(best.Piece, out var price) ? null : best.Piece, price), [cut]);
            Took(fresh.ContainsKey(best.Piece) ? [] : [best.Piece]);
            return true;
        }

        var waits = begun.Courses.Any(other => other != course && other.Laid.Run == course.Laid.Run && other.Gaps.Any(one => !Filled(other, one)));
        return Several(course, gap, rests, limits, asBefore: true) || (waits && Several(course, gap, rests, limits, asBefore: false));
    }

    // Between two lines of a run each of several pieces is a multiple of the interval long but for those at the run's ends, so that one end on the pattern brings
    // the other there: only where one piece fills it alone that has to be asked for, and such a piece was not found.
    private bool Several(BegunCourse course, BegunGap gap, IReadOnlyDictionary<Piece, (int Bar, Length Start)> rests, MatchLimits limits, bool asBefore)
    {
        var run = course.Run;
        var request = others with
        {
            Pieces = [.. _stock, .. rests.Keys],
            Runs = [run with { Courses = [course.Course with { Stretches = [gap.Where] }], Standing = [.. Beside(course, asBefore)] }],
            Prices = Less(others.Prices),
        };
        var within = limits with { Time = limits.Time is { } time && time / 4 < OfAPlace ? time / 4 : OfAPlace, Progress = null };
        if (!RunProblem.Create(request).TryGet(out var problem)) return false;
        var found = AsPriced(RunFiller.Fill(problem, limits.Time is null ? limits with { Progress = null } : within));
        if (found.Courses is not [{ Unfilled: false, Pieces.Count: > 1 } laidThere]) return false;
        _jointsChosen = true;
        var names = laidThere.Pieces.Select((one, i) => (one.Piece, one.Cut, Name: Name(course, gap, i, laidThere.Pieces.Count))).ToDictionary(one => (one.Piece, one.Cut), one => one.Name);
        var named = found with { Pieces = [.. found.Pieces.Select((piece, p) => piece with { Cuts = [.. piece.Cuts.Select((cut, c) => cut with { Cut = names[(p, c)] })] })] };
        _bench.Take(named, rests);
        Took(found.Pieces.Select(piece => piece.Source).OfType<Piece>());
        return true;
    }

    // From which courses of its run a begun one keeps its stagger: those that are settled, and begun ones as they are by now, with what their gaps got. A run
    // of which all is settled or begun is no part of what is filled anew, so they are not looked for there. With the joints that lay in gaps nobody has filled yet
    // there is room to lay those again.
    private IEnumerable<StandingCourse> Beside(BegunCourse course, bool asBefore) =>
        settled.Select(stood => (stood.Run, Stood: new StandingCourse(stood.Course, stood.Joints)))
            .Concat(begun.Courses.Where(other => other != course).Select(other => (other.Laid.Run, Stood: new StandingCourse(other.Laid.Course, Joints(other, asBefore)))))
            .Where(one => one.Run == course.Run.Name).Select(one => one.Stood);

    // Where pieces meet, or will: what lies beside a gap ends in a joint whatever comes there.
    private IReadOnlyList<Length> Joints(BegunCourse course, bool asBefore) =>
        [.. Now(course).Pieces.Concat(asBefore ? course.Gaps.Where(gap => !Filled(course, gap)).SelectMany(gap => gap.Lacking) : []).SelectMany(one => (Length[])[one.From, one.To]).Where(at => course.Course.Stretches.All(stretch => stretch.Start != at && stretch.End != at)).Distinct().Order()];

    private bool Filled(BegunCourse course, BegunGap gap) => _filled.Any(place => place.Course == course && place.Where == gap.Where);

    // What a place took of the yard the other courses can't have.
    private void Took(IEnumerable<Piece> pieces)
    {
        _any = true;
        foreach (var piece in pieces)
        {
            _taken.Add(piece);
            _stock.RemoveAll(one => ReferenceEquals(one, piece));
        }
    }

    // New pieces at the prices of the yard, whatever was left of their limits.
    private RunPlan AsPriced(RunPlan found) => found with
    {
        Pieces = [.. found.Pieces.Select(piece => piece.Bought is { } price ? piece with { Bought = others.Prices.Of(price.Material).First(one => one.Length == price.Length && one.Treated == price.Treated) } : piece)],
    };

    // As what was to lie there is called; where there are more pieces or fewer now, by the first of those.
    private static string Name(BegunCourse course, BegunGap gap, int at, int of)
    {
        var first = course.Laid.Pieces.ToList().IndexOf(gap.Lacking[0]) + 1;
        return $"{course.Laid.Run}, course {course.Laid.Course}, piece {(of == gap.Lacking.Count ? $"{first + at}" : $"{first}{(char)('a' + at)}")}";
    }

    private PlannedPiece New(Run run, Piece? source, StorePrice? bought) => new()
    {
        Source = source,
        Bought = bought,
        Cuts = [],
        Remainders = [],
        SawCuts = 0,
        LineSpacing = run.Joints == JointRule.OnPattern ? run.Lines.Interval : null,
    };

    private IEnumerable<(Piece Piece, StorePrice Price)> Fresh(Run run) => !others.Buy ? [] :
        from price in others.Prices.Of(run.Material)
        where price.Limit is not { } limit || _bench.Bought(price) < limit
        select (new Piece { Code = default, Material = price.Material, Length = price.Length, Treated = price.Treated, FirstLine = run.Material is FoamPanel ? Length.Zero : null }, price);

    // What is bought for begun courses can't be had a second time.
    private PriceBook Less(PriceBook prices) => new([.. prices.All.Select(price => price.Limit is { } limit ? price with { Limit = Math.Max(0, limit - _bench.Bought(price)) } : price)]);

    private long Bought() => _bench.Pieces() is var (pieces, givenUp) ? pieces.Where((_, p) => (p >= begun.Steps.Steps.Count || begun.Steps.Steps[p].State == StepState.Waiting) && !givenUp.Contains(p)).Sum(piece => piece.Bought?.Price.Cents ?? 0) : 0;

    private Use UseOf(Material material) => others.Uses.TryGetValue(material, out var use) ? use : Use.Nonstructural;

    private static bool IsLow(LaidWall laid, string name, int number) =>
        laid.Runs.Concat(laid.FootingRuns).FirstOrDefault(run => run.Name == name) is { } run
        && run.Courses.First(course => course.Number == number).Height < (Ripping.Width(run.Material) ?? run.Courses.Max(course => course.Height));
}
