using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Plans;

/// <summary>A stretch of a piece that is put aside, for cuts that are made later.</summary>
/// <param name="Stretch">Where it lies on the piece, from the marked end.</param>
/// <param name="Cuts">Which of the piece's planned cuts lie on it, from 0, from the marked end on.</param>
public sealed record PutAside(Span Stretch, IReadOnlyList<int> Cuts);

/// <summary>A planned piece of which only some cuts are made now.</summary>
/// <param name="Made">The piece with those cuts alone, and what is left of it then.</param>
/// <param name="Aside">What is left of it that later cuts are made from: each is one of the remainders or untouched spans, and is kept however short.</param>
public sealed record PartlyCut(PlannedPiece Made, IReadOnlyList<PutAside> Aside)
{
    /// <summary>Makes these cuts of a piece where they are planned. What lies between two of them is one stretch, less a kerf at each end where the saw goes through.</summary>
    /// <param name="planned">The piece.</param>
    /// <param name="made">Which of its cuts are made now, from 0; one at least.</param>
    /// <param name="later">Which of the others are still to be made of what is left.</param>
    /// <param name="kerf">What a saw cut destroys.</param>
    /// <param name="keep">The keep length of its material.</param>
    /// <param name="more">Saw cuts beside those across, such as to height.</param>
    public static PartlyCut Of(PlannedPiece planned, IReadOnlyCollection<int> made, IReadOnlyCollection<int> later, Length kerf, Length keep, int more = 0)
    {
        var work = new Work(planned, later, kerf.Units, keep.Units);
        var cuts = made.Order().Select(cut => planned.Cuts[cut]).ToArray();
        foreach (var span in planned.Source?.Spans() ?? [new Span(Length.Zero, planned.Length)])
            work.Cut(span, [.. cuts.Where(cut => span.Start <= cut.Start && cut.Start + cut.Length <= span.End).OrderBy(cut => cut.Start)]);
        // A cut that lay on nothing would be lost in silence, and what it was to cover with it.
        if (later.Except(work.Aside.SelectMany(aside => aside.Cuts)).ToArray() is { Length: > 0 } lost)
            throw new InvalidOperationException($"Cut {lost[0]} of a piece of {planned.Length} is to be made later, and lies on nothing that is left of it.");
        var strips = planned.StripsLeft.Where(strip => cuts.Any(cut => cut.Start <= strip.Start && strip.Start + strip.Length <= cut.Start + cut.Length));
        return new PartlyCut(planned with { Cuts = cuts, StripsLeft = [.. strips], Remainders = work.Left, Untouched = work.Untouched, SawCuts = work.Saws + more }, work.Aside);
    }

    private sealed class Work(PlannedPiece planned, IReadOnlyCollection<int> later, long kerf, long keep)
    {
        public List<PlannedRemainder> Left { get; } = [];

        public List<Span> Untouched { get; } = [];

        public List<PutAside> Aside { get; } = [];

        public int Saws { get; private set; }

        public void Cut(Span span, PlannedCut[] cuts)
        {
            if (cuts.Length == 0)
            {
                // An untouched span comes back by itself from the keep length up; a shorter one that is needed is kept like a remainder.
                if (!PutAside(span) || span.Length.Units >= keep) Untouched.Add(span);
                else Left.Add(new PlannedRemainder(span.Start, span.Length, Kept: true));
                return;
            }

            Border(span.Start.Units, cuts[0].Start.Units, leftSawn: false, rightSawn: true);
            for (var c = 1; c < cuts.Length; c++) Border((cuts[c - 1].Start + cuts[c - 1].Length).Units, cuts[c].Start.Units, leftSawn: true, rightSawn: true);
            Border((cuts[^1].Start + cuts[^1].Length).Units, span.End.Units, leftSawn: true, rightSawn: false);
        }

        // What is free between two cuts, or between a cut and an end of the span. One pass of the saw does for two cuts that lie a kerf apart.
        private void Border(long from, long to, bool leftSawn, bool rightSawn)
        {
            var free = to - from;
            if (free <= 0) return;
            var (left, right) = (leftSawn ? kerf : 0, rightSawn ? kerf : 0);
            var passes = leftSawn && rightSawn && free > kerf ? 2 : 1;
            if (Needed(new Span(Length.FromUnits(from), Length.FromUnits(to))) is { Length: > 0 } needed)
            {
                // Where these lie was found with the kerf of that day. Whatever it is today, no saw cut is led into one of them.
                left = Math.Min(left, planned.Cuts[needed[0]].Start.Units - from);
                right = Math.Min(right, to - (planned.Cuts[needed[^1]].Start + planned.Cuts[needed[^1]].Length).Units);
                passes = leftSawn && rightSawn ? 2 : 1;
            }

            Saws += passes;
            if (free - left - right <= 0) return;
            var stretch = new Span(Length.FromUnits(from + left), Length.FromUnits(to - right));
            Left.Add(new PlannedRemainder(stretch.Start, stretch.Length, PutAside(stretch) || stretch.Length.Units >= keep));
        }

        private bool PutAside(Span stretch)
        {
            var cuts = Needed(stretch);
            if (cuts.Length > 0) Aside.Add(new PutAside(stretch, cuts));
            return cuts.Length > 0;
        }

        // Cuts that are made later and lie there, from the marked end on.
        private int[] Needed(Span stretch) =>
            [.. later.Where(cut => stretch.Start <= planned.Cuts[cut].Start && planned.Cuts[cut].Start + planned.Cuts[cut].Length <= stretch.End).OrderBy(cut => planned.Cuts[cut].Start)];
    }
}
