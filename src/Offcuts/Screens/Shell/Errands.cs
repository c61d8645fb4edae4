using Offcuts.Core.Faults;
using Offcuts.Core.Yard;
using Offcuts.Matching;
using Offcuts.Print;
using Offcuts.Store;
using Offcuts.UseCases;

namespace Offcuts.Screens;

/// <summary>Each errand by its use case.</summary>
internal sealed class Errands(YardFile yard, Surroundings world)
{
    // Carrying out reckons what the cuts would have cost all new: seconds at most, or the best bound by then.
    private static readonly TimeSpan LedgerTime = TimeSpan.FromSeconds(10);

    /// <summary>Does it and tells how it went. Throws where the yard or a file can't be used, and where a long one is stopped.</summary>
    public News Do(Errand errand, LongWork work) => errand switch
    {
        Errand.LookUp(var code) => new News.LookedUp(new PieceCard(code, [.. Details.History(yard, code)], Family(code))),
        Errand.Mark(var codes, var state) => Told(errand, new ChangePieces(yard, work).Mark(codes, state)),
        Errand.Judge(var codes, var condition) => Told(errand, new ChangePieces(yard, work).Judge(codes, condition)),
        Errand.Strap(var strapped, var bundle, var at) => Told(errand, new ChangeLabels(yard).Strap(strapped, bundle, at)),
        Errand.PutAt(var codes, var place) => Told(errand, new ChangePieces(yard, work).PutAt(codes, place)),
        Errand.Reserve(var codes, var stage) => Told(errand, new ChangePieces(yard, work).Reserve(codes, stage)),
        Errand.Free(var codes) => Told(errand, new ChangePieces(yard, work).Free(codes)),
        Errand.FreeAll(var stage) => Told(errand, new ChangePieces(yard, work).FreeAll(stage)),
        Errand.QueueLabels(var codes) => Told(errand, new ChangePieces(yard, work).QueueLabels(codes)),
        Errand.Catalogue catalogue => Catalogued(catalogue, new CataloguePieces(yard).Save([catalogue.Batch], catalogue.NewNames, catalogue.OddSizes)),
        Errand.Correct(var line, var text, var batch) => new CorrectLine(yard).Do(line, text, batch) is var right && right.TryGet(out var corrected) ? new News.Done(errand, corrected.Told) { Line = corrected.Line } : new News.Refused(errand, right.Faults),
        Errand.PrintLabels(var wish) => Told(errand, NewFile(wish.File).Then(file => new PrintLabels(yard, world.Today).Print(null, wish.Layout, wish.Start, file))),
        Errand.PrintBlanks(var count, var wish) => Told(errand, NewFile(wish.File).Then(file => new PrintLabels(yard, world.Today).PrintBlanks(count, wish.Layout, wish.Start, file))),
        Errand.AddStage(var name, var day) => Told(errand, new ChangeStages(yard).Add(name, day)),
        Errand.AddNeed add => Told(errand, new ChangeStages(yard).AddNeeds(add.Stage, [add.Line], add.NewNames, add.OddSizes)),
        Errand.ReplaceNeed(var stage, var need, var line) => Told(errand, new ChangeStages(yard).ReplaceNeed(stage, need, line)),
        Errand.DropNeed(var stage, var need) => Told(errand, new ChangeStages(yard).DropNeed(stage, need)),
        Errand.RemoveStage(var stage) => Told(errand, new ChangeStages(yard).Remove(stage)),
        Errand.SetDay(var stage, var day) => Told(errand, new ChangeStages(yard).SetDate(stage, day)),
        Errand.RenameStage(var stage, var to) => Told(errand, new ChangeStages(yard).Rename(stage, to)),
        Errand.MoveStage(var stage, var position) => Told(errand, new ChangeStages(yard).Move(stage, position)),
        Errand.Keep(var plan, var at) => new KeepPlan(yard).Keep(plan, at) is var kept && kept.TryGet(out var done) ? new News.Kept(done) : new News.Refused(errand, kept.Faults),
        Errand.CarryOut(var plan, var acts, var hardware) => Cut(errand, plan, new CarryOut(yard, world.Today, Limits).Do(plan, acts, hardware)),
        Errand.DropPlan(var plan) => Told(errand, new DropPlan(yard, work).Drop(plan)),
        Errand.OpenWall(var wall) => new OpenWall(yard, world.Today).Of(wall) is var opened && opened.TryGet(out var wallCard) ? new News.WallOpened(wallCard) : new News.Refused(errand, opened.Faults),
        Errand.DrawWall(var wall) => new OpenWall(yard, world.Today).Of(wall) is var drawn && drawn.TryGet(out var card) ? new News.WallDrawn(card) : new News.Refused(errand, drawn.Faults),
        Errand.FindFit(var need) => new FitPlace(yard).Of(need) is var fits && fits.TryGet(out var candidates) ? new News.Fitting(new FitsFound(need, candidates) { Unlined = new FitPlace(yard).Unlined(need) }) : new News.Refused(errand, fits.Faults),
        Errand.KeepWall(var filled) => new FillWall(yard).Keep(filled) is var keep && keep.TryGet(out var number) ? new News.WallKept(filled.Kept.Sheet.Name, number) : new News.Refused(errand, keep.Faults),
        Errand.StackWall(var wish) => new StackWall(yard, world.Today, Limits).Do(wish) is var stacked && stacked.TryGet(out var stood) ? new News.Stacked(stood) : new News.Refused(errand, stacked.Faults),
        Errand.SaveSheet(var kind, var stage, var edit) => Told(errand, kind == SheetKind.Wall ? new ChangeWalls(yard, work).Save(stage, edit) : new ChangeSystems(yard, work).Save(edit)),
        Errand.AskToEnter(var wall) => new ChangeWalls(yard).NewNames(wall) is var asked && asked.TryGet(out var strange) ? new News.WouldEnter(wall, strange) : new News.Refused(errand, asked.Faults),
        Errand.EnterWall(var wall, var meant) => Told(errand, new ChangeWalls(yard).Enter(wall, name => meant.Contains(name.Material.Name)).Then<string>(entered => entered.InShort)),
        Errand.MoveWall(var wall, var stage) => Told(errand, new ChangeWalls(yard, work).Move(wall, stage)),
        Errand.DropWall(var wall) => Told(errand, new ChangeWalls(yard, work).Drop(wall)),
        Errand.DropSystem(var system) => Told(errand, new ChangeSystems(yard).Drop(system)),
        Errand.PrintWall(var wall, var plan, var path) printed => Told(errand, NewFile(path).Then(file => new SeeWall(yard).Pdf(wall, plan, world.Today, printed.Steps).Then(pdf => Written(pdf, file)))),
        Errand.PrintSheet(var plan, var path) => Told(errand, NewFile(path).Then(file => Sheet(plan, file))),
        Errand.SetPrice(var line, var newNames, var oddSizes) => Told(errand, new ChangePrices(yard).Set(line, world.Today, newNames, oddSizes).Then<string>(told => told.Split('\n')[0])),
        Errand.PriceStillSo(var price) => Told(errand, new ChangePrices(yard).StillSo(price, world.Today)),
        Errand.RemovePrice(var price) => Told(errand, new ChangePrices(yard).Remove(price)),
        Errand.SetSetting(var line) => Told(errand, new ChangeSettings(yard).Set(line)),
        Errand.CountAgain(var count, var partly) => new CountYard(yard, world.Today).Reckon(count.Files, count.Wish with { Partly = partly }) is var again && again.TryGet(out var reckoned) ? new News.Counted(reckoned) : new News.Refused(errand, again.Faults),
        Errand.AcceptCount(var count) => Told(errand, new CountYard(yard, world.Today).Accept(count)),
        Errand.LabelPlace(var place) => Told(errand, new ChangeLabels(yard).LabelPlaces([place])),
        Errand.SetBed(var line) => Told(errand, new MakeLoads(yard).SetBed(line)),
        Errand.ConfirmHand(var id, var receipt) => Told(errand, receipt.Length == 0 ? new HandOverPieces(yard).ConfirmByWord(id) : new HandOverPieces(yard).Confirm(receipt)),
        Errand.HandBack(var id) => Told(errand, AllBack(id)),
        Errand.PreviewLabel(var code, var layout) => new PrintLabels(yard, world.Today).Preview(code, layout, world.Ascii) is var preview && preview.TryGet(out var lines) ? new News.Previewed(code, layout, lines) : new News.Refused(errand, preview.Faults),
        Errand.VoidLabel(var code) => Told(errand, new ChangeLabels(yard).Void([code])),
        Errand.OpenBundle(var code) => Told(errand, new ChangeLabels(yard).Open(code)),
        Errand.HandPart(var id, var typed) => Told(errand, BackWords.Back(typed, yard).Then(back => new HandOverPieces(yard).Back(back.Pieces, back.Counted, place: null, only: id))),
        Errand.HandSettle settle => Settled(settle),
        Errand.HandList list => Told(errand, NewFile(list.File).Then(file => Listed(list, file))),
        Errand.HandOver(var wish, var free) => Told(errand, Handed(wish, free)),
        Errand.TakeBack(var seen) => Told(errand, Unseen(yard.Undo(seen, Through(work)), seen, "taken back").Then<string>(entry => entry.What)),
        Errand.DoAgain(var seen) => Told(errand, Unseen(yard.Redo(seen, Through(work)), seen, "done again").Then<string>(entry => entry.What)),
        _ => throw new ArgumentOutOfRangeException(nameof(errand), errand, "the shell does this itself"),
    };

