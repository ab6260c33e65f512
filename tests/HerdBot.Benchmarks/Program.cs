using HerdBot.Benchmarks;

// Everything is printed as it was measured, on the disk of the folder for temporary files.
switch (args)
{
    case []:
        await WholeWayBenchmarks.RunAsync(Console.Out);
        await ReadingBenchmarks.RunAsync(Console.Out);
        PlanBenchmarks.Run(Console.Out);
        await StoreBenchmarks.RunAsync(Console.Out);
        return 0;
    case ["reading"]:
        await ReadingBenchmarks.RunAsync(Console.Out);
        return 0;
    default:
        Console.Error.WriteLine("Nothing (all but the long runs), or: reading");
        return 2;
}
