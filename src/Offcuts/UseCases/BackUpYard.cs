using System.Globalization;
using Offcuts.Core.Faults;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Makes a backup because somebody asked for one, or tells which there are.</summary>
public sealed class BackUpYard(string yardPath, DateOnly today)
{
    /// <summary>Makes one in the yard's own folder of backups, or in a file that is not there yet. Gives what was done.</summary>
    public Result<string> Make(string? file)
    {
        if (!File.Exists(yardPath)) return KeepFaults.NothingToBackUp(yardPath);
        return file is null
            ? new Backups(yardPath).Make(BackupKind.ByHand, today, YardFile.UsualPatience).Then<string>(made => $"backup {made.Number} is made and checked: {made.Path}")
            : Backups.CopyTo(yardPath, file, YardFile.UsualPatience).Then<string>(_ => $"backup is made and checked: {file}");
    }

    /// <summary>Every backup, the latest first.</summary>
    public IReadOnlyList<Backup> All() => new Backups(yardPath).All();

    /// <summary>Why a backup was made, in words.</summary>
    public static string Of(BackupKind kind) => kind switch
    {
        BackupKind.Daily => "before the first change of the day",
        BackupKind.Upgrade => "before a newer version of the file",
        BackupKind.ByHand => "asked for",
        BackupKind.Restore => "what was there before going back",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>How large a file is, in words.</summary>
    public static string Size(long bytes) => bytes < 1_000_000
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, bytes / 1000)} kB")
        : string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0.0} MB");
}
