using CsCheck;
using Offcuts.Commands;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;
using Offcuts.Core.Yard;
using Offcuts.Screens;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Tests.Cases;

/// <summary>
/// Whatever code is drawn, every place where a person types it among other words reads it as that code: as it is printed, without its gap, with a dash,
/// in lower case and as a scanner types it. A failing example prints its seed; set the environment variable CsCheck_Seed to it to see it again.
/// </summary>
public sealed class AnyCodeTests
{
    // Letters that a typed line has a use for of its own, and digits: among all codes those that look like something else are rare.
    private static readonly string[] Favoured = [Code.Alphabet, "2345679X", "24X", "NEWX24", "2345679"];

    private static readonly Gen<Code> AnyCode = Gen.Select(Gen.Int[0, Favoured.Length - 1], Gen.Int[0, int.MaxValue - 1], (letters, seed) =>
    {
        var luck = new Random(seed);
        return Code.Draw(_ => Code.Alphabet.IndexOf(Favoured[letters][luck.Next(Favoured[letters].Length)]));
    });

    private static readonly Gen<(Code Code, string Typed)> Typed = Gen.Select(AnyCode, Gen.Int[0, 4], (code, form) => (code, form switch
    {
        0 => code.ToString(),
        1 => code.Text,
        2 => code.ToString().ToLowerInvariant(),
        3 => code.ToString().Replace(' ', '-'),
        _ => code.QrText,
    }));

    [Theory]
    [InlineData("")]
    [InlineData(" 2x4 8'")]
    [InlineData(": 2x10 2476")]
    [InlineData(" #4 20'")]
    [InlineData(" foam 2-1/2x12 36 line 2")]
    [InlineData(" plywood 3/4 96x48")]
    [InlineData(" panel tie x40")]
    [InlineData(" 12 bracket")]
    [InlineData(" crown moulding 8'")]
    public void Before_what_is_catalogued(string rest) =>
        Typed.Sample(one => LabelAtLineStart.Find(one.Typed + rest) is ({ } read, var end) && read.TryGet(out var code) && code == one.Code && (one.Typed + rest)[end..] == rest.TrimStart(':', ' '), iter: 3000);

    [Fact]
    public void Among_other_codes_and_numbers_of_a_command() =>
        Gen.Select(Typed, Typed, Typed).Sample((first, second, third) =>
        {
            string[] words = [.. first.Typed.Split(' '), .. second.Typed.Split(' '), .. third.Typed.Split(' ')];
            return Codes.Read(words).TryGet(out var read) && read.SequenceEqual([first.Code, second.Code, third.Code])
                && CodeWords.Joined(["4", .. second.Typed.Split(' '), "12"]).Count() == 3;
        }, iter: 5000);

    [Theory]
    [InlineData("", null)]
    [InlineData(" 36", 36)]
    [InlineData(" 3'", 36)]
    public void As_what_lies_in_a_course(string length, int? inches) =>
        Gen.Select(Typed.Where(one => !one.Typed.Contains(':')), Typed.Where(one => !one.Typed.Contains(':'))).Sample((first, second) =>
        {
            LaidThere[] said = [new(first.Code, inches is { } of ? Length.Inches(of) : null), new(default, null), new(second.Code, null)];
            var line = $"{first.Typed}{length}, new, {second.Typed}";
            return LaidLine.Read(line, LengthUnit.Inch).TryGet(out var laid) && laid.SequenceEqual(said)
                && StackedLine.Read($"2 leg A inside: {line}", "wall").TryGet(out var stacked) && stacked.Laid!.SequenceEqual(said);
        }, iter: 3000);

    [Fact]
    public void Before_the_cut_it_is_pinned_to_or_kept_from()
    {
        var cut = Offcuts.Core.Yard.CutLine.Read("blocking: 2x4 14-1/2 x2", "walls", LengthUnit.Inch).Value.Cut!;
        Stage[] stages = [new("walls", null, [cut], [])];
        Typed.Sample(one =>
            WishWords.Pin($"{one.Typed} for blocking", stages, Code.Parse).TryGet(out var pin) && pin.Piece == one.Code && pin.Cut == "blocking"
            && WishWords.Spare($"{one.Typed} for walls: blocking", stages, Code.Parse).TryGet(out var spare) && spare.Piece == one.Code
            && WishWords.Spare(one.Typed, stages, Code.Parse).TryGet(out var wholly) && wholly.Wholly && wholly.Piece == one.Code, iter: 3000);
    }

    [Theory]
    [InlineData("")]
    [InlineData("2x4 ")]
    [InlineData("2x4 8'+ @north rack ")]
    [InlineData("nails new 12 ")]
    public void Behind_what_the_yard_is_searched_for(string before) =>
        Typed.Sample(one => YardQuery.Read(before + one.Typed, new YardSnapshot { Materials = new HashSet<string> { "2x4" }, Blanks = new HashSet<Code> { one.Code } }).Code == one.Code, iter: 3000);

    [Theory]
    [InlineData(" 18 kg")]
    [InlineData(" 18kg")]
    [InlineData(" 0.1 lb")]
    public void Before_what_it_weighs(string weight) =>
        Typed.Sample(one => MakeLoads.ReadWeights([one.Typed + weight]).TryGet(out var said) && said.Keys.Single() == one.Code.Text, iter: 3000);

    [Fact]
    public void Before_a_count_and_among_what_is_back_or_settled()
    {
        using var folder = new TryYard();
        using var yard = YardFile.Open(folder.YardPath, folder.Clock);
        var tie = (Hardware)MaterialReader.ReadCounted("panel tie").Value;
        Gen.Select(Typed, Typed, Typed).Where((first, _, third) => first.Code != third.Code).Sample((first, second, bin) =>
            CountedWords.Read($"{bin.Typed} x40", [new Bin(bin.Code, tie, 50)], _ => 50).TryGet(out var counted) && counted.Single() == new Counted(bin.Code, 40)
            && BackWords.Back($"{first.Typed} {second.Typed}, {second.Typed}", yard).TryGet(out var back) && back.Pieces.SequenceEqual([first.Code, second.Code, second.Code])
            && BackWords.Settled($"{first.Typed}: nothing", yard).TryGet(out var lost) && lost.Pieces.Single() == first.Code && lost.Instead.Count == 0
            && BackWords.Settled($"{first.Typed}: {second.Typed}", yard).TryGet(out var other) && other.Pieces.Single() == first.Code && other.Instead.Single() == second.Typed, iter: 2000, threads: 1);
    }

    [Theory]
    [InlineData("{0}")]
    [InlineData("{0};2026-11-29 10:12")]
    [InlineData("2026-11-29\t\"{0}\"")]
    public void In_a_line_of_a_scanners_file(string line) =>
        Typed.Sample(one =>
        {
            var bytes = System.Text.Encoding.UTF8.GetBytes(line.Replace("{0}", one.Typed, StringComparison.Ordinal));
            return ScannedText.Read([], new MemoryStream(bytes)).TryGet(out var read) && read.Labels.Single().Code == one.Code;
        }, iter: 2000);
}