    private static Action<int, int> Through(LongWork work) => (done, of) => work.Tell("row by row", done, of);

    // What another program did meanwhile is told before it is taken back.
    private Result<HistoryEntry> Unseen(Result<HistoryEntry> done, long seen, string what) =>
        !done.Ok && done.Fault == StoreFaults.ChangedMeanwhile() && yard.History(1) is [{ } last] && last.Number != seen
            ? YardFaults.ChangeUnseen(last.What, what)
            : done;

    private News Settled(Errand.HandSettle errand)
    {
        var read = BackWords.Settled(errand.What, yard);
        if (!read.TryGet(out var wish)) return new News.Refused(errand, read.Faults);
        var settle = new SettleLoan(yard);
        if (!errand.Meant && settle.Slips(wish) is { Count: > 0 } slips) return new News.Refused(errand with { Slip = true }, slips);
        return Told(errand, settle.Do(wish, only: errand.Id, newNames: errand.Meant, oddSizes: errand.Meant).Then<string>(done => done.What));
    }

    private Result<string> Handed(HandWish wish, WhatIsFree free)
    {
        if (wish.File.Path is { } path)
        {
            var file = NewFile(path);
            if (!file.TryGet(out var there)) return Result<string>.Fail(file.Faults);
            wish = wish with { File = wish.File with { Path = there } };
        }

        return new HandOverPieces(yard).Do(wish, free).Then<string>(done => $"{done.What}: hand-over {done.Id}{(done.Remark.Length > 0 ? $"; {done.Remark}" : "")}{(wish.File.Path is { } written ? $"; wrote {written}" : "")}");
    }

