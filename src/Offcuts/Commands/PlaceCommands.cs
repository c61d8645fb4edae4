using System.CommandLine;
using System.Text.Json.Nodes;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>Places and their labels, and bundles.</summary>
internal static class PlaceCommands
{
    /// <summary>The commands <c>place</c> and <c>bundle</c>.</summary>
    public static IEnumerable<Command> All(CommandContext context) =>
    [
        context.Command(
            "place",
            "Places where things lie: racks, bays, trailers, with labels of their own",
            ["offcuts place list", "offcuts place label \"north rack\" \"bay 3\" trailer"],
            List(context),
            Label(context)),
        context.Command(
            "bundle",
            "Pieces strapped together under one label: moved as one, opened into its pieces later",
            ["offcuts bundle new K7F3MXX N4PX7AW --name studs", "offcuts bundle open HNE WPH3"],
            New(context),
            Bundles(context),
            Move(context),
            Open(context)),
    ];

    /// <summary>Shows what a code of a place or a bundle hangs on; refused where it is none of them.</summary>
    public static int Show(CommandContext context, YardFile yard, Code code, bool json)
    {
        var places = SeePlaces.Of(yard);
        if (places.FirstOrDefault(place => place.Code == code) is { } here)
        {
            if (json)
            {
                context.World.Out.WriteLine(Json([here]));
                return Exit.Done;
            }

            YardCommands.Symbol(context, code);
            context.Say($"{code}   place   {here.Name}");
            context.Say($"{Words.Count(here.Pieces, "piece")} and {Words.Count(here.Bins, "bin")} lie there; counted {SeePlaces.Counted(here.CountedOn, context.World.Today)}. See them with: offcuts list {ShellWord.Of("@" + here.Name)}");
        }
        else if (yard.Bundles().FirstOrDefault(bundle => bundle.Code == code) is { } bundle)
        {
            if (json)
            {
                context.World.Out.WriteLine(Json([bundle]));
                return Exit.Done;
            }

            var unit = yard.Settings().Unit;
            YardCommands.Symbol(context, code);
            context.Say($"{code}   bundle{(bundle.Name.Length > 0 ? $"   {bundle.Name}" : "")}   {BundleWords.Holds(bundle, yard)}");
            if (bundle.Place.Length > 0) context.Say($"at {bundle.Place}");
            if (bundle.OpenedOn is { } on) context.Say($"opened on {ListJson.Day(on)}: its pieces lie by themselves");
            foreach (var piece in bundle.Pieces.Select(yard.Piece).OfType<Piece>()) context.Say($"  {piece.Code}  {piece.Material}  {Words.Size(piece, unit)}  {Words.State(piece)}");
        }
        else return context.Refuse([yard.VoidCodes().Contains(code) ? LabelFaults.IsVoid(code.ToString()) : YardFaults.NoSuchCode(code.ToString())]);

        context.Say("History:");
        foreach (var line in Details.History(yard, code)) context.Say("  " + line);
        return Exit.Done;
    }

    /// <summary>Places in a table, in their order.</summary>
    public static void Table(CommandContext context, IReadOnlyList<PlaceInShort> places, DateOnly today) => Tables.Write(
        context.World,
        ["Place", "Counted", ">Pieces", ">Bins", "Label"],
        places.Select(place => (IReadOnlyList<string>)[place.Name, SeePlaces.Counted(place.CountedOn, today), $"{place.Pieces}", $"{place.Bins}", place.Code.ToString()]));

    /// <summary>Places as JSON.</summary>
    public static string Json(IReadOnlyList<PlaceInShort> places) => YardJson.List("places", places.Select(place => new JsonObject
    {
        ["name"] = place.Name,
        ["counted"] = ListJson.Day(place.CountedOn),
        ["pieces"] = place.Pieces,
        ["bins"] = place.Bins,
        ["code"] = place.Code.IsNone ? null : place.Code.Text,
    }));

    private static string Json(IReadOnlyList<Bundle> bundles) => YardJson.List("bundles", bundles.Select(bundle => new JsonObject
    {
        ["code"] = bundle.Code.Text,
        ["name"] = bundle.Name,
        ["place"] = bundle.Place,
        ["pieces"] = new JsonArray([.. bundle.Pieces.Select(code => (JsonNode)code.Text)]),
        ["opened"] = ListJson.Day(bundle.OpenedOn),
    }));

