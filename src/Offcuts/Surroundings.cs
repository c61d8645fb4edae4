namespace Offcuts;

/// <summary>
/// The program's doors to the outside: streams, clock, environment and luck. Everything else takes them from here, so that a
/// test can stand in for the world.
/// </summary>
public sealed record Surroundings
{
    /// <summary>Standard input.</summary>
    public required TextReader In { get; init; }

    /// <summary>Standard input as bytes, for a file that is piped in.</summary>
    public required Func<Stream> InBytes { get; init; }

    /// <summary>Standard output.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Standard error.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>True where a person types: only then may a question be asked.</summary>
    public required bool InIsTerminal { get; init; }

    /// <summary>True where a person reads along.</summary>
    public required bool OutIsTerminal { get; init; }

    /// <summary>True where standard error is read along: only then is it told there how far long work is.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>Columns of the terminal; 80 where there is none.</summary>
    public required int Width { get; init; }

    /// <summary>The clock.</summary>
    public required TimeProvider Clock { get; init; }

    /// <summary>A variable of the environment, or null.</summary>
    public required Func<string, string?> Environment { get; init; }

    /// <summary>Where the user's own files belong.</summary>
    public required string UserFolder { get; init; }

    /// <summary>True unless <c>NO_COLOR</c> is set or nobody reads along.</summary>
    public bool Colour => OutIsTerminal && string.IsNullOrEmpty(Environment("NO_COLOR"));

    /// <summary>True unless <c>OFFCUTS_MOUSE</c> says 0 or no: then the mouse stays with the terminal.</summary>
    public bool Mouse => Environment("OFFCUTS_MOUSE")?.Trim().ToLowerInvariant() is not ("0" or "no");

    /// <summary>
    /// True where the screen draws nothing but ASCII: where <c>OFFCUTS_ASCII</c> says so (anything but 0 or no), or, where it says
    /// nothing, where the locale is not set to UTF-8. By POSIX the first of LC_ALL, LC_CTYPE and LANG that says anything decides.
    /// Windows has no such variables and draws lines.
    /// </summary>
    public bool Ascii => Environment("OFFCUTS_ASCII") is { Length: > 0 } said
        ? said.Trim().ToLowerInvariant() is not ("0" or "no")
        : !OperatingSystem.IsWindows() && !SaysUtf8(Locale);

    /// <summary>The day it is here.</summary>
    public DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().DateTime);

    /// <summary>The real world.</summary>
    public static Surroundings Real() => new()
    {
        In = Console.In,
        InBytes = Console.OpenStandardInput,
        Out = Console.Out,
        Error = Console.Error,
        InIsTerminal = !Console.IsInputRedirected,
        OutIsTerminal = !Console.IsOutputRedirected,
        ErrorIsTerminal = !Console.IsErrorRedirected,
        Width = WidthOfTerminal(),
        Clock = TimeProvider.System,
        Environment = System.Environment.GetEnvironmentVariable,
        UserFolder = System.Environment.GetFolderPath(System.Environment.SpecialFolder.LocalApplicationData, System.Environment.SpecialFolderOption.DoNotVerify),
    };

    private string Locale => new[] { "LC_ALL", "LC_CTYPE", "LANG" }.Select(Environment).FirstOrDefault(said => !string.IsNullOrEmpty(said)) ?? "";

    private static bool SaysUtf8(string locale) =>
        locale.Contains("utf-8", StringComparison.OrdinalIgnoreCase) || locale.Contains("utf8", StringComparison.OrdinalIgnoreCase);

    private static int WidthOfTerminal()
    {
        if (Console.IsOutputRedirected) return 80;
        try
        {
            return Math.Max(40, Console.WindowWidth);
        }
        catch (IOException)
        {
            return 80;
        }
    }
}
