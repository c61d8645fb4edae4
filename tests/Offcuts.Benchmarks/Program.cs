using Offcuts.Benchmarks;
using Offcuts.Benchmarks.Crash;
using Offcuts.Benchmarks.Evidence;
using Offcuts.Benchmarks.Keys;
using Offcuts.Benchmarks.Measuring;
using Offcuts.Benchmarks.Pictures;

// Every table of the results page from one command; exits with 1 where a claim was found to be wrong.
if (Options.Read(args) is not { } options)
{
    Console.Error.WriteLine(Options.Usage);
    return 2;
}

if (options.Agree is { } problems) return AgreementRun.Run(problems, options.First, options.Out ?? Pages.PathOf(AgreementRun.Page));
if (options.AgreeRuns is { } walls) return RunAgreement.Run(walls, options.First, options.Out ?? Pages.PathOf(RunAgreement.Page));
if (options.Keys is { } pieces) return KeyTimes.Run(pieces, options.Program);
if (options.Pictures is { } pictures) return PictureTimes.Run(options, pictures);
if (options.Crash is { } kills) return CrashRun.Run(options, kills);
if (options.Faults is { } faults) return FaultFeeding.Run(options, faults);
if (options.Typing is { } typed) return TypingKills.Run(options, typed);
if (options.Hostile is { } inputs) return HostileFeeding.Run(options, inputs);
if (options.Large is { } large) return LargeYardRun.Run(options, large);
if (options.Advisories is { } advisories) return AdvisoryLookup.Run(options, advisories);
if (options.Mutants.Length > 0)
{
    foreach (var line in MutantTable.Of(options.Mutants)) Console.WriteLine(line);
    return 0;
}

if (options.Child is { } contender) return ChildRun.Run(options, contender);

return ClassRun.Run(options);