    private static Command List(CommandContext context)
    {
        var json = new Option<bool>("--json") { Description = "As JSON" };
        var command = context.Command("list", "List every place, the one not counted for longest first", ["offcuts place list", "offcuts place list --json"], json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var places = SeePlaces.Of(yard);
            if (parse.GetValue(json)) context.World.Out.WriteLine(Json(places));
            else if (places.Count == 0) context.Say("Nothing has a place yet");
            else Table(context, places, context.World.Today);
            return Exit.Done;
        }));
        return command;
    }

    private static Command Label(CommandContext context)
    {
        var names = new Argument<string[]>("places") { Description = "Names of the places", Arity = ArgumentArity.OneOrMore };
        var command = context.Command(
            "label",
            "Give places labels that a picture can show; they are printed with the next sheet",
            ["offcuts place label \"north rack\" \"bay 3\"", "offcuts label print labels.pdf"],
            names);
        command.SetAction(parse => context.WithYard(parse, yard => context.Tell(new ChangeLabels(yard).LabelPlaces(parse.GetValue(names) ?? []))));
        return command;
    }

    private static Command New(CommandContext context)
    {
        var codes = new Argument<string[]>("codes") { Description = "The pieces", Arity = ArgumentArity.OneOrMore };
        var name = new Option<string>("--name") { Description = "What to call it", HelpName = "NAME" };
        var at = new Option<string>("--at") { Description = "Where it lies; all its pieces are put there", HelpName = "PLACE" };
        var command = context.Command("new", "Strap pieces together under one new label", ["offcuts bundle new K7F3MXX N4PX7AW HNEWPH3 --name studs --at trailer"], codes, name, at);
        command.SetAction(parse => context.WithYard(parse, yard => Codes.Read(parse.GetValue(codes) ?? []) is { } read && read.TryGet(out var list)
            ? context.Tell(new ChangeLabels(yard).Strap(list, parse.GetValue(name), parse.GetValue(at)))
            : context.Refuse(Codes.Read(parse.GetValue(codes) ?? []).Faults)));
        return command;
    }

    private static Command Bundles(CommandContext context)
    {
        var json = new Option<bool>("--json") { Description = "As JSON" };
        var opened = new Option<bool>("--opened") { Description = "Also those that were opened" };
        var command = context.Command("list", "List the bundles and what is in them", ["offcuts bundle list", "offcuts bundle list --opened --json"], opened, json);
        command.SetAction(parse => context.WithYardThere(parse, yard =>
        {
            var bundles = yard.Bundles().Where(bundle => bundle.IsWhole || parse.GetValue(opened)).ToArray();
            if (parse.GetValue(json))
            {
                context.World.Out.WriteLine(Json(bundles));
                return Exit.Done;
            }

            if (bundles.Length == 0) context.Say("There is no bundle");
            var unit = yard.Settings().Unit;
            foreach (var bundle in bundles)
            {
                context.Say($"{BundleWords.Line(bundle, yard)}{(bundle.OpenedOn is { } day ? $"; opened {day:yyyy-MM-dd}" : "")}");
                foreach (var code in bundle.Pieces) context.Say("  " + PrintLabels.Line(yard, code, unit));
            }

            return Exit.Done;
        }));
        return command;
    }

    private static Command Move(CommandContext context)
    {
        var code = new Argument<string>("bundle") { Description = "The bundle's code or its name" };
        var place = new Argument<string[]>("place") { Description = "Where it lies now", Arity = ArgumentArity.OneOrMore };
        var command = context.Command("move", "Put a bundle with all that is in it at another place", ["offcuts bundle move HNE WPH3 trailer", "offcuts bundle move studs trailer"], code, place);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            // A code or a name of several words may go on where the place begins.
            var labels = new ChangeLabels(yard);
            return context.Tell(labels.NamedFirst([parse.GetValue(code)!, .. parse.GetValue(place)!]).Then(named => labels.MoveBundle(named.Bundle, named.Behind)));
        }));
        return command;
    }

    private static Command Open(CommandContext context)
    {
        var code = new Argument<string[]>("bundle") { Description = "The bundle's code or its name", Arity = ArgumentArity.OneOrMore };
        var command = context.Command("open", "Open a bundle: its pieces lie by themselves, and their labels wait to be printed", ["offcuts bundle open HNE WPH3"], code);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var labels = new ChangeLabels(yard);
            return context.Tell(labels.Named(parse.GetValue(code)!).Then(labels.Open));
        }));
        return command;
    }
}
