using CsCheck;
using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;

namespace Offcuts.Core.Tests.Yard;

/// <summary>
/// Rules that hold for whatever is typed. A failing example prints its seed; set the environment variable CsCheck_Seed to it to see it again.
/// </summary>
public sealed class TypedLineLawTests
{
    private static readonly string[] Parts =
    [
        "2x4", "2x10", "#4", "foam 2-1/2x12", "plywood 3/4", "panel tie", "5/4x6", "8'", "11'4", "96", "92-5/8\"", "2400 mm", "x6", "× 3", "x", "0", "-5",
        "96x48", "fair", "poor", "nails", "nails in", "treated", "treated:ACQ", "untreated", "@rack", "@", "from:wall", "note: split", "note:", "bad 3..4",
        "bad", "..", "…", "to", "end", "trim 1", "trim", "line 2", "lead 2", "limit 3", "from", "rough", "bracing", "name:", "\"", "’", "½", ",", ";", ".", "and",
        "3.98", "$4", "1/0", "1/3", "999999999999999999999", "\u00a0", "\t", "🪵", "é", "\u001b", "\ud800", "'", "-", "/", "*",
    ];

    private static readonly string[] Gaps = [" ", " ", " ", ", ", "", "  "];

    private static readonly Gen<string> AnyLine = Gen.OneOf(
        Gen.String,
        Gen.Select(Gen.Int[0, Parts.Length - 1], Gen.Int[0, Gaps.Length - 1], (part, gap) => Parts[part] + Gaps[gap]).Array[0, 9].Select(string.Concat));

    // Mostly good lines: a beginning that stands by itself and a few good words, so that many are read.
    private static readonly Gen<string> LikelyLine = Gen.Select(
        Gen.Int[0, LikelyStarts.Length - 1],
        Gen.Int[0, LikelyParts.Length - 1].Array[0, 4],
        (start, parts) => LikelyStarts[start] + string.Concat(parts.Distinct().Select(part => " " + LikelyParts[part])));

    private static string[] LikelyStarts =>
    [
        "2x4 8'", "2x10 96, 84", "#4 20'", "foam 2x12 48", "plywood 3/4 96x48", "6 2x4 8'", "panel tie x40", "12 bracket", "crown moulding 8'", "sill: 2x6 22..24",
    ];

    private static string[] LikelyParts =>
    [
        "x6", "10'", "fair", "nails", "treated", "@rack 3", "from:wall", "bad 3..4", "bad 90..96", "bad 20..22, 21..30", "trim 1; 2", "trim 40; 50", "line 2",
        "rough", "untreated", "structural", "note: split",
    ];

    private static bool ColumnsFit(string text, IEnumerable<Fault> faults) =>
        faults.All(fault => fault.Column >= 1 && fault.Column <= text.Length + 1 && TextRules.FirstRefused(fault.Sentence) < 0);

    private static bool InOrder(IReadOnlyList<Fault> faults) => faults.Zip(faults.Skip(1)).All(pair => pair.First.Column <= pair.Second.Column);

    /// <summary>Any line is read or refused with faults whose columns lie in it, in order, and whose sentences are harmless.</summary>
    [Fact]
    public void Any_catalogue_line_is_read_or_refused_with_columns_in_it() =>
        Gen.Select(AnyLine, Gen.Enum<LengthUnit>()).Sample((text, unit) =>
        {
            var read = CatalogueLine.Read(text, unit);
            return read.Ok ? TextRules.FirstRefused(read.Value.ReadBack(unit)) < 0 : ColumnsFit(text, read.Faults) && InOrder(read.Faults);
        }, iter: 3000);

    /// <summary>The same for a cut.</summary>
    [Fact]
    public void Any_cut_line_is_read_or_refused_with_columns_in_it() =>
        Gen.Select(AnyLine, Gen.Enum<LengthUnit>()).Sample((text, unit) =>
        {
            var read = CutLine.Read(text, "Footing", unit);
            return read.Ok ? TextRules.FirstRefused(read.Value.ReadBack(unit)) < 0 : ColumnsFit(text, read.Faults) && InOrder(read.Faults);
        }, iter: 3000);

