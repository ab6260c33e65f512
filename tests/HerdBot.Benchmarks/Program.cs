using HerdBot.Benchmarks;

// Everything is printed as it was measured, on the disk of the folder for temporary files.
await WholeWayBenchmarks.RunAsync(Console.Out);
await ReadingBenchmarks.RunAsync(Console.Out);
PlanBenchmarks.Run(Console.Out);
DueBenchmarks.Run(Console.Out);
await StoreBenchmarks.RunAsync(Console.Out);
