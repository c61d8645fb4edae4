using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using Offcuts.Core.Faults;
using Offcuts.Store;

namespace Offcuts.Commands;

/// <summary>All commands of the program, and the one place where what goes wrong becomes a line and an exit status.</summary>
internal static class CommandLine
{
    /// <summary>Reads the arguments, does what they say and gives the exit status.</summary>
    public static int Run(IReadOnlyList<string> arguments, Surroundings world, Func<Session, ParseResult, int> openScreen)
    {
        var session = new Session(world);
        try
        {
            var root = Root(session, openScreen);
            // A place is typed as @north rack, so @ must not read a file of arguments.
            var parse = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
            if (parse.Errors.Count > 0 && parse.Action is ParseErrorAction) return RefuseParse(session, parse);
            return parse.Invoke(new InvocationConfiguration
            {
                EnableDefaultExceptionHandler = false,
                Output = world.Out,
                Error = world.Error,
            });
        }
        catch (YardUnavailableException unavailable)
        {
            session.Refuse(unavailable.Message);
            return Exit.YardUnavailable;
        }
        catch (OperationCanceledException)
        {
            return Exit.Stopped;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return session.Refuse(error.Message);
        }
    }

    private static RootCommand Root(Session session, Func<Session, ParseResult, int> openScreen)
    {
        var root = new RootCommand("Know what you have, cut it once, see what it saved. Without a command, the full screen opens.");
        root.Options.Add(session.Yard);
        foreach (var command in Commands(session)) root.Subcommands.Add(command);
        root.SetAction(parse => openScreen(session, parse));
        session.Examples[root] =
        [
            "offcuts demo",
            "offcuts add 2x10 \"11'4, 11'4, 9'2-1/2\" fair nails @north rack",
            "offcuts plan --save",
        ];
        ShowExamples(root, session);
        return root;
    }

    private static IEnumerable<Command> Commands(Session session) =>
    [
        .. YardCommands.All(session),
        .. LabelCommands.All(session),
        .. StageCommands.All(session),
        .. PriceCommands.All(session),
        .. PlanCommands.All(session),
        .. LedgerCommands.All(session),
        .. SettingsCommands.All(session),
        .. OtherCommands.All(session),
    ];

    private static void ShowExamples(RootCommand root, Session session)
    {
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExamples((HelpAction)help.Action!, session);
    }

    private static int RefuseParse(Session session, ParseResult parse)
    {
        foreach (var error in parse.Errors) session.World.Error.WriteLine(TextRules.Harmless(error.Message));
        session.World.Error.WriteLine($"see: {Path(parse.CommandResult)} --help");
        return Exit.Refused;
    }

    private static string Path(CommandResult result) =>
        result.Parent is CommandResult parent ? $"{Path(parent)} {result.Command.Name}" : "offcuts";

    private sealed class HelpWithExamples(HelpAction plain, Session session) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            plain.Invoke(parseResult);
            if (!session.Examples.TryGetValue(parseResult.CommandResult.Command, out var examples)) return Exit.Done;
            var output = parseResult.InvocationConfiguration.Output;
            output.WriteLine(examples.Length == 1 ? "Example:" : "Examples:");
            foreach (var example in examples) output.WriteLine("  " + example);
            output.WriteLine();
            return Exit.Done;
        }
    }
}