    /// <summary>The same for a price.</summary>
    [Fact]
    public void Any_price_line_is_read_or_refused_with_columns_in_it() =>
        Gen.Select(AnyLine, Gen.Enum<LengthUnit>()).Sample((text, unit) =>
        {
            var read = PriceLine.Read(text, unit);
            return read.Ok ? TextRules.FirstRefused(PriceLine.ReadBack(read.Value, unit, "$")) < 0 : ColumnsFit(text, read.Faults) && InOrder(read.Faults);
        }, iter: 3000);

    /// <summary>Whatever is read can be: every piece passes the yard's own rules, and there are 1 to 1000 of them.</summary>
    [Fact]
    public void Whatever_is_read_passes_the_rules_of_the_yard()
    {
        var read = 0;
        LikelyLine.Sample(text =>
        {
            if (!CatalogueLine.Read(text, LengthUnit.Inch).TryGet(out var batch)) return true;
            Interlocked.Increment(ref read);
            return batch.Bin is { } bin
                ? batch.Pieces.Count == 0 && bin.Quantity is >= 1 and <= 10_000 && PieceRules.Check(bin.ToBin(default)).Ok
                : batch.Pieces.Count is >= 1 and <= 1000 && batch.Pieces.All(piece => PieceRules.Check(piece.ToPiece(default)).Ok);
        }, iter: 2000);
        read.Should().BeGreaterThan(200, "else the rule was hardly tried");
    }

    /// <summary>Whatever is read is a need that can be.</summary>
    [Fact]
    public void Whatever_cut_is_read_can_be()
    {
        var read = 0;
        LikelyLine.Sample(text =>
        {
            if (!CutLine.Read(text, "Footing", LengthUnit.Inch).TryGet(out var draft)) return true;
            Interlocked.Increment(ref read);
            return draft.Cut is { } cut
                ? draft.Hardware is null && cut.Stage == "Footing" && cut.Name.Length is >= 1 and <= 60 && !cut.Shortest.IsZero && cut.Longest >= cut.Shortest
                    && cut.Count is >= 1 and <= 10_000 && cut.Material is not (Hardware or Sheet)
                : draft.Hardware is { Count: >= 1 and <= 10_000, Stage: "Footing", Name.Length: >= 1 and <= 60 };
        }, iter: 2000);
        read.Should().BeGreaterThan(200, "else the rule was hardly tried");
    }

    private static readonly Gen<Length> OnTape = Gen.Long[16, 40 * 12 * 16].Select(sixteenths => Length.FromUnits(sixteenths * 508));

    /// <summary>Words may stand in any order: every order of the same words makes the same batch.</summary>
    [Fact]
    public void Words_may_stand_in_any_order() =>
        Gen.Shuffle(new[] { "fair", "nails", "oiled", "stamped", "treated:ACQ", "@north rack", "from:stem wall", "bad 1..2, 3..4", "trim 1/2; 2" }).Sample(words =>
            CatalogueLine.Read("2x4 8', 10' x2 " + string.Join(" ", words) + " note: all", LengthUnit.Inch).Value.ReadBack(LengthUnit.Inch)
            == "3 boards 2x4: 8', 10', 10'; fair; nails in; oiled; stamped; treated with ACQ; bad 1\"..2\", 3\"..4\"; "
                + "trim 1/2\" off the marked end and 2\" off the far end; at north rack; from stage stem wall; note: all; 18.7 bd ft");

    /// <summary>Lengths as a tape shows them are read back as they are, with their counts, with commas or as exact text.</summary>
    [Fact]
    public void Lengths_come_back_as_typed() =>
        Gen.Select(OnTape, Gen.Int[1, 9]).Array[1, 8].Sample(sizes =>
        {
            var expected = sizes.SelectMany(size => Enumerable.Repeat(size.Item1, size.Item2)).ToArray();
            var tape = string.Join(", ", sizes.Select(size => $"{size.Item1.ToText(LengthUnit.Inch)} x{size.Item2}"));
            var exact = string.Join(" ", sizes.Select(size => $"{size.Item1} x{size.Item2}"));
            var bare = string.Join(", ", sizes.Select(size => $"{size.Item1.ToString().TrimEnd('"')} × {size.Item2}"));
            return new[] { tape, exact, bare }.All(lengths =>
                CatalogueLine.Read("2x4 " + lengths, LengthUnit.Inch).Value.Pieces.Select(piece => piece.Length).SequenceEqual(expected));
        });
}
