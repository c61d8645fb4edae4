using System.Diagnostics;
using System.Globalization;

namespace Offcuts.Benchmarks.Keys;

/// <summary>
/// How long a person waits at the yard's place: each key of a scripted session on a yard of very many pieces, and, where a built program is named, from its start to
/// the first picture and to the first list. Fails where a goal is missed.
/// </summary>
internal static class KeyTimes
{
    private const double MostKeyMilliseconds = 50;

    private const double MostStartMilliseconds = 500;

    /// <summary>Measures, prints, and gives the exit status.</summary>
    /// <param name="pieces">How many pieces the yard has.</param>
    /// <param name="program">The program whose start is measured, or none.</param>
    public static int Run(int pieces, string? program)
    {
        Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
        var folder = Directory.CreateTempSubdirectory("offcuts-keys-").FullName;
        try
        {
            var yard = Path.Combine(folder, "yard.offcuts");
            var watch = Stopwatch.StartNew();
            LargeYard.Write(yard, pieces);
            Say($"{pieces} pieces written in {Seconds(watch.Elapsed)} s");
            var good = Keys(yard);
            if (program is not null) good &= StartTimes.Run(program, yard, MostStartMilliseconds);
            return good ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static bool Keys(string yard)
    {
        var watch = Stopwatch.StartNew();
        using var session = new KeySession(yard, 120, 40);
        Say($"read and shown in {Seconds(watch.Elapsed)} s");
        Warm(session);
        session.Keys.Clear();
        session.Answers.Clear();
        Script(session);
        var keys = session.Keys.Select(key => key.Took.TotalMilliseconds).Order().ToArray();
        var answers = session.Answers.Select(took => took.TotalMilliseconds).Order().ToArray();
        Say($"{keys.Length} keys: median {Of(keys, 0.5)} ms, 95 of 100 within {Of(keys, 0.95)} ms, longest {Of(keys, 1)} ms{Worked(session.Keys)}");
        foreach (var kind in session.Keys.GroupBy(key => key.Key.Length == 1 ? "letters" : key.Key).OrderByDescending(kind => kind.Count()))
        {
            var took = kind.Select(key => key.Took.TotalMilliseconds).Order().ToArray();
            Say($"  {kind.Key} x{took.Length}: median {Of(took, 0.5)} ms, longest {Of(took, 1)} ms{Worked([.. kind])}");
        }

        Say($"{answers.Length} answers of the yard shown: median {Of(answers, 0.5)} ms, longest {Of(answers, 1)} ms");
        session.Press("Ctrl+T");
        session.Type("trailer");
        watch.Restart();
        session.Press("Enter");
        var done = Array.Find(session.Text.Split('\n'), line => line.StartsWith("Put ", StringComparison.Ordinal)) ?? "NOT DONE";
        Say($"{done.Trim()}: saved, read again and shown in {Seconds(watch.Elapsed)} s");
        return keys[keys.Length / 2] <= MostKeyMilliseconds;
    }

    // What is compiled while it runs for the first time is no key's fault.
    private static void Warm(KeySession session)
    {
        session.Press("F2");
        session.Type("2x4 nails");
        session.Press("Esc", "Esc", "Down", "PageDown", "Tab", "Enter", "Enter", "Esc", "Esc", "Ctrl+O");
        session.Type("l");
        session.Press("Ctrl+O");
        session.Type("y");
    }

    // What a person does at a pile: narrows the list, looks through it, orders it, marks some and all.
    private static void Script(KeySession session)
    {
        for (var round = 0; round < 3; round++)
        {
            session.Type("2x4 fair 8'+ @north rack");
            session.Press("Down", "Down", "Down", "PageDown", "PageDown", "Ctrl+End", "Ctrl+Home", "Enter", "Down", "Down", "Enter");
            for (var i = 0; i < 12; i++) session.Press("Backspace");
            session.Press("Ctrl+O");
            session.Type("l");
            session.Press("Tab", "Tab", "Tab", "Esc", "Esc", "Esc", "Esc");
            session.Type("bowed müller");
            session.Press("Esc", "Esc", "Ctrl+O");
            session.Type("m");
            session.Press("PageDown", "Ctrl+End", "Ctrl+Home", "Ctrl+O");
            session.Type("p");
            session.Press("F11", "Down", "PageDown", "Up", "F12", "Tab", "Tab", "Tab", "F10", "F2");
            session.Press("Ctrl+K", "Ctrl+K", "Ctrl+W", "Ctrl+W", "Ctrl+O");
            session.Type("y");
        }

        session.Type("2x12 poor 14'+ @barn");
        session.Press("Ctrl+W");
    }

    internal static void Say(string line) => Console.WriteLine(line);

    internal static string Seconds(TimeSpan time) => time.TotalSeconds.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Worked(IReadOnlyList<KeyTime> keys)
    {
        var worked = keys.Select(key => key.Worked).OfType<TimeSpan>().Select(time => time.TotalMilliseconds).Order().ToArray();
        return worked.Length == 0 ? "" : $"; work of the screen's thread median {Of(worked, 0.5)} ms, longest {Of(worked, 1)} ms";
    }

    private static string Of(double[] sorted, double share) => sorted.Length == 0 ? "-" : sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))].ToString("0.0", CultureInfo.InvariantCulture);
}
