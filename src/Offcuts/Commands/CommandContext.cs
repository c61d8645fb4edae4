using System.CommandLine;
using System.CommandLine.Parsing;
using Offcuts.Core.Faults;
using Offcuts.Store;

namespace Offcuts.Commands;

/// <summary>What every command shares: the way to the yard, to the terminal, and to say no.</summary>
internal sealed class CommandContext(Surroundings world)
{
    /// <summary>Which yard; every command that needs one has it.</summary>
    public Option<string> Yard { get; } = new("--yard")
    {
        Description = "The yard file; else OFFCUTS_YARD, else the one in your data folder",
        HelpName = "FILE",
        Recursive = true,
    };

    /// <summary>The doors to the outside.</summary>
    public Surroundings World => world;

    /// <summary>Examples for the help, by command.</summary>
    public Dictionary<Command, string[]> Examples { get; } = [];

    /// <summary>A command with its parts and its examples.</summary>
    public Command Command(string name, string description, string[] examples, params Symbol[] parts)
    {
        var command = new Command(name, description);
        foreach (var part in parts) Add(command, part);
        Examples[command] = examples;
        return command;
    }

    /// <summary>Opens the yard to look at it. One that was named and is not there is refused: a slip in its name is no empty yard.</summary>
    public int WithYardThere(ParseResult parse, Func<YardFile, int> look)
    {
        if (Unnamed(parse)) return Refuse([CommandFaults.YardWithoutName()]);
        var path = YardLocation.Resolve(parse.GetValue(Yard), world.Environment, world.UserFolder);
        if (parse.GetValue(Yard) is not null && !Path.Exists(path)) return Refuse([CommandFaults.NoYardYet(path)]);
        return WithYard(parse, look);
    }

    /// <summary>
    /// Opens the yard, does the work, closes it. A yard that is not there yet is made by the first change that is saved, but the folder of one that was named is not: a
    /// slip in its name would leave folders about. Throws <see cref="YardUnavailableException"/>.
    /// </summary>
    public int WithYard(ParseResult parse, Func<YardFile, int> work)
    {
        var where = Where(parse.GetValue(Yard));
        if (!where.TryGet(out var path)) return Refuse(where.Faults);
        var isNew = !File.Exists(path);
        using var yard = YardFile.Open(path, world.Clock);
        yard.FinishesBackupLater = true;
        return Told(yard, isNew, work(yard));
    }

    /// <summary>
    /// The same for work that has something to do before it needs the yard: that is opened meanwhile, and waited for where it is asked for. There
    /// <see cref="YardUnavailableException"/> is thrown.
    /// </summary>
    /// <param name="named">The file that was named, or null.</param>
    /// <param name="work">Does the work; what it is handed gives the yard, always the same.</param>
    public int WithYardSoon(string? named, Func<Func<YardFile>, int> work)
    {
        var where = Where(named);
        if (!where.TryGet(out var path)) return Refuse(where.Faults);
        var isNew = !File.Exists(path);
        var opening = Task.Run(() => YardFile.Open(path, world.Clock));
        var asked = false;
        try
        {
            var status = work(() =>
            {
                asked = true;
                return opening.GetAwaiter().GetResult();
            });
            return asked ? Told(opening.GetAwaiter().GetResult(), isNew, status) : status;
        }
        finally
        {
            // Whatever became of it, nobody holds the file any more when this is over.
            opening.ContinueWith(opened => opened.Result.Dispose(), CancellationToken.None, TaskContinuationOptions.OnlyOnRanToCompletion | TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default)
                .ContinueWith(_ => { }, TaskScheduler.Default).Wait();
        }
    }

    private Result<string> Where(string? named)
    {
        if (named is not null && string.IsNullOrWhiteSpace(named)) return CommandFaults.YardWithoutName();
        var path = Path.GetFullPath(YardLocation.Resolve(named, world.Environment, world.UserFolder));
        var usual = Path.GetFullPath(YardLocation.Resolve(null, _ => null, world.UserFolder));
        return path != usual && Path.GetDirectoryName(path) is { } folder && !Path.Exists(folder) ? CommandFaults.NoFolder(folder) : path;
    }

    private int Told(YardFile yard, bool isNew, int status)
    {
        // What was done is told before the copy of the day is checked: nobody waits for that to know that it is saved.
        world.Out.Flush();
        yard.FinishBackup();
        if (isNew && File.Exists(yard.Path) && YardLocation.IsOnNetwork(yard.Path)) Complain(KeepFaults.OnNetwork(yard.Path).Sentence);
        if (yard.BackupTrouble is { } trouble) Complain(trouble.Sentence);
        return status;
    }

