using System.CommandLine;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>What the user has set for the yard.</summary>
internal static class SettingsCommands
{
    /// <summary>The command <c>settings</c>.</summary>
    public static IEnumerable<Command> All(CommandContext context)
    {
        var name = new Argument<string>("name") { Description = "What to set; without it, everything is shown", Arity = ArgumentArity.ZeroOrOne };
        var value = new Argument<string[]>("value") { Description = "Its new value", Arity = ArgumentArity.ZeroOrMore };
        var command = context.Command(
            "settings",
            "Show or set what holds for the whole yard: the unit, kerfs, keep lengths, what always stays, rules of use, species, tax, currency sign, and what is said of foam in the sun",
            [
                "offcuts settings",
                "offcuts settings unit mm",
                "offcuts settings kerf foam 0",
                "offcuts settings keep 2x4 18",
                "offcuts settings keep-back 2x4 \"40'\"",
                "offcuts settings keep-back \"panel tie\" 20",
                "offcuts settings use bracing worst fair",
                "offcuts settings tax 8.25",
                "offcuts settings foam 60",
                "offcuts settings cover the barn",
            ],
            name, value);
        command.SetAction(parse => context.WithYard(parse, yard =>
        {
            var settings = new ChangeSettings(yard);
            if (parse.GetValue(name) is { } what) return context.Tell(settings.Set(what, parse.GetValue(value) ?? []));
            foreach (var line in settings.Lines()) context.Say(line);
            return Exit.Done;
        }));
        yield return command;
    }
}
