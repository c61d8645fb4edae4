using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Words of a command line among which the two groups of a code may have become two.</summary>
public static class CodeWords
{
    /// <summary>The words, with every two that are a code only together made one.</summary>
    public static IEnumerable<string> Joined(IReadOnlyList<string> words)
    {
        for (var i = 0; i < words.Count; i++)
        {
            var joins = i + 1 < words.Count && words[i].Length < Code.BodyLength && Code.Parse(words[i] + words[i + 1]).Ok;
            yield return joins ? words[i] + words[++i] : words[i];
        }
    }
}
