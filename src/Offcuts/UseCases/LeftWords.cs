using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Measures;

namespace Offcuts.UseCases;

/// <summary>
/// What is left of a piece that was not cut as planned, as a person types it: a length of its own width, <c>40</c>, or a narrower
/// board or strip with what it is before its length, <c>2x4 48</c>.
/// </summary>
public static class LeftWords
{
    /// <summary>Lengths as wide as the piece, and narrower boards; or every fault.</summary>
    public static Result<(IReadOnlyList<Length> Lengths, IReadOnlyList<(Material Material, Length Length)> Strips)> Read(IEnumerable<string> texts, LengthUnit unit)
    {
        var faults = new List<Fault>();
        var lengths = new List<Length>();
        var strips = new List<(Material, Length)>();
        foreach (var text in texts.Select(text => text.Trim()))
        {
            var named = MaterialReader.ReadStart(text) is { Material.Ok: true } start ? start : default((Result<Material> Material, int End)?);
            var read = Length.Parse(named is { } behind ? text[behind.End..] : text, unit);
            if (!read.TryGet(out var length)) faults.AddRange(read.Faults.Select(fault => new Fault($"{TextRules.Harmless(text)}: {fault.Sentence}")));
            else if (named is { } strip) strips.Add((strip.Material.Value, length));
            else lengths.Add(length);
        }

        return faults.Count > 0
            ? Result<(IReadOnlyList<Length>, IReadOnlyList<(Material, Length)>)>.Fail(faults)
            : Result<(IReadOnlyList<Length>, IReadOnlyList<(Material, Length)>)>.Of((lengths, strips));
    }
}
