namespace Offcuts.Core.Faults;

/// <summary>Every sentence about keeping a yard safe: its backups, going back to one, and what is wrong in a file.</summary>
public static class KeepFaults
{
    public static Fault NoBackupMade(string why) =>
        new($"no backup was made today: {why}; what you do is saved all the same");

    public static Fault NoRoomForBackup(string folder) => new($"there is too little room left for one in {TextRules.Harmless(folder)}");

    public static Fault BackupFolderShut(string folder) => new($"{TextRules.Harmless(folder)} can't be written");

    public static Fault BackupNotWhole(string found) => new($"the copy came out damaged ({TextRules.Harmless(found)}) and was thrown away");

    public static Fault BackupFails(string folder) => new($"the disk of {TextRules.Harmless(folder)} does not answer as it should");

    public static Fault ThereAlready(string path) =>
        new($"{TextRules.Harmless(path)} is there already; a backup is never written over anything");

    public static Fault NothingToBackUp(string path) => new($"there is no yard at {TextRules.Harmless(path)} to make a backup of");

    public static Fault NoSuchBackup(string name) =>
        new($"there is no backup and no file \"{TextRules.Harmless(name)}\"; offcuts backup --list shows what there is");

    public static Fault BackupNotNamed() =>
        new("say which: the number of a backup, or a file; offcuts backup --list shows what there is");

    public static Fault RestoreFromItself(string path) => new($"{TextRules.Harmless(path)} is the yard itself");

    public static Fault CanNotRestore(string path, string why) =>
        new($"{TextRules.Harmless(path)} is not gone back to: {TextRules.Harmless(why)}; the yard is as it was");

    public static Fault CanNotSave(string path, string why) =>
        new($"nothing is saved of {TextRules.Harmless(path)}: {TextRules.Harmless(why)}; the file is as it was");

    public static Fault FolderNotEmpty(string folder) =>
        new($"{TextRules.Harmless(folder)} holds something already; name a folder that is new or empty");

    public static Fault DatabaseWrong(string found) => new($"the database says: {TextRules.Harmless(found)}");

    public static Fault RowsUnread(string table, long rows) =>
        new($"of table {table}, {(rows == 1 ? "1 row" : $"{rows} rows")} can't be read");

    public static Fault TableUnread(string table) => new($"table {table} can't be read");

    public static Fault RuleGone(string name) => new($"the file's own rule {TextRules.Harmless(name)} is gone");

    public static Fault RuleOther(string name) => new($"the file's own rule {TextRules.Harmless(name)} was changed");

    public static Fault RuleStrange(string name) => new($"the file has a part that is none of ours: {TextRules.Harmless(name)}");

    public static Fault PartUnread(string what, string why) => new($"{what} can't be understood: {TextRules.Harmless(why)}");

    public static Fault Overcut(string code) => new($"more was cut from {code} than there is of it");

    public static Fault FamilyCircle(string code) => new($"{code} is cut from itself");

    public static Fault CodeTwice(string code) => new($"the code {TextRules.Harmless(code)} belongs to two things");

    public static Fault CodeWrong(string code) => new($"the code {TextRules.Harmless(code)} has a wrong check character");

    public static Fault BinBelowZero(string code) => new($"bin {TextRules.Harmless(code)} holds less than nothing");

    public static Fault ReservedForNothing(string code) => new($"{TextRules.Harmless(code)} is reserved, but for no stage, or is not reserved and kept for one");

    public static Fault LabelOfNothing(string code) => new($"a label waits for {TextRules.Harmless(code)}, which nothing has");

    public static Fault RefersToNothing(string table, long row, string to) => new($"row {row} of {table} speaks of something in {to} that is not there");

    public static Fault EntryLeftOpen() => new("a change was left open");

    public static Fault HistoryGap(long number) => new($"entry {number} of the history is missing");

    public static Fault ChangeWithoutEntry(long number) => new($"what entry {number} of the history did is there, but not the entry");

    public static Fault StepsOfPlan(long plan) => new($"plan {plan} has another number of steps than of pieces");

    public static Fault NotAsHistorySays(string table, long row, string column) =>
        new($"row {row} of {table} is not as the history left it: {column} is another");

    public static Fault GoneAgainstHistory(string table, long row) => new($"row {row} of {table} is gone, but the history has it");

    public static Fault ThereAgainstHistory(string table, long row) => new($"row {row} of {table} is there, but the history knows nothing of it");

    public static Fault AndMore(long more) => new($"and {more} more of the kind");

    /// <summary>Where the yard lies in a folder of the network.</summary>
    public static Fault OnNetwork(string path) =>
        new($"{TextRules.Harmless(path)} lies in a folder of the network: where its locks don't hold, two programs at once can spoil it; work in it from one machine at a time, and keep backups on a disk of your own with: offcuts backup FILE");
}
