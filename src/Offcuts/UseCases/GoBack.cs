using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Goes back to a backup by its number, or to a file; what is there now is kept as a backup of its own first.</summary>
public sealed class GoBack(string yardPath, DateOnly today)
{
    /// <summary>The file that is meant, or why there is none.</summary>
    public Result<string> Find(string? named)
    {
        if (string.IsNullOrWhiteSpace(named)) return KeepFaults.BackupNotNamed();
        if (int.TryParse(named, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            && new Backups(yardPath).All().FirstOrDefault(one => one.Number == number) is { } backup) return backup.Path;
        return File.Exists(named) ? named : KeepFaults.NoSuchBackup(named);
    }

    /// <summary>Does it and gives what was done. Throws <see cref="YardUnavailableException"/> where another program is saving all the while.</summary>
    public Result<string> To(string file) => new Restoring(yardPath, YardFile.UsualPatience).From(file, today).Then<string>(restored =>
        restored.KeptAs is { } kept
            ? $"the yard is as it was in {file}; what was there before is kept as backup {kept.Number}"
            : $"the yard is as it was in {file}");
}
