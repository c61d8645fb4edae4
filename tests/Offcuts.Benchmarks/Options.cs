using System.Globalization;
using Offcuts.Benchmarks.Classes;
using Offcuts.Benchmarks.Measuring;

namespace Offcuts.Benchmarks;

/// <summary>What was asked for on the command line.</summary>
internal sealed record Options
{
    /// <summary>How it is called.</summary>
    public const string Usage =
        "--quick (every class, about two minutes) or --full (with the limits of its goal, about 25 minutes); with either: --only CLASS[,CLASS], " +
        "--from FOLDER (instances from plain files instead), --seconds N (limit of one instance), --seeds N (instances a class), --matcher-only, --out FILE; " +
        "or --agree COUNT (drawn problems against an assignment model, 5000 take about eight minutes of processor time), with --first SEED, --out FILE; " +
        "or --agree-runs COUNT (drawn small walls against a plain model and trying everything), with --first SEED, --out FILE; " +
        "or --mutants REPORT[,REPORT] (the table of mutation testing from its JSON reports); " +
        "or --keys COUNT (the screen on a yard of so many pieces), with --program FILE (its start too); " +
        "or --pictures COUNT (pictures of 12 megapixels with 42 labels each), with --large-pictures (of 48 instead), --page; " +
        "or --crash KILLS (the real program killed while it saves), with --program FILE, --first SEED, --seconds N (at most); with --page it writes its part of TRUST.md; " +
        "or --typing KILLS (the full screen killed in a terminal while lines are typed; needs tmux), with --program FILE, --first SEED, --seconds N, --page; " +
        "or --faults COUNT (the file system goes wrong while the program saves; Linux, with a C compiler), with --program FILE, --first SEED, --seconds N, --page; " +
        "or --hostile INPUTS (what means harm, fed to every reader), with --first SEED, --seconds N, --page; " +
        "or --large PIECES (opening, looking, changing, a backup and a check of a large yard), with --page; " +
        "or --advisories FOLDER (locked packages looked up in a folder of advisories), with --page";

    // Beside the limits: the share of them for calls that go over theirs, drawing, checking and what is done by hand, and the seconds for starting and warming up.
    private const double Beside = 0.03;
    private const double Starting = 8;

    /// <summary>Limit of the assignment model on one instance in a full run, where that of the goal is longer.</summary>
    public const double ModelSeconds = 10;

    /// <summary>True for every instance with the limit of its goal.</summary>
    public bool Full { get; init; }

    /// <summary>Names of classes, or none for all.</summary>
    public string[] Only { get; init; } = [];

    /// <summary>A folder of plain instance files, or none for the classes that are drawn.</summary>
    public string? From { get; init; }

    /// <summary>Limit of one instance, where it is not the run's own.</summary>
    public double? Seconds { get; init; }

    /// <summary>Instances of each class, where they are not the run's own.</summary>
    public int? Seeds { get; init; }

    /// <summary>True where the others are left out, while the matcher is being worked on.</summary>
    public bool MatcherOnly { get; init; }

    /// <summary>Where the page goes, where it is not the project's own.</summary>
    public string? Out { get; init; }

    /// <summary>How many drawn problems are compared with what an assignment proves; none for measuring.</summary>
    public int? Agree { get; init; }

    /// <summary>The same for small walls.</summary>
    public int? AgreeRuns { get; init; }

    /// <summary>Seed of the first of them.</summary>
    public int First { get; init; } = 1_000_000;

    /// <summary>Reports of mutation testing to make a table of; none for anything else.</summary>
    public string[] Mutants { get; init; } = [];

    /// <summary>How many pieces the yard has on which the keys of the screen are timed; none for anything else.</summary>
    public int? Keys { get; init; }

    /// <summary>How many pictures are read; none for anything else.</summary>
    public int? Pictures { get; init; }

    /// <summary>True where they have 48 megapixels instead of 12.</summary>
    public bool Large48 { get; init; }

    /// <summary>True where its part of the page on trust is to be written.</summary>
    public bool Page { get; init; }

    /// <summary>How often the program is killed while it works; none for anything else.</summary>
    public int? Crash { get; init; }

    /// <summary>How often the full screen is killed while lines are typed; none for anything else.</summary>
    public int? Typing { get; init; }

    /// <summary>How often the file system goes wrong; none for anything else.</summary>
    public int? Faults { get; init; }

    /// <summary>How many inputs that mean harm are fed; none for anything else.</summary>
    public int? Hostile { get; init; }

    /// <summary>How many pieces the yard has that is opened, looked through and copied; none for anything else.</summary>
    public int? Large { get; init; }

    /// <summary>A folder of advisories in which the locked packages are looked up; none for anything else.</summary>
    public string? Advisories { get; init; }

