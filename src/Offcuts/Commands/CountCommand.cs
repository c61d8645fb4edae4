using System.CommandLine;
using System.Text.Json.Nodes;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Is it still there? The command <c>count</c>.</summary>
internal static class CountCommand
{
    /// <summary>The command.</summary>
    public static Command Of(CommandContext context)
    {
        var paths = new Argument<string[]>("pictures") { Description = "Pictures (JPEG, PNG), folders of them, or a scanner's text file: a label a line, @PLACE on a line before those that were scanned there", Arity = ArgumentArity.ZeroOrMore };
        var at = new Option<string>("--at") { Description = "Where all this was seen; else a place's label in the same picture says it, or the folder's name", HelpName = "PLACE" };
        var whole = new Option<bool>("--whole") { Description = "The whole yard was counted: what was not seen anywhere is missing" };
        var partly = new Option<bool>("--partly") { Description = "No place was counted whole: nothing is said to be missing" };
        var back = new Option<bool>("--take-back") { Description = "With --accept: what should be gone but was seen is in the yard again" };
        var accept = new Option<bool>("--accept") { Description = "Make the yard what the count says: one change, one undo" };
        var json = new Option<bool>("--json") { Description = "As JSON" };
        var command = context.Command(
            "count",
            "Is it still there? Read the labels in pictures or a scanner's file, and hold them against the yard; alone, list the places not counted for longest",
            [
                "offcuts count",
                "offcuts count photos",
                "offcuts count photos/rack/*.jpg --at \"north rack\"",
                "offcuts count scanned.txt --accept",
            ],
            paths, at, whole, partly, back, accept, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var named = parse.GetValue(paths) ?? [];
            if (named.Length == 0) return parse.GetValue(accept) ? context.Refuse([CountFaults.NothingToAccept()]) : Due(context, yard, parse.GetValue(json));
            var wish = new CountWish(parse.GetValue(at) ?? "", parse.GetValue(whole), parse.GetValue(partly), parse.GetValue(back));
            return Run(context, yard, named, wish, parse.GetValue(accept), parse.GetValue(json));
        }));
        return command;
    }

    private static int Due(CommandContext context, YardFile yard, bool json)
    {
        var places = SeePlaces.Of(yard);
        var today = context.World.Today;
        if (json) context.World.Out.WriteLine(PlaceCommands.Json(places));
        else if (places.Count == 0) context.Say("Nothing has a place yet; say where things lie with @PLACE when they are catalogued");
        else
        {
            PlaceCommands.Table(context, places, today);
            context.Say("The place not counted for longest comes first. Walk there, take a picture of every label, and: offcuts count PICTURES --at PLACE");
        }

        return Exit.Done;
    }

    private static int Run(CommandContext context, YardFile yard, string[] named, CountWish wish, bool accept, bool json)
    {
        using var cancel = new CancellationTokenSource();
        using var signals = new StopSignals(cancel.Cancel);
        var files = CountFiles.Named(named, cancel.Token);
        if (!files.TryGet(out var list)) return context.Refuse(files.Faults);
        var bar = new ProgressBar(context.World);
        var read = CountFiles.Read(list, bar.Show, cancel.Token);
        bar.Clear();
        var counting = new CountYard(yard, context.World.Today);
        var reckoned = counting.Reckon(read, wish);
        if (!reckoned.TryGet(out var count)) return context.Refuse(reckoned.Faults);
        if (json) context.World.Out.WriteLine(Json(count));
        else foreach (var line in CountText.Lines(count, yard.Settings().Unit)) context.Say(line);
        if (read.Count > 0 && read.All(file => file.Trouble is not null)) return Exit.Refused;
        if (!accept && !json)
        {
            var changes = CountText.Changes(count);
            if (changes.Length == 0 || count.Seen + count.BinsSeen == 0) return Exit.Done;
            accept = context.World.InIsTerminal && context.Agreed($"Nothing is changed yet. Accept ({changes})?", enterMeansYes: false);
            if (!accept) context.Say(context.World.InIsTerminal ? "Nothing changed." : $"Nothing is changed yet; with --accept: {changes}");
        }

        if (!accept) return Exit.Done;
        var accepted = counting.Accept(count);
        if (!accepted.Ok) return context.Refuse(accepted.Faults);
        return json ? Exit.Done : context.Tell(accepted);
    }

    // { "schema": 1, "places": [..], "as_said": n, "elsewhere": [..], "missing": [..], "found": [..], "should_be_gone": [..], .. }
    private static string Json(YardCount count) => YardJson.Write(new JsonObject
    {
        ["schema"] = 1,
        ["places"] = new JsonArray([.. count.Places.Select(place => (JsonNode)new JsonObject { ["name"] = place.Name, ["expected"] = place.Expected, ["seen"] = place.Seen })]),
        ["as_said"] = count.Right.Count,
        ["elsewhere"] = Pieces(count.Moved),
        ["missing"] = Pieces(count.Missing),
        ["found"] = Pieces(count.Found),
        ["should_be_gone"] = Pieces(count.ShouldBeGone),
        ["at_two_places"] = new JsonArray([.. count.Doubtful.Select(one => (JsonNode)new JsonObject { ["code"] = one.Piece.Code.Text, ["places"] = Texts(one.Places) })]),
        ["bins_elsewhere"] = new JsonArray([.. count.BinsMoved.Select(bin => (JsonNode)new JsonObject { ["code"] = bin.Bin.Code.Text, ["place"] = bin.Bin.Place, ["seen"] = bin.Seen })]),
        ["bins_not_seen"] = Texts(count.BinsNotSeen.Select(bin => bin.Bin.Code.Text)),
        ["unknown"] = Texts(count.Unknown.Select(one => one.Code.Text)),
        ["blank"] = Texts(count.Blanks.Select(code => code.Text)),
        ["void"] = Texts(count.Voids.Select(code => code.Text)),
        ["unsure"] = Texts(count.Unsure),
        ["foreign"] = count.Foreign,
        ["without_label"] = Texts(count.WithoutLabel.Select(file => file.Name)),
        ["unread"] = new JsonArray([.. count.Troubled.Select(file => (JsonNode)new JsonObject { ["file"] = file.Name, ["why"] = file.Trouble!.Sentence })]),
    });

    private static JsonArray Pieces(IEnumerable<CountedPiece> pieces) => new([.. pieces.Select(counted => (JsonNode)new JsonObject
    {
        ["code"] = counted.Piece.Code.Text,
        ["material"] = counted.Piece.Material.Name,
        ["length_mm"] = counted.Piece.Length.InMillimetres,
        ["state"] = Words.Of(counted.Piece.State),
        ["place"] = counted.Piece.Place,
        ["seen"] = counted.Seen,
        ["file"] = counted.File.Length == 0 ? null : counted.File,
    })]);

    private static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);

    /// <summary>How far it is, on one line of standard error that is written over; none where nobody reads along.</summary>
    private sealed class ProgressBar(Surroundings world)
    {
        private const int Width = 30;
        private int _longest;

        public void Show(CountProgress progress)
        {
            if (!world.OutIsTerminal) return;
            var full = Width * progress.Done / progress.Of;
            var line = TextRules.Harmless($"[{new string('#', full)}{new string('.', Width - full)}] {progress.Done} of {progress.Of}  {Path.GetFileName(progress.Name)}");
            if (line.Length > world.Width - 1) line = line[..(world.Width - 1)];
            world.Error.Write("\r" + line.PadRight(_longest));
            _longest = line.Length;
        }

        public void Clear()
        {
            if (_longest > 0) world.Error.Write("\r" + new string(' ', _longest) + "\r");
        }
    }
}
