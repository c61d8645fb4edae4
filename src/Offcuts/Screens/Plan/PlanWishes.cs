using Offcuts.Core.Faults;
using Offcuts.Core.Plans;
using Offcuts.Core.Yard;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>Pieces pinned to cuts, left alone and let go again, before the next match: pure.</summary>
internal static class PlanWishes
{
    private const string All = "all";

    /// <summary>What holds of pieces at the next match, as far as this screen knows: the shown plan's wishes and what was said since.</summary>
    public static Wishes Holding(PlanState state) =>
        KeptWishes.Joined((state.Plan?.Wishes ?? Wishes.None).Without(state.Wish.Released), state.Wish.Wishes);

    /// <summary>The question that begins it.</summary>
    public static Turn<PlanState> Asked(PlanState state)
    {
        if (state.Yard.Stages.Count == 0) return new(state, Notice: new Notice("no stage is entered yet: there is no cut to pin a piece to", Tone.Fault));
        var piece = state.Piece?.Source is { } source ? source.Code.ToString() : "A piece";
        List<Choice> choices = [new('p', "pin to a cut", Want: Want.Pin), new('s', "leave alone", Want: Want.Spare)];
        if (!Holding(state).Empty) choices.Add(new('r', "let go", Want: Want.Release));
        return Opened(state, new Ask.Choose($"{piece}: what of it, when it is matched again?", choices));
    }

    /// <summary>The line on which the answer is written, begun where a piece is chosen.</summary>
    public static Turn<PlanState> Begun(PlanState state, Want want)
    {
        var code = state.Piece?.Source?.Code.ToString() ?? "";
        switch (want)
        {
            case Want.Pin:
                var cut = state.Piece is { Source: not null, Cuts: [var first, ..] } ? first.Cut : "";
                return Opened(state, new Ask.Write("Which piece is for which cut? Its code, \"for\", the cut; where two stages have one of that name, the stage before it: walls: blocking", Topic.Pin, "pin"), code.Length > 0 ? $"{code} for {cut}" : "");
            case Want.Spare:
                return Opened(state, new Ask.Write("Which piece is to be left alone? Its code; with \"for\" and a cut behind it, only for that cut", Topic.Spare, "spare"), code);
            default:
                var holding = Holding(state);
                var one = holding.Pins.Select(pin => pin.Piece).Concat(holding.Spares.Select(spare => spare.Piece)).Distinct().ToArray();
                var given = one.Length == 1 ? one[0].ToString() : one.Any(known => known.ToString() == code) ? code : All;
                return Opened(state, new Ask.Write($"Which piece is let go? Its code, or all. Now {holding.ToText(known => known.ToString())}", Topic.Release, "let go"), given);
        }
    }

    /// <summary>Takes the written answer in.</summary>
    public static Turn<PlanState> Answered(PlanState state, Topic topic, string text)
    {
        var stages = state.Yard.Stages;
        switch (topic)
        {
            case Topic.Pin:
                return Said(state, WishWords.Pin(text, stages, Code.Parse), pin => new Wishes([pin], []), pin => $"{pin.Piece} is pinned to {pin.Cut}");
            case Topic.Spare:
                return Said(state, WishWords.Spare(text, stages, Code.Parse), spare => new Wishes([], [spare]), spare => $"{spare.Piece} is left alone{(spare.Wholly ? "" : $" for {spare.Cut}")}");
            default:
                var holding = Holding(state);
                var all = holding.Pins.Select(pin => pin.Piece).Concat(holding.Spares.Select(spare => spare.Piece)).Distinct().ToArray();
                if (text.Equals(All, StringComparison.OrdinalIgnoreCase)) return Released(state, all, "every piece is let go");
                var read = Code.Parse(text);
                if (!read.TryGet(out var code)) return new(state, Notice: Notice.Of(read.Faults));
                return all.Contains(code)
                    ? Released(state, [code], $"{code} is let go")
                    : new(state, Notice: new Notice($"nothing is said of {code}", Tone.Fault));
        }
    }

    /// <summary>What was said, in a line above the plan; nothing where nothing holds.</summary>
    public static string Told(PlanState state)
    {
        var holding = Holding(state);
        var pending = state.Found is null
            ? !state.Wish.Wishes.Empty || state.Wish.Released.Count > 0
            : !ReferenceEquals(state.FoundWith?.Wishes, state.Wish.Wishes) || !ReferenceEquals(state.FoundWith.Released, state.Wish.Released);
        if (holding.Empty) return pending ? "nothing is pinned or left alone any more: ^R matches again" : "";
        return holding.ToText(code => code.ToString()) + (pending ? ": ^R matches again" : "");
    }

    private static Turn<PlanState> Said<T>(PlanState state, Result<T> read, Func<T, Wishes> wishes, Func<T, string> told)
    {
        if (!read.TryGet(out var value)) return new(state, Notice: Notice.Of(read.Faults));
        var said = wishes(value);
        var piece = said.Pins.Select(pin => pin.Piece).Concat(said.Spares.Select(spare => spare.Piece)).Single();
        if (state.Yard.Find(piece)?.Piece is not { OnHand: true }) return new(state, Notice: new Notice($"{piece} is no piece in the yard", Tone.Fault));
        return new(
            state with { Line = state.Line.Close(), Wish = state.Wish with { Wishes = KeptWishes.Joined(state.Wish.Wishes, said) } },
            Notice: new Notice($"{told(value)}; ^R matches again"));
    }

    private static Turn<PlanState> Released(PlanState state, IReadOnlyList<Code> codes, string told) => new(
        state with
        {
            Line = state.Line.Close(),
            Wish = state.Wish with { Wishes = state.Wish.Wishes.Without(codes), Released = [.. state.Wish.Released.Union(codes)] },
        },
        Notice: new Notice($"{told}; ^R matches again"));

    private static Turn<PlanState> Opened(PlanState state, Ask ask, string given = "") => new(state with { Line = state.Line.Open(ask, given) });
}
