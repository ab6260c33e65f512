using System.Diagnostics;
using System.Globalization;
using System.Runtime;
using HerdBot.App.Records;
using HerdBot.Core.Reading;

namespace HerdBot.Benchmarks;

/// <summary>A million random and mutated messages, each read in the circumstances of some message of the corpus, in a herd of 300.</summary>
internal static class MillionMessages
{
    private const int Messages = 1_000_000;
    private const int Seed = 20270418;
    private const int Slow = 50;
    private const int Told = 5;

    private sealed record Reading(string Text, CorpusLine Around, double Milliseconds, double Collected, double Compiled);

    /// <summary>Reads them and prints exceptions, the longest times and what the memory does.</summary>
    public static void Run(TextWriter output)
    {
        var garble = new Garble(ReadingBenchmarks.Corpus(), Seed);
        output.WriteLine($"{Messages:N0} random and mutated messages, seed {Seed}:");
        var (faults, slow) = (0, 0);
        var longest = new PriorityQueue<Reading, double>();
        for (var n = 0; n < Messages; n++)
        {
            if (n is Messages / 100 or Messages / 2)
            {
                Memory(output, n);
            }
            var (text, around) = garble.Next();
            var (collected, compiled, start) = (GC.GetTotalPauseDuration(), JitInfo.GetCompilationTime(currentThread: true), Stopwatch.GetTimestamp());
            faults += Throws(text, around, output) ? 1 : 0;
            var taken = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            slow += taken > Slow ? 1 : 0;
            if (longest.Count < Told || taken > longest.Peek().Milliseconds)
            {
                longest.Enqueue(new(text, around, taken, (GC.GetTotalPauseDuration() - collected).TotalMilliseconds, (JitInfo.GetCompilationTime(currentThread: true) - compiled).TotalMilliseconds), taken);
                _ = longest.Count > Told ? longest.Dequeue() : null;
            }
        }
        Memory(output, Messages);
        output.WriteLine($"  {faults} exceptions; {slow} messages over {Slow} ms by the clock on the wall; the longest of all:");
        foreach (var (text, around, milliseconds, collected, compiled) in longest.UnorderedItems.Select(item => item.Element).OrderByDescending(one => one.Milliseconds))
        {
            var again = Enumerable.Range(0, 20).Min(_ => Again(text, around));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"    {milliseconds:0.0} ms, in it {collected:0.0} of collecting and {compiled:0.0} of compiling; {again:0.00} ms when read again (best of 20); {text.Length} characters"));
        }
    }

    private static double Again(string text, CorpusLine around)
    {
        var start = Stopwatch.GetTimestamp();
        Reader.Read(text, around.Context);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static bool Throws(string text, CorpusLine around, TextWriter output)
    {
        try
        {
            Reader.Read(text, around.Context);
            return false;
        }
        catch (Exception fault)
        {
            output.WriteLine($"  {fault.GetType().Name} in '{text}' around {around.Id}: {fault.StackTrace?.Split('\n')[0].Trim()}");
            return true;
        }
    }

    private static void Memory(TextWriter output, int after)
    {
        var live = GC.GetTotalMemory(forceFullCollection: true);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  after {after:N0}: working set {Environment.WorkingSet / 1048576.0:0.0} MB, live {live / 1048576.0:0.00} MB"));
    }
}
