using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;

namespace Offcuts.Screens;

/// <summary>What the prices' place does: pure.</summary>
internal static class PricesModel
{
    public static PricesState Start(YardSnapshot yard) => new() { Yard = yard };

    /// <summary>The next state, and what is asked of the shell.</summary>
    public static Turn<PricesState> Apply(PricesState state, Intent intent)
    {
        if (state.Line.EditedToSave(intent) is { } edit)
        {
            var tried = state.Tried && edit.Line.Text.Length > 0 && intent is not Intent.Recall;
            return new(Read(state with { Line = edit.Line, Tried = tried }), Notice: edit.Notice);
        }

        switch (intent)
        {
            case Intent.Move(var by):
                return new(state with { Chosen = Within(state.Yard, state.Chosen + by) });
            case Intent.Edge(var last):
                return new(state with { Chosen = last ? Within(state.Yard, int.MaxValue) : 0 });
            case Intent.Enter when state.Line.Ask is null:
                return Entered(Read(state));
            case Intent.Answer(var letter) when state.Line.Ask is Ask.Choose ask && ask.Of(letter) is { } choice:
                return new(Read(state with { Line = state.Line.Chose(choice) }), choice.Errand);
            case Intent.Do(var want) when state.Line.Ask is null:
                return Wanted(state, want);
            default:
                return new(state);
        }
    }

    /// <summary>Takes in what the shell tells.</summary>
    public static Turn<PricesState> Hear(PricesState state, News news)
    {
        switch (news)
        {
            case News.Fresh(var yard) fresh:
                return new(Read(Taken(state, yard, fresh.Own)));
            case News.Done(Errand.SetPrice set, _) when state.Line.Sent.Length > 0:
                var known = PriceLine.Read(set.Line, state.Yard.Unit).TryGet(out var price) ? IndexOf(state.Yard, price) : -1;
                return EnteredLines.Next(state with { Line = state.Line.Arrived(), Tried = false, Chosen = known >= 0 ? known : state.Chosen }, Read, Entered);
            case News.Refused(Errand.SetPrice, var faults) when state.Line.Sent.Length > 0:
                return new(state with { Line = state.Line.Returned(), Reading = Result<StorePrice>.Fail(faults), Tried = true });
            default:
                return new(state);
        }
    }

    // The chosen price stays chosen wherever it now stands.
    private static PricesState Taken(PricesState state, YardSnapshot yard, bool own)
    {
        var at = state.Price is { } chosen ? IndexOf(yard, chosen) : -1;
        var overtaken = own ? state.Overtaken : Overtaken(state, yard);
        return state with
        {
            Yard = yard,
            Chosen = at >= 0 ? at : Within(yard, state.Chosen),
            Overtaken = overtaken,
            OvertakenAt = overtaken != state.Overtaken && state.Reading is { } reading && reading.TryGet(out var typed) ? typed : state.OvertakenAt,
        };
    }

    // What stood under the line when it was typed stands otherwise now, and not by this line.
    private static string Overtaken(PricesState state, YardSnapshot yard)
    {
        if (state.Line.Sent.Length > 0 || state.Reading is not { } reading || !reading.TryGet(out var typed)) return state.Overtaken;
        var now = yard.Prices.FirstOrDefault(one => PricesState.Sells(one, typed));
        if (Equals(now, state.Replaced)) return state.Overtaken;
        return now is null
            ? $"another program dropped the price of {typed.NameIn(yard.Unit)} meanwhile; Enter once more sets yours"
            : $"another program set {typed.NameIn(yard.Unit)} to {now.Price.ToText(yard.Settings.CurrencySign)} meanwhile; Enter once more puts yours in its place";
    }

    // While a price is typed, the one that it would replace is chosen, or the first of its material.
    private static PricesState Read(PricesState state)
    {
        if (state.Line.Ask is not null) return state;
        if (state.Line.Text.Trim().Length == 0) return state with { Reading = null, NewName = null, Odd = null, Overtaken = "" };
        var reading = PriceLine.Read(state.Line.Text, state.Yard.Unit, state.Yard.Today);
        if (!reading.TryGet(out var price)) return state with { Reading = reading, NewName = null, Odd = null };
        if (state.OvertakenAt is { } other && !PricesState.Sells(other, price)) state = state with { Overtaken = "", OvertakenAt = null };
        var at = IndexOf(state.Yard, price);
        if (at < 0) at = state.Yard.Prices.ToList().FindIndex(one => one.Material.Equals(price.Material));
        return state with { Reading = reading, NewName = state.Yard.Names.NewAmong([price.Material]).FirstOrDefault(), Odd = OddSize.Of(price, state.Yard.Unit), Chosen = at >= 0 ? at : state.Chosen };
    }

    private static Turn<PricesState> Entered(PricesState state)
    {
        if (state.Line.Sent.Length > 0) return new(Read(state with { Line = state.Line.EnterNext() }), Notice: state.Line.Changed);
        if (state.Overtaken.Length > 0 && state.Reading is not null) return new(state with { Overtaken = "" }, Notice: new Notice(state.Overtaken, Tone.Caution));
        if (state.Reading is not { } reading)
            return state.Price is null ? new(state) : new(state, Notice: new Notice("type a price, or ^E puts the chosen one on the line to be changed"));
        var save = new Errand.SetPrice(state.Line.Text);
        if (state.NewName is { } name)
            return new(state with { Line = state.Line.Open(NewNameAsk.Of(name, state.Line.Text, save with { NewNames = true, OddSizes = true })) });
        if (state.Odd is { } odd) return new(state with { Line = state.Line.Open(NewNameAsk.Of(odd, save with { OddSizes = true })) });
        return reading.Ok
            ? new(state with { Line = state.Line.Send() }, save, Notice.None)
            : new(state with { Tried = true }, Notice: new Notice("not set: put right what is marked, then Enter again", Tone.Fault));
    }

    private static Turn<PricesState> Wanted(PricesState state, Want want)
    {
        if (state.Price is not { } price) return new(state, Notice: new Notice($"no price is entered yet; type one, like {LineExamples.Price(state.Yard.Unit)}"));
        var line = PriceLine.Write(price, state.Yard.Unit);
        return want switch
        {
            Want.ChangeLine when state.Line.Text.Trim().Length > 0 && state.Line.Text != line =>
                new(state, Notice: new Notice("a line is being typed; Enter sets it, Esc twice clears it", Tone.Fault)),
            Want.ChangeLine => new(Read(state with { Line = state.Line.Offered(line), Tried = false })),
            Want.StillSo => new(state, new Errand.PriceStillSo(price)),
            Want.TakeOff => new(state with
            {
                Line = state.Line.Open(new Ask.Choose(
                    $"Drop the price of {price.NameIn(state.Yard.Unit)}, {price.Price.ToText(state.Yard.Settings.CurrencySign)}? Nothing of it is bought then any more",
                    [new Choice('y', "drop it", new Errand.RemovePrice(price))])),
            }),
            _ => new(state),
        };
    }

    private static int IndexOf(YardSnapshot yard, StorePrice price) => yard.Prices.ToList().FindIndex(one => PricesState.Sells(one, price));

    private static int Within(YardSnapshot yard, int at) => Math.Clamp(at, 0, Math.Max(0, yard.Prices.Count - 1));
}
