using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Commands;

/// <summary>Codes as they stand on a command line, where the two groups may have become two words.</summary>
internal static class Codes
{
    /// <summary>Every code named, or every fault. <c>K7F 3MXX</c> may be one word or two.</summary>
    public static Result<IReadOnlyList<Code>> Read(IReadOnlyList<string> words)
    {
        var codes = new List<Code>();
        var faults = new List<Fault>();
        for (var i = 0; i < words.Count; i++)
        {
            var read = Code.Parse(words[i]);
            if (!read.Ok && i + 1 < words.Count && words[i].Length < Code.BodyLength && Code.Parse(words[i] + words[i + 1]) is { Ok: true } joined)
            {
                codes.Add(joined.Value);
                i++;
            }
            else if (read.TryGet(out var code)) codes.Add(code);
            else faults.Add(new Fault($"{words[i]}: {read.Fault.Sentence}"));
        }

        return faults.Count > 0 ? Result<IReadOnlyList<Code>>.Fail(faults) : codes;
    }
}
