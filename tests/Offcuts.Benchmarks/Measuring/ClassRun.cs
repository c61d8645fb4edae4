namespace Offcuts.Benchmarks.Measuring;

/// <summary>Every table of the results page from one run, class by class, each contender in its process.</summary>
internal static class ClassRun
{
    /// <summary>Measures, prints each table when it is there and writes the page; 1 where a claim was found to be wrong.</summary>
    public static int Run(Options options)
    {
        Console.WriteLine(options.Announcement());
        Console.WriteLine();
        var page = new ResultsPage(options);
        var violations = new List<string>();
        var workers = options.Contenders.ToDictionary(who => who, who => new Worker(options, who));
        try
        {
            foreach (var one in options.Classes())
            {
                var outcomes = workers.ToDictionary(of => of.Key, of => of.Value.Work(one, options.SecondsOf(one, of.Key), options.CountOf(one)));
                var rows = Enumerable.Range(0, options.CountOf(one)).Select(i => outcomes.Select(of => (of.Key, of.Value[i])).ToArray());
                var wrong = rows.SelectMany(row => Checks.Violations(row)).ToArray();
                violations.AddRange(wrong.Select(sentence => $"{one.Name}: {sentence}"));
                Console.WriteLine(page.Add(one, outcomes, wrong));
            }
        }
        finally
        {
            foreach (var worker in workers.Values) worker.Dispose();
        }

        foreach (var violation in violations) Console.Error.WriteLine($"WRONG: {violation}");
        page.Write(violations);
        return violations.Count == 0 ? 0 : 1;
    }
}
