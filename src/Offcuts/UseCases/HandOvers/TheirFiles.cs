using Offcuts.Core.Faults;
using Offcuts.Core.Materials;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Store;
using Offcuts.Store.Interchange;
using Offcuts.Walls;

namespace Offcuts.UseCases;

/// <summary>Another build's needs, by the files that tell them.</summary>
/// <param name="Cuts">A cuts file; none where there is none.</param>
/// <param name="Wall">A wall's sheet.</param>
/// <param name="System">The system's sheet of that wall, where this yard does not have it.</param>
/// <param name="Prices">A prices file.</param>
public sealed record TheirFiles(string? Cuts, string? Wall, string? System, string? Prices)
{
    private static readonly string[] Words = ["cuts", "wall", "system", "prices"];

    /// <summary>
    /// The files as they are typed on one line: a word that says which, then the name, like <c>cuts ann.csv prices ann prices.csv</c>. A name that no word
    /// stands before is that of a cuts file.
    /// </summary>
    public static Result<TheirFiles> Read(string typed)
    {
        var named = new Dictionary<string, string>();
        var (word, name, said) = ("cuts", new List<string>(), false);
        foreach (var one in typed.Split(' ', StringSplitOptions.RemoveEmptyEntries).Append(""))
        {
            if (one.Length > 0 && !Words.Contains(one.ToLowerInvariant()))
            {
                name.Add(one);
                continue;
            }

            // A word that no name follows was meant for something.
            if (name.Count == 0 ? said : !named.TryAdd(word, string.Join(' ', name))) return HandFaults.TheirFilesUnreadable();
            (word, name, said) = (one.ToLowerInvariant(), [], true);
        }

        string? Of(string which) => named.GetValueOrDefault(which);
        return named.Count == 0 ? HandFaults.TheirFilesUnreadable() : new TheirFiles(Of("cuts"), Of("wall"), Of("system"), Of("prices"));
    }

    /// <summary>What of the free things fills those needs, with what is free: half of the time for either.</summary>
    /// <param name="yard">The yard.</param>
    /// <param name="opener">Opens a file by its path.</param>
    /// <param name="limits">How long it may take.</param>
    public Result<(WhatIsFree Free, TheirMatch Match)> Matched(YardFile yard, Func<string, Result<Stream>> opener, MatchLimits limits)
    {
        var half = limits with { Time = limits.Time / 2 };
        return Needs(yard, opener).Then(needs => new FreeToGo(yard).Asked().Answer(half).Then(free =>
            MatchTheirs.Of(free, needs, yard.Prices(), yard.Settings(), half).Then<(WhatIsFree, TheirMatch)>(found => (free, found))));
    }

    /// <summary>What they need, or everything that is wrong with the files.</summary>
    /// <param name="yard">The yard, which may know the wall's system.</param>
    /// <param name="opener">Opens a file for reading, or says why not.</param>
    public Result<TheirNeeds> Needs(YardFile yard, Func<string, Result<Stream>> opener)
    {
        if (Cuts is null && Wall is null) return HandFaults.NeedsMissing();
        if (System is not null && Wall is null) return HandFaults.SystemWithoutWall();
        Result<T> Open<T>(string path, Func<Stream, string, Result<T>> read) => opener(path).Then(stream =>
        {
            using (stream) return read(stream, path == "-" ? "standard input" : Path.GetFileName(path));
        });
        var read = Cuts is null ? Result<IReadOnlyList<Stage>>.Of([]) : Open(Cuts, (stream, name) => CutsFile.Read(stream, name));
        var book = Prices is null ? Result<PriceBook?>.Of(null) : Open(Prices, (stream, name) => PricesFile.Read(stream, name)).Then<PriceBook?>(known => Result<PriceBook?>.Of(known));
        var laid = Wall is null ? Result<LaidWall?>.Of(null) : Open(Wall, (stream, name) => SheetFile.ReadWall(stream, name)).Then(placed =>
            (System is null ? new ChangeSystems(yard).Find(placed.Sheet.System) : Open(System, (stream, name) => SheetFile.ReadSystem(stream, name)))
                .Then(known => LaidWall.Of(placed.Sheet, known, yard.Settings().Unit)).Then<LaidWall?>(wall => Result<LaidWall?>.Of(wall)));
        Fault[] faults = [.. read.Ok ? [] : read.Faults, .. book.Ok ? [] : book.Faults, .. laid.Ok ? [] : laid.Faults];
        return faults.Length > 0 ? Result<TheirNeeds>.Fail(faults) : new TheirNeeds(read.Value, laid.Value, book.Value);
    }
}
