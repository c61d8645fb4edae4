using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>What is done to the chosen one, or to all that are marked together: pure. What may not be done is told by the use case; here only what makes no sense to ask.</summary>
internal static class YardActs
{
    /// <summary>Asks, or sends off what needs no answer.</summary>
    public static Turn<YardState> Begun(YardState state, Want want)
    {
        var meant = state.Meant;
        if (meant.Count == 0) return new(state, Notice: new Notice(state.Yard.Entries.Count == 0 ? "nothing is in the yard yet; F3 catalogues" : "nothing is chosen; type less, or Esc clears the line"));
        var codes = YardAsks.Codes(meant);
        switch (want)
        {
            case Want.QueueLabel:
                return Labels(state, meant);
            case Want.PutAt:
                return Opened(state, YardAsks.PutAt(meant), codes, state.LastPlace.Length > 0 ? state.LastPlace : meant[0].Place);
        }

        // Where they lie at several places, which of them is for who straps them to say.
        if (want == Want.Strap) return Opened(state, YardAsks.Strap(meant), codes, meant[0].Place is { Length: > 0 } place && meant.All(entry => entry.Place == place) ? $"@{place}" : "");
        var bins = meant.Count(entry => entry.Bin is not null);
        if (bins > 0)
            return new(state, Notice: new Notice(meant.Count == 1
                ? "this is a bin: it is counted, not marked or reserved; ^T puts it somewhere else"
                : $"{Words.Count(bins, "bin")} among what is marked: a bin is counted, so take its mark off (Tab); ^T puts all of it somewhere else", Tone.Fault));
        var gone = meant.Where(entry => !entry.OnHand).ToArray();
        return want switch
        {
            Want.SetState => Opened(state, YardAsks.State(meant), codes),
            Want.Judge => Opened(state, YardAsks.Judge(meant), codes),
            Want.Reserve when gone.Length > 0 => new(state, Notice: new Notice(meant.Count == 1
                ? $"{gone[0].Code} is {Words.Of(gone[0].Piece!.State)}: only what lies in the yard can be reserved"
                : $"{gone.Length} of what is marked {(gone.Length == 1 ? "is" : "are")} gone: only what lies in the yard can be reserved", Tone.Fault)),
            Want.Reserve when meant.All(entry => entry.Piece!.State == PieceState.Reserved) => new(state, new Errand.Free(codes)),
            Want.Reserve when state.Yard.Stages.Count == 0 => new(state, Notice: new Notice("no stage is entered yet to reserve it for", Tone.Fault)),
            Want.Reserve => Opened(state, YardAsks.Reserve(meant, state.Yard.Stages), codes),
            _ => new(state),
        };
    }

    /// <summary>Takes a written answer in.</summary>
    public static Turn<YardState> Written(YardState state)
    {
        if (state.Line.Ask is Ask.Write { Topic: Topic.Strap })
        {
            var (name, at) = Strapped(state.Line.Text);
            return new(state with { Line = state.Line.Close(), About = [] }, new Errand.Strap(state.About, name, at.Length > 0 ? at : null));
        }

        var place = PieceRules.PlaceIn(state.Line.Text);
        if (place.Length == 0) return new(state, Notice: new Notice("write the place, or Esc leaves it as it is", Tone.Fault));
        return new(state with { Line = state.Line.Close(), About = [] }, new Errand.PutAt(state.About, place));
    }

    /// <summary>What a bundle is called, and where it is put, which stands behind the sign; either may be left out.</summary>
    public static (string Name, string At) Strapped(string text) =>
        text.IndexOf('@') is >= 0 and var sign ? (text[..sign].Trim(), PieceRules.PlaceIn(text[sign..])) : (text.Trim(), "");

    /// <summary>What was refused stands to be put right.</summary>
    public static YardState Reopened(YardState state, Errand.PutAt put)
    {
        YardEntry[] meant = [.. put.Codes.Select(state.Yard.Find).OfType<YardEntry>()];
        return meant.Length == 0 ? state : state with { Line = state.Line.Reopen(YardAsks.PutAt(meant), put.Place), About = put.Codes };
    }

    /// <summary>The same of a bundle.</summary>
    public static YardState Reopened(YardState state, Errand.Strap strap)
    {
        YardEntry[] meant = [.. strap.Codes.Select(state.Yard.Find).OfType<YardEntry>()];
        return meant.Length < Bundle.Fewest ? state : state with { Line = state.Line.Reopen(YardAsks.Strap(meant), $"{strap.Name} @{strap.Place}".Trim()), About = strap.Codes };
    }

    private static Turn<YardState> Labels(YardState state, IReadOnlyList<YardEntry> meant)
    {
        Code[] more = [.. meant.Select(entry => entry.Code).Where(code => !state.Yard.Queue.Contains(code))];
        if (more.Length > 0) return new(state, new Errand.QueueLabels(more));
        return new(state, Notice: new Notice(meant.Count == 1 ? $"the label of {meant[0].Code} waits to be printed already" : $"all {meant.Count} labels wait to be printed already"));
    }

    private static Turn<YardState> Opened(YardState state, Ask ask, IReadOnlyList<Code> about, string given = "") =>
        new(state with { Line = state.Line.Open(ask, given), About = about, Overtaken = "" });
}
