using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using Offcuts.Core.Faults;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Commands;

/// <summary>All commands of the program, and the one place where what goes wrong becomes a line and an exit status.</summary>
internal static class CommandLine
{
    /// <summary>Reads the arguments, does what they say and gives the exit status.</summary>
    public static int Run(IReadOnlyList<string> arguments, Surroundings world, Func<CommandContext, string?, int> openScreen)
    {
        var context = new CommandContext(world);
        try
        {
            // The screen opens at once: making up all commands to find that none is meant takes longer than anything else of it.
            if (arguments.Count == 0) return openScreen(context, null);
            if (arguments is ["--yard", var named] && !named.StartsWith('-')) return openScreen(context, named);
            if (arguments[0] == "help") arguments = [.. arguments.Skip(1), "--help"];
            // What follows an option is one word, but a code is written as two.
            arguments = CodeWords.JoinedBehind(PlanCommand.OfCodes, arguments);
            var root = Root(context, openScreen);
            // A place is typed as @north rack, so @ must not read a file of arguments.
            var parse = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parse.Errors.Count > 0 && parse.Action is ParseErrorAction) return RefuseParse(context, parse);
            return parse.Invoke(new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
                Output = world.Out,
                Error = world.Error,
            });
        }
        catch (YardUnavailableException unavailable)
        {
            context.Refuse(unavailable.Message);
            return Exit.YardUnavailable;
        }
        catch (OperationCanceledException)
        {
            return Exit.Stopped;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            context.Refuse([FileTrouble.Told(error)]);
            return FileTrouble.IsFull(error) ? Exit.NotWritten : Exit.Refused;
        }
    }

    private static RootCommand Root(CommandContext context, Func<CommandContext, string?, int> openScreen)
    {
        var root = new RootCommand("Know what you have, cut it once, see what it saved. Without a command, the full screen opens.");
        root.Options.Add(context.Yard);
        foreach (var command in Commands(context)) root.Subcommands.Add(command);
        root.SetAction(parse => openScreen(context, parse.GetValue(context.Yard)));
        context.Examples[root] =
        [
            "offcuts demo",
            "offcuts add 2x10 \"11'4, 11'4, 9'2-1/2\" fair nails @north rack",
            "offcuts plan --save",
        ];
        ShowExamples(root, context);
        return root;
    }

    private static IEnumerable<Command> Commands(CommandContext context) =>
    [
        TodayCommand.Today(context),
        .. YardCommands.All(context),
        .. LabelCommands.All(context),
        .. PlaceCommands.All(context),
        CountCommand.Of(context),
        .. StageCommands.All(context),
        .. SystemCommands.All(context),
        .. WallCommands.All(context),
        WallFillCommands.Find(context),
        .. PriceCommands.All(context),
        .. PlanCommands.All(context),
        .. HandCommands.All(context),
        .. LedgerCommands.All(context),
        .. SettingsCommands.All(context),
        .. SafetyCommands.All(context),
        .. OtherCommands.All(context),
    ];

    private static void ShowExamples(RootCommand root, CommandContext context)
    {
        var help = root.Options.OfType<HelpOption>().Single();

        // On other systems these are paths, and a shell would offer them as such.
        foreach (var slash in help.Aliases.Where(alias => alias.StartsWith('/')).ToArray()) help.Aliases.Remove(slash);
        help.Action = new HelpWithExamples((HelpAction)help.Action!, context);
    }

    private static string InShort(string description) =>
        description.IndexOfAny([':', ';', '?']) is > 0 and var at ? description[..(description[at] == '?' ? at + 1 : at)] : description;

    private static int RefuseParse(CommandContext context, ParseResult parse)
    {
        context.Complain(ParseRefusal.Line(parse));
        return Exit.Refused;
    }

    private sealed class HelpWithExamples(HelpAction plain, CommandContext context) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            var root = parseResult.CommandResult.Command is RootCommand;
            // Of so many commands a line each is enough to choose by; each has more in its own help.
            if (root) InShort(parseResult, () => plain.Invoke(parseResult));
            else plain.Invoke(parseResult);
            if (root) parseResult.InvocationConfiguration.Output.WriteLine("More of each: offcuts help COMMAND");
            if (!context.Examples.TryGetValue(parseResult.CommandResult.Command, out var examples)) return Exit.Done;
            var output = parseResult.InvocationConfiguration.Output;
            output.WriteLine(examples.Length == 1 ? "Example:" : "Examples:");
            foreach (var example in examples) output.WriteLine("  " + example);
            output.WriteLine();
            return Exit.Done;
        }

        // The help takes its lines from the commands themselves, so each has its short line while they are printed and its whole one again after.
        private static void InShort(ParseResult parseResult, Action print)
        {
            var whole = parseResult.CommandResult.Command.Subcommands.Select(command => (Command: command, command.Description)).ToArray();
            try
            {
                foreach (var (command, description) in whole) command.Description = CommandLine.InShort(description ?? "");
                print();
            }
            finally
            {
                foreach (var (command, description) in whole) command.Description = description;
            }
        }
    }
}
