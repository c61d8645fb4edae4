using Offcuts.Core.Yard;

namespace Offcuts.UseCases;

/// <summary>Words of a command line among which the two groups of a code may have become two.</summary>
public static class CodeWords
{
    // Characters of the first group.
    private const int Group = 3;

    /// <summary>
    /// The words of a whole command line, with what stands behind one of these options made one where it takes two words to be a code. Further codes of two
    /// words behind the first get the option before them again, for it takes one at a time.
    /// </summary>
    public static IReadOnlyList<string> JoinedBehind(IReadOnlyList<string> options, IReadOnlyList<string> words)
    {
        var joined = new List<string>();
        for (var i = 0; i < words.Count; i++)
        {
            joined.Add(words[i]);
            if (!options.Contains(words[i]) || i + 1 == words.Count) continue;
            var option = words[i];
            var first = Together(words, i + 1);
            if (first is null && !Code.Parse(words[i + 1]).Ok) continue;
            joined.Add(first ?? words[i + 1]);
            i += first is null ? 1 : 2;
            // A stage may stand here too, so only two words as long as the groups on a label are taken for a code.
            while (i + 1 < words.Count && words[i + 1].Length == Group && Together(words, i + 1) is { } further)
            {
                joined.AddRange([option, further]);
                i += 2;
            }
        }

        return joined;
    }

    /// <summary>Two words that are a code only together, made one; none where those from here on are not.</summary>
    public static string? Together(IReadOnlyList<string> words, int from) =>
        from + 1 < words.Count && words[from].Length < Code.BodyLength && Code.Parse(words[from] + words[from + 1]).Ok ? words[from] + words[from + 1] : null;

    /// <summary>The words, with every two that are a code only together made one.</summary>
    public static IEnumerable<string> Joined(IReadOnlyList<string> words)
    {
        for (var i = 0; i < words.Count; i++)
        {
            var pair = Together(words, i);
            yield return pair ?? words[i];
            if (pair is not null) i++;
        }
    }
}
