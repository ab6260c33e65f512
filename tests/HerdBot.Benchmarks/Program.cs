using HerdBot.Benchmarks;

// Everything is printed as it was measured, on the disk of the folder for temporary files. Arguments name what to run;
// without any all but the million messages, which take a minute or more.
const string Million = "million";
(string Name, Func<Task> Run)[] all =
[
    ("way", () => WholeWayBenchmarks.RunAsync(Console.Out)),
    ("reading", () => ReadingBenchmarks.RunAsync(Console.Out)),
    ("plan", () => Task.Run(() => PlanBenchmarks.Run(Console.Out))),
    ("due", () => Task.Run(() => DueBenchmarks.Run(Console.Out))),
    ("store", () => StoreBenchmarks.RunAsync(Console.Out)),
    (Million, () => Task.Run(() => MillionMessages.Run(Console.Out))),
];
if (args.FirstOrDefault(arg => all.All(one => one.Name != arg)) is { } unknown)
{
    Console.Error.WriteLine($"'{unknown}' is none of: {string.Join(", ", all.Select(one => one.Name))}");
    return 2;
}
foreach (var (_, run) in all.Where(one => args.Length == 0 ? one.Name != Million : args.Contains(one.Name)))
{
    await run();
}
return 0;
