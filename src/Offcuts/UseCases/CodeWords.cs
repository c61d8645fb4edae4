using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Words of a command line among which the two groups of a code may have become two.</summary>
public static class CodeWords
{
    /// <summary>The words of a whole command line, with what stands behind one of these options made one where it takes two words to be a code.</summary>
    public static IReadOnlyList<string> JoinedBehind(IReadOnlyList<string> options, IReadOnlyList<string> words)
    {
        var joined = new List<string>();
        for (var i = 0; i < words.Count; i++)
        {
            var code = i > 0 && options.Contains(words[i - 1]) ? Joined([.. words.Skip(i).Take(2)]).First() : words[i];
            if (code != words[i]) i++;
            joined.Add(code);
        }

        return joined;
    }

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
