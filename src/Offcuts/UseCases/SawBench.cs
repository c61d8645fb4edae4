using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Plans;
using Offcuts.Core.Walls;
using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>
/// The pieces of a kept filling while it is filled again: what is cut stays as it is, what waits keeps the cuts of begun courses alone, and what is
/// left of such a piece beside them can be laid like a piece of the yard. New pieces stand behind the others, so that all keep their numbers.
/// </summary>
internal sealed class SawBench
{
    private readonly KeptPlan _steps;
    private readonly YardSettings _settings;
    private readonly Func<string, int, bool> _low;
    private readonly List<Bar> _bars = [];

    /// <summary>Puts the pieces of a begun filling there.</summary>
    /// <param name="begun">The filling.</param>
    /// <param name="settings">Kerf and keep length.</param>
    /// <param name="low">True for a run's course that is cut to height: one more saw cut a piece.</param>
    public SawBench(BegunFilling begun, YardSettings settings, Func<string, int, bool> low)
    {
        (_steps, _settings, _low) = (begun.Steps, settings, low);
        foreach (var (piece, step) in begun.Kept.Plan.Pieces.Zip(begun.Steps.Steps)) _bars.Add(new Bar(piece, step.State == StepState.Waiting));
        foreach (var course in begun.Courses)
        {
            foreach (var one in course.Waits) _bars[one.Piece].Cuts.Add((_bars[one.Piece].Piece.Cuts[one.Cut], Of(course.Laid, one)));
        }
    }

    /// <summary>A place in the wall.</summary>
    public sealed record Place(string Run, int Course, Length From, Length To, bool Turned);

    private static Place Of(LaidCourse course, LaidPiece one) => new(course.Run, course.Course, one.From, one.To, one.Turned);

    private sealed record Bar(PlannedPiece Piece, bool Open)
    {
        public List<(PlannedCut Cut, Place Place)> Cuts { get; } = [];

        public IReadOnlyList<(PlannedCut Cut, Place Place)> InOrder => [.. Cuts.OrderBy(one => one.Cut.Start)];
    }

    /// <summary>What is left of waiting pieces beside the cuts they have, worth a label or more, as if it lay in the yard, with where on which piece it lies.</summary>
    public IReadOnlyDictionary<Piece, (int Bar, Length Start)> Rests()
    {
        var rests = new Dictionary<Piece, (int Bar, Length Start)>(ReferenceEqualityComparer.Instance);
        for (var b = 0; b < _bars.Count; b++)
        {
            if (!_bars[b].Open || _bars[b].Cuts.Count == 0) continue;
            var sawn = Sawn(_bars[b]);
            foreach (var (start, piece) in CarryOut.LeftOf(sawn, _settings)) rests.Add(piece, (b, start));
        }

        return rests;
    }

    /// <summary>How many new pieces of a price are on it.</summary>
    public int Bought(StorePrice price) => _bars.Count(bar => bar.Open && bar.Cuts.Count > 0 && bar.Piece.Bought == price);

    /// <summary>Cuts something of a piece that is new to it.</summary>
    /// <param name="piece">The piece; its own cuts are passed over.</param>
    /// <param name="cuts">What is cut of it, and what that covers.</param>
    public void Add(PlannedPiece piece, IEnumerable<(PlannedCut Cut, Place Place)> cuts)
    {
        var bar = new Bar(piece, Open: true);
        bar.Cuts.AddRange(cuts);
        _bars.Add(bar);
    }

    /// <summary>Cuts something more of what is left of a piece.</summary>
    public void Add((int Bar, Length Start) rest, IEnumerable<(PlannedCut Cut, Place Place)> cuts) =>
        _bars[rest.Bar].Cuts.AddRange(cuts.Select(one => (one.Cut with { Start = rest.Start + one.Cut.Start }, one.Place)));

    /// <summary>Takes over what was laid anew, in a filling whose pieces are those of the yard, new ones, and <paramref name="rests"/>.</summary>
    public void Take(RunPlan laid, IReadOnlyDictionary<Piece, (int Bar, Length Start)> rests)
    {
        var places = laid.Courses.SelectMany(course => course.Pieces.Select(one => (one.Piece, one.Cut, Place: Of(course, one)))).ToDictionary(one => (one.Piece, one.Cut), one => one.Place);
        for (var p = 0; p < laid.Pieces.Count; p++)
        {
            var cuts = laid.Pieces[p].Cuts.Select((cut, c) => (cut, places[(p, c)])).ToArray();
            if (laid.Pieces[p].Source is { } source && rests.TryGetValue(source, out var rest)) Add(rest, cuts);
            else Add(laid.Pieces[p], cuts);
        }
    }

    /// <summary>All pieces by their numbers; which of them are given up, since nothing of them is needed any more.</summary>
    public (IReadOnlyList<PlannedPiece> Pieces, IReadOnlyList<int> GivenUp) Pieces() =>
        ([.. _bars.Select(bar => bar.Open && bar.Cuts.Count > 0 ? Sawn(bar) : bar.Piece)], [.. Enumerable.Range(0, _bars.Count).Where(b => _bars[b].Open && _bars[b].Cuts.Count == 0)]);

    /// <summary>What lies in a course of what waits to be cut, from left to right.</summary>
    public IEnumerable<LaidPiece> LaidIn(string run, int course) =>
        _bars.SelectMany((bar, b) => bar.InOrder.Select((one, c) => (one.Place, Laid: new LaidPiece(one.Place.From, one.Place.To, b, c, one.Place.Turned))))
            .Where(one => (one.Place.Run, one.Place.Course) == (run, course)).Select(one => one.Laid).OrderBy(one => one.From);

    private PlannedPiece Sawn(Bar bar)
    {
        var cuts = bar.InOrder;
        int[] all = [.. Enumerable.Range(0, cuts.Count)];
        return PartlyCut.Of(bar.Piece with { Cuts = [.. cuts.Select(one => one.Cut)] }, all, [], _settings.Kerf(bar.Piece.Material), _settings.Keep(bar.Piece.Material), cuts.Count(one => _low(one.Place.Run, one.Place.Course))).Made;
    }
}