    /// <summary>The built program whose start is timed with them, or that is killed; or none.</summary>
    public string? Program { get; init; }

    /// <summary>Whose child process this is; none in the parent.</summary>
    public string? Child { get; init; }

    /// <summary>True where the project's own results page is to be written: nothing was left out.</summary>
    public bool Whole => Only.Length == 0 && From is null && Seconds is null && Seeds is null && !MatcherOnly;

    /// <summary>The command line, or none where it can't be understood.</summary>
    public static Options? Read(string[] args)
    {
        var options = new Options();
        for (var i = 0; i < args.Length; i++)
        {
            string? Next() => ++i < args.Length ? args[i] : null;
            switch (args[i])
            {
                case "--quick": options = options with { Full = false }; break;
                case "--full": options = options with { Full = true }; break;
                case "--only" when Next() is { } names: options = options with { Only = names.Split(',') }; break;
                case "--from" when Next() is { } folder && Directory.Exists(folder): options = options with { From = folder }; break;
                case "--seconds" when double.TryParse(Next(), CultureInfo.InvariantCulture, out var seconds): options = options with { Seconds = seconds }; break;
                case "--seeds" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var seeds): options = options with { Seeds = seeds }; break;
                case "--page": options = options with { Page = true }; break;
                case "--matcher-only": options = options with { MatcherOnly = true }; break;
                case "--out" when Next() is { } file: options = options with { Out = file }; break;
                case "--agree" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var problems) && problems > 0: options = options with { Agree = problems }; break;
                case "--agree-runs" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var runs) && runs > 0: options = options with { AgreeRuns = runs }; break;
                case "--mutants" when Next() is { } reports && reports.Split(',').All(File.Exists): options = options with { Mutants = reports.Split(',') }; break;
                case "--keys" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var pieces) && pieces is > 0 and <= 500_000: options = options with { Keys = pieces }; break;
                case "--pictures" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var pictures) && pictures is > 0 and <= 10_000: options = options with { Pictures = pictures }; break;
                case "--large-pictures": options = options with { Large48 = true }; break;
                case "--crash" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var kills) && kills > 0: options = options with { Crash = kills }; break;
                case "--typing" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var typing) && typing > 0: options = options with { Typing = typing }; break;
                case "--faults" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var wrongs) && wrongs > 0: options = options with { Faults = wrongs }; break;
                case "--hostile" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var inputs) && inputs > 0: options = options with { Hostile = inputs }; break;
                case "--large" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var large) && large is > 0 and <= 2_000_000: options = options with { Large = large }; break;
                case "--advisories" when Next() is { } advisories && Directory.Exists(advisories): options = options with { Advisories = advisories }; break;
                case "--program" when Next() is { } program && File.Exists(program): options = options with { Program = Path.GetFullPath(program) }; break;
                case "--first" when int.TryParse(Next(), CultureInfo.InvariantCulture, out var seed) && seed >= 0: options = options with { First = seed }; break;
                case "--child" when Next() is { } contender: return options with { Child = contender };
                default: return null;
            }
        }

        return args.Length == 0 || options.Classes().Count == 0 ? null : options;
    }

    /// <summary>The classes that were asked for.</summary>
    public IReadOnlyList<InstanceClass> Classes() =>
        [.. (From is { } folder ? PlainFolder.Read(folder, 10) : Catalogue.All).Where(one => Only.Length == 0 || Only.Contains(one.Name))];

    /// <summary>Who is measured.</summary>
    public IReadOnlyList<Contender> Contenders => MatcherOnly ? [Contender.Matcher] : Enum.GetValues<Contender>();

    /// <summary>Limit of one instance of a class for a contender; what is done by hand has none and needs none.</summary>
    public double SecondsOf(InstanceClass one, Contender who) =>
        Seconds ?? (!Full ? one.QuickSeconds : who == Contender.Model ? Math.Min(one.Seconds, ModelSeconds) : one.Seconds);

    /// <summary>How many instances of a class.</summary>
    public int CountOf(InstanceClass one) => From is not null
        ? Math.Min(Seeds ?? one.Full, one.Full)
        : Seeds ?? (Full ? one.Full : one.Quick);

    /// <summary>What is to be measured, and how long that takes at most.</summary>
    public string Announcement()
    {
        var classes = Classes();
        var limits = classes.Sum(one => CountOf(one) * Contenders.Where(who => who != Contender.Hand).Sum(who => SecondsOf(one, who)));
        var minutes = (limits * (1 + Beside) + Starting) / 60;
        return string.Create(CultureInfo.InvariantCulture, $"At most {minutes:0.#} minutes on an idle machine, were every instance to take its whole limit; what is proven ends sooner. Classes: {classes.Count}, instances: {classes.Sum(CountOf)}.");
    }
}
