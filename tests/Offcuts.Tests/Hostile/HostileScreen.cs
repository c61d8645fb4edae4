using Offcuts.Screens;
using Offcuts.Store;

namespace Offcuts.Tests.Hostile;

/// <summary>
/// Lines typed on the full screen, at every place and as the answer to every question that a place asks; without a terminal, by what the keys mean. Only
/// where a file is to be written the answer is Esc: a name that somebody types themselves says where they want it.
/// </summary>
internal sealed class HostileScreen(Random random, HostileText text)
{
    private static readonly Place[] Places = Enum.GetValues<Place>();

    private static readonly Topic[] Files = [Topic.LabelFile, Topic.BlankFile, Topic.SheetFile, Topic.WallFile, Topic.HandFile];

    /// <summary>The same typing for the same seed.</summary>
    public static HostileScreen Drawn(int seed)
    {
        var random = new Random(seed);
        return new HostileScreen(random, new HostileText(random));
    }

    /// <summary>Types on a yard's screen; what steers a terminal in what is shown then, or null.</summary>
    public string? Type(YardFile yard, Surroundings world)
    {
        var shell = new Shell(yard, world, new AtOnce()) { MatchTime = TimeSpan.FromMilliseconds(50) };
        for (var i = 0; i < 4; i++)
        {
            shell.Take(new Intent.GoTo(Places[random.Next(Places.Length)]));
            if (random.Next(2) == 0) Press(shell);
            for (var lines = 1 + random.Next(3); lines > 0; lines--)
            {
                if (shell.State.Line.Ask is Ask.Write write && Files.Contains(write.Topic)) shell.Take(new Intent.Escape());
                else if (shell.State.Line.Ask is Ask.Choose || shell.State.Ask is not null) shell.Take(random.Next(2) == 0 ? new Intent.Answer("ynagls123"[random.Next(9)]) : new Intent.Escape());
                else if (random.Next(8) == 0) shell.Take(new Intent.Paste([Line(), Line(), Line()]));
                else
                {
                    shell.Take(new Intent.Type(Line()));
                    shell.Take(new Intent.Enter());
                }

                if (Shown(shell.State).FirstOrDefault(HostileRun.Steers) is { } steers) return steers;
            }
        }

        return null;
    }

    private string Line() => random.Next(8) switch
    {
        0 => text.CatalogueLine(),
        1 => text.NeedLine(),
        2 => text.PriceLine(),
        3 => text.Code(),
        4 => text.SystemSheet().Split('\n')[0],
        5 => text.WallSheet().Split('\n')[^1],
        6 => $"{text.Harm()} 12' {text.Harm()} lb",
        _ => text.Harm(),
    };

    private void Press(Shell shell)
    {
        var offered = ShellKeys.Now(shell.State).Select(use => use.Means).Where(means => means is not Intent.Leave).ToArray();
        if (offered.Length > 0) shell.Take(offered[random.Next(offered.Length)]);
    }

    private static IEnumerable<string> Shown(ShellState state) =>
        ShellRows.Reading(state, 80).Concat(ShellRows.Said(state, 80)).Concat(ShellRows.Foot(state, 80)).Append(ShellRows.Head(state, 80)).Select(row => row.Text).Append(ShellRows.Label(state));

    private sealed class AtOnce : IHands
    {
        public void Away(Action work) => work();

        public void Apart(Action work) => work();

        public void Home(Action work) => work();
    }
}