    private Result<string> Listed(Errand.HandList list, string file)
    {
        if (list.Id > 0) return HandSheet.Write(file, yard, list.Id, world.Today);
        HandSheet.Write(file, yard, null, new MakeLoads(yard).Things(list.Pieces.Select(yard.Piece).OfType<Piece>(), list.Counted, list.Weights), list.Loads, world.Today);
        return $"wrote {file}";
    }

    /// <summary>A file that somebody named on the screen, opened for reading, or why there is none.</summary>
    public Result<Stream> Opened(string typed)
    {
        var path = Expanded(typed);
        return File.Exists(path) ? File.OpenRead(path) : Directory.Exists(path) ? CommandFaults.IsFolder(typed) : CommandFaults.NoSuchFile(typed);
    }

    private string Expanded(string typed)
    {
        var home = world.Environment("HOME");
        return typed.StartsWith("~/", StringComparison.Ordinal) && home is { Length: > 0 } ? System.IO.Path.Combine(home, typed[2..]) : typed;
    }

    private Result<string> AllBack(int id)
    {
        if (yard.HandOvers().FirstOrDefault(one => one.Id == id) is not { } lent) return HandFaults.NoSuchHandOver(id);
        var away = lent.Items.Where(item => item.Away > 0).ToArray();
        return new HandOverPieces(yard).Back(
            [.. away.Where(item => yard.Bin(item.Code) is null).Select(item => item.Code)],
            [.. away.Where(item => yard.Bin(item.Code) is not null).Select(item => new Counted(item.Code, item.Away))],
            place: null,
            only: id);
    }

