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
        return new PartlyCut(planned with { Cuts = cuts, Remainders = work.Left, Untouched = work.Untouched, SawCuts = work.Saws + more }, work.Aside);
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
            var passes = leftSawn && rightSawn && free > kerf ? 2 : 1;
            Saws += passes;
            var rest = free - (passes * kerf);
            if (rest <= 0) return;
            var stretch = new Span(Length.FromUnits(leftSawn ? from + kerf : from), Length.FromUnits((leftSawn ? from + kerf : from) + rest));
            Left.Add(new PlannedRemainder(stretch.Start, stretch.Length, PutAside(stretch) || rest >= keep));
        }

        private bool PutAside(Span stretch)
        {
            int[] cuts = [.. later.Where(cut => stretch.Start <= planned.Cuts[cut].Start && planned.Cuts[cut].Start + planned.Cuts[cut].Length <= stretch.End).OrderBy(cut => planned.Cuts[cut].Start)];
            if (cuts.Length > 0) Aside.Add(new PutAside(stretch, cuts));
            return cuts.Length > 0;
        }
    }
}
