using Offcuts.Core.Faults;
using Offcuts.Store;

namespace Offcuts.UseCases;

/// <summary>Looks through a yard and says what is wrong, and saves what can be read from a damaged one.</summary>
/// <param name="yardPath">The yard's file.</param>
/// <param name="clock">Tells the time of what is saved.</param>
/// <param name="onNetwork">True where it lies in a folder of the network; the system is asked where nothing is said.</param>
public sealed class CheckYard(string yardPath, TimeProvider clock, bool? onNetwork = null)
{
    /// <summary>What a check finds. Throws <see cref="YardUnavailableException"/> where the file is no yard, of a newer version or locked.</summary>
    public CheckReport Check() => YardCheck.Of(yardPath, YardFile.UsualPatience);

    /// <summary>What was found, line by line.</summary>
    public IEnumerable<string> Told(CheckReport found)
    {
        foreach (var wrong in found.Wrong) yield return wrong.Sentence;
        if (!found.Whole)
        {
            var backups = new Backups(yardPath).All();
            yield return $"{Words.Count(found.Wrong.Count, "thing")} wrong. offcuts check --save FOLDER saves all that can be read"
                + (backups.Count > 0 ? $"; offcuts restore {backups[0].Number} goes back to the backup of {backups[0].Day:yyyy-MM-dd}" : "; there is no backup");
        }
        else if (found.Old) yield return $"Whole, as a database. It is of version {found.Version}; the next time it is opened it is brought to this one, after a backup.";
        else yield return $"Whole: {Words.Count((int)found.Pieces, "piece")}, gone or not, and {found.Entries} {(found.Entries == 1 ? "entry" : "entries")} of history, each row as the history left it.";
        if (onNetwork ?? YardLocation.IsOnNetwork(yardPath)) yield return KeepFaults.OnNetwork(yardPath).Sentence;
    }

    /// <summary>Saves what can be read into a folder that is new or empty.</summary>
    public Result<Salvaged> Save(string folder) => Salvage.From(yardPath, folder, clock, YardFile.UsualPatience);

    /// <summary>What was saved, line by line.</summary>
    public static IEnumerable<string> Told(Salvaged saved)
    {
        foreach (var unread in saved.Unread) yield return unread.Sentence;
        yield return $"Saved {Words.Count((int)saved.Rows, "row")} into {saved.Yard}"
            + (saved.FromHistory > 0 ? $", {saved.FromHistory} of them from the history" : "")
            + (saved.LeftOut > 0 ? $"; {Words.Count((int)saved.LeftOut, "row")} fit no yard and stand in the tables beside it" : "");
    }
}