    private MatchLimits Limits => new() { Time = LedgerTime, Clock = world.Clock };

    private static News Told(Errand errand, Result<string> result) =>
        result.TryGet(out var told) ? new News.Done(errand, told) : new News.Refused(errand, result.Faults);

    private static News Cut(Errand errand, int plan, Result<CarriedOut> result) =>
        result.TryGet(out var done) ? new News.Cut(plan, done) : new News.Refused(errand, result.Faults);

    private static News Catalogued(Errand.Catalogue errand, Result<Catalogued> result) => result.TryGet(out var saved)
        ? new News.Done(errand, Saved(saved)) { Line = SavedLine.Of(errand.Text, errand.Batch, saved) }
        : new News.Refused(errand, result.Faults);

    private static string Saved(Catalogued saved)
    {
        const int most = 4;
        var codes = saved.Pieces.Select(piece => piece.Code).Concat(saved.Bins.Select(bin => bin.Code)).ToArray();
        var named = string.Join(", ", codes.Take(most)) + (codes.Length > most ? $" and {codes.Length - most} more" : "");
        return $"{saved.What}: {named}";
    }

    private IReadOnlyList<string> Family(Code code) =>
        yard.Family(code) is { } family ? [.. FamilyText.Of(family, yard.Settings().Unit)] : [];

    private Result<string> Sheet(int plan, string file)
    {
        if (yard.Plan(plan) is not { } kept) return PlanFaults.NoSuchPlan(plan);
        WholeFile.Write(file, stream => stream.Write(CutSheet.Pdf(kept, SheetOptions.For(yard, kept, world.Today))));
        return $"wrote {file}";
    }

    private static Result<string> Written(byte[] pdf, string file)
    {
        WholeFile.Write(file, stream => stream.Write(pdf));
        return $"wrote {file}";
    }

    private static string NextFree(string path)
    {
        var (folder, name, end) = (System.IO.Path.GetDirectoryName(path)!, System.IO.Path.GetFileNameWithoutExtension(path), System.IO.Path.GetExtension(path));
        for (var i = 2; ; i++)
        {
            var next = System.IO.Path.Combine(folder, $"{name}-{i}{end}");
            if (!File.Exists(next)) return next;
        }
    }

    // From the screen no file is ever written over: a name typed in a hurry must not cost somebody a file.
    private Result<string> NewFile(string typed)
    {
        if (typed.Length == 0 || typed.Contains('\0', StringComparison.Ordinal)) return CommandFaults.NamesNoFile(typed);
        var path = System.IO.Path.GetFullPath(Expanded(typed));
        if (File.Exists(path)) return new Fault($"{path} is there already; write another name, {System.IO.Path.GetFileName(NextFree(path))} is free");
        return Directory.Exists(System.IO.Path.GetDirectoryName(path)) ? path : new Fault($"there is no folder {System.IO.Path.GetDirectoryName(path)}");
    }
}
