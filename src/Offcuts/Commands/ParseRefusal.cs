using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text.RegularExpressions;
using Offcuts.Core.Faults;
using Offcuts.Core.Yard;

namespace Offcuts.Commands;

/// <summary>Why a command line can't be understood: one line, with what would be right.</summary>
internal static partial class ParseRefusal
{
    /// <summary>The line, with the command whose help tells more.</summary>
    public static string Line(ParseResult parse) => Misspelt(parse) is { } wrong
        ? $"{wrong}; see: offcuts --help"
        : $"{What(parse)}; see: {Path(parse.CommandResult)} --help";

    // "wal list" is a slip in "wall list": what stands before every command belongs to none that the next word names.
    private static string? Misspelt(ParseResult parse)
    {
        if (parse.CommandResult.Parent is null || parse.Tokens.FirstOrDefault()?.Value is not { } first || first.StartsWith('-') || parse.UnmatchedTokens.FirstOrDefault() != first) return null;
        var all = parse.RootCommandResult.Command.Subcommands.Where(command => !command.Hidden).Select(command => command.Name).ToArray();
        return all.Contains(first) ? null : CommandFaults.CommandUnknown("offcuts", first, NearWord.To(first, all), []).Sentence;
    }

    private static string What(ParseResult parse)
    {
        var result = parse.CommandResult;
        var below = result.Command.Subcommands.Where(command => !command.Hidden).Select(command => command.Name).ToArray();
        if (Swallowed(result) is { } option) return CommandFaults.OptionUnknown(option).Sentence;
        if (parse.UnmatchedTokens.FirstOrDefault() is { } stray) return Stray(result, below, stray);
        if (below.Length > 0 && result.Command.Action is null) return CommandFaults.CommandMissing(Path(result), below).Sentence;
        var missing = result.Command.Arguments.Where(argument => argument.Arity.MinimumNumberOfValues > 0 && result.GetResult(argument) is not { Tokens.Count: > 0 }).Select(argument => $"<{argument.Name}>").ToArray();
        return missing.Length > 0
            ? CommandFaults.ArgumentsMissing(Path(result), missing).Sentence
            : string.Join("; ", parse.Errors.Select(error => Plain(error.Message)).Distinct());
    }

    // "print --out x.pdf": the option that nobody knows was taken for the file, and what is too many is only the word behind it.
    private static string? Swallowed(CommandResult result) =>
        result.Children.OfType<ArgumentResult>().SelectMany(argument => argument.Tokens).FirstOrDefault(token => token.Value.StartsWith("--", StringComparison.Ordinal))?.Value;

    private static string Stray(CommandResult result, string[] below, string stray) =>
        stray.StartsWith('-') && stray.Length > 1 ? CommandFaults.OptionUnknown(stray).Sentence
        : below.Length == 0 ? CommandFaults.WordTooMany(Path(result), stray).Sentence
        : CommandFaults.CommandUnknown(Path(result), stray, NearWord.To(stray, below), result.Parent is null ? [] : below).Sentence;

    // The library speaks of types and breaks its lines; a person at a tailgate needs neither.
    private static string Plain(string message)
    {
        var line = string.Join(' ', message.Split(['\r', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries)).TrimEnd('.');
        if (NotAmong().Match(line) is { Success: true } among) return CommandFaults.NoneOf(among.Groups["word"].Value, among.Groups["words"].Value.Replace("'", "", StringComparison.Ordinal).Split(' ')).Sentence;
        if (NoValue().Match(line) is { Success: true } bare) return CommandFaults.ValueMissing(bare.Groups["option"].Value).Sentence;
        return NoNumber().Match(line) is { Success: true } number
            ? CommandFaults.NoNumber(number.Groups["word"].Value, number.Groups["option"].Value, whole: number.Groups["type"].Value.Contains("Int32", StringComparison.Ordinal)).Sentence
            : line;
    }

    private static string Path(CommandResult result) =>
        result.Parent is CommandResult parent ? $"{Path(parent)} {result.Command.Name}" : "offcuts";

    [GeneratedRegex("^Argument '(?<word>.*)' not recognized. Must be one of: (?<words>.*)$")]
    private static partial Regex NotAmong();

    [GeneratedRegex("^Required argument missing for option: '(?<option>.*)'$")]
    private static partial Regex NoValue();

    [GeneratedRegex("^Cannot parse argument '(?<word>.*)' for (?:option|command) '(?<option>.*)' as expected type '(?<type>.*)'$")]
    private static partial Regex NoNumber();
}
