using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Codes as they stand on a command line, where the two groups may have become two words.</summary>
internal static class Codes
{
    /// <summary>The one code that these words are, or its fault. <c>K7F 3MXX</c> may be one word or two.</summary>
    public static Result<Code> One(IReadOnlyList<string> words) => Code.Parse(string.Concat(words));

    /// <summary>Every code named, or every fault. <c>K7F 3MXX</c> may be one word or two.</summary>
    public static Result<IReadOnlyList<Code>> Read(IReadOnlyList<string> words)
    {
        var codes = new List<Code>();
        var faults = new List<Fault>();
        foreach (var word in CodeWords.Joined(words))
        {
            var read = Code.Parse(word);
            if (read.TryGet(out var code)) codes.Add(code);
            else faults.Add(new Fault($"{word}: {read.Fault.Sentence}"));
        }

        return faults.Count > 0 ? Result<IReadOnlyList<Code>>.Fail(faults) : codes;
    }
}