    /// <summary>The file itself, not opened: for what keeps it safe.</summary>
    public int WithPath(ParseResult parse, Func<string, int> work) => Unnamed(parse)
        ? Refuse([CommandFaults.YardWithoutName()])
        : work(Path.GetFullPath(YardLocation.Resolve(parse.GetValue(Yard), world.Environment, world.UserFolder)));

    // A variable of a script that is empty must not lead to another yard than the one that is meant.
    private bool Unnamed(ParseResult parse) => parse.GetValue(Yard) is { } named && string.IsNullOrWhiteSpace(named);

    /// <summary>One line on standard output, harmless whatever is in it; on a terminal broken between words where it is too long.</summary>
    public void Say(string line = "")
    {
        foreach (var part in line.Split('\n').Select(TextRules.Harmless).SelectMany(part => world.OutIsTerminal ? TerminalLines.Of(part, world.Width) : [part])) world.Out.WriteLine(part);
    }

    /// <summary>The same with no line broken: drawings, and what another program or a file reads as it stands.</summary>
    public void SayAsItIs(string text) => world.Out.WriteLine(string.Join('\n', text.Split('\n').Select(TextRules.Harmless)));

    /// <summary>One line on standard error, in the same way.</summary>
    public void Complain(string line)
    {
        var harmless = TextRules.Harmless(line);
        foreach (var part in world.ErrorIsTerminal ? TerminalLines.Of(harmless, world.Width) : [harmless]) world.Error.WriteLine(part);
    }

    /// <summary>Each fault as a line on standard error.</summary>
    public int Refuse(IEnumerable<Fault> faults)
    {
        foreach (var fault in faults) Complain(fault.ToString());
        return Exit.Refused;
    }

    /// <summary>The same for typed lines: of one alone, the column is pointed at, so that nothing has to be counted.</summary>
    public int RefuseTyped(IReadOnlyList<string> lines, IReadOnlyList<Fault> faults)
    {
        if (lines is [var line] && line.Trim().Length > 0 && faults[0].Column > 0)
        {
            world.Error.WriteLine(TextRules.Harmless(line));
            world.Error.WriteLine(new string(' ', TextRules.Harmless(line[..Math.Min(line.Length, faults[0].Column - 1)]).Length) + "^");
        }

        return Refuse(faults);
    }

    /// <summary>One fault as a line on standard error.</summary>
    public int Refuse(string sentence) => Refuse([new Fault(sentence)]);

    /// <summary>Says what was done, or why it was refused.</summary>
    public int Tell(Result<string> told)
    {
        if (!told.TryGet(out var what)) return Refuse(told.Faults);
        Say(char.ToUpperInvariant(what[0]) + what[1..]);
        return Exit.Done;
    }

    /// <summary>Says that what has the name already is to be replaced.</summary>
    public static Option<bool> Replace() => new("--replace") { Description = "Put it in the place of the one of that name" };

    /// <summary>Says that what is kept may be given up.</summary>
    public static Option<bool> GiveUp() => new("--yes") { Description = "Even where it gives up how a wall is filled, as it is kept" };

    /// <summary>Says that a script reads along.</summary>
    public static Option<bool> Json() => new("--json") { Description = "As JSON: lengths in millimetres" };

    /// <summary>Says that a name which nothing in the yard has yet is no slip.</summary>
    public static Option<bool> NewNames() => new("--new") { Description = "Names of materials that nothing here has yet are meant, and no slip" };

    /// <summary>
    /// Asks for a yes where a person types; taken for granted where nobody does. Enter means yes, or no where a yes has to be meant.
    /// </summary>
    public bool Agreed(string question, bool enterMeansYes = true)
    {
        if (!world.InIsTerminal) return true;
        world.Out.Write(question + (enterMeansYes ? " [Y/n] " : " [y/N] "));
        var answer = world.In.ReadLine()?.Trim() ?? "n";
        return (answer.Length == 0 && enterMeansYes) || answer.StartsWith("y", StringComparison.OrdinalIgnoreCase);
    }

    private static void Add(Command command, Symbol part)
    {
        switch (part)
        {
            case Option option:
                command.Options.Add(option);
                break;
            case Argument argument:
                argument.Validators.Add(RefuseUnknownOption);
                command.Arguments.Add(argument);
                break;
            case Command sub:
                command.Subcommands.Add(sub);
                break;
            default:
                throw new ArgumentException($"{part.Name} is no part of a command", nameof(part));
        }
    }

    // An argument of many words would swallow a mistyped option.
    private static void RefuseUnknownOption(ArgumentResult result)
    {
        if (result.Tokens.FirstOrDefault(token => token.Value.StartsWith("--", StringComparison.Ordinal)) is { } unknown)
            result.AddError(CommandFaults.OptionUnknown(unknown.Value).Sentence);
    }
}
