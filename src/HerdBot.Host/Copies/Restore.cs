using System.Globalization;
using HerdBot.App.Ports;
using HerdBot.Host.LiteDb;

namespace HerdBot.Host.Copies;

/// <summary>Puts a data file in place again: from a backup, or anew from the lines of the second copy.</summary>
internal static class Restore
{
    private const int AtOnce = 256;

    /// <summary>Restores, and says plainly what was done.</summary>
    /// <param name="from">A backup, a folder of lines, or one file of them.</param>
    /// <param name="data">The data file.</param>
    /// <param name="replace">Whether a data file that is there is moved aside; else it is left, and nothing is done.</param>
    /// <param name="time">The clock, for the names of what is moved aside.</param>
    /// <param name="report">Takes the sentences.</param>
    /// <param name="cancellation">Gives up; the data file is as it was then.</param>
    /// <exception cref="DataFileException">It could not be done; the data file is as it was.</exception>
    public static async Task RunAsync(string from, string data, bool replace, TimeProvider time, TextWriter report, CancellationToken cancellation = default)
    {
        data = Path.GetFullPath(data);
        if (File.Exists(data) && !replace)
        {
            throw new DataFileException($"The data file {data} is there. Nothing was changed. With --replace it is moved aside first.");
        }
        var draft = data + ".restoring";
        Clear(draft);
        try
        {
            await FillAsync(from, draft, report, cancellation);
            var found = await DailyBackups.CountAsync(draft, cancellation);
            Swap(draft, data, Stamp.Of(time), report);
            await report.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"The data file {data} is in place: {found.Events} events in {found.Commits} commits, opened and counted."));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new DataFileException($"It could not be restored: {failure.Message} The data file is as it was.", failure);
        }
        finally
        {
            Clear(draft);
        }
    }

    private static async Task FillAsync(string from, string draft, TextWriter report, CancellationToken cancellation)
    {
        if (Directory.Exists(from) || from.EndsWith(".jsonl", StringComparison.OrdinalIgnoreCase))
        {
            await RebuildAsync(from, draft, report, cancellation);
        }
        else if (File.Exists(from))
        {
            File.Copy(from, draft);
        }
        else
        {
            throw new DataFileException($"There is no {from}. Name a backup, or the folder with the events-….jsonl files.");
        }
    }

    /// <summary>Reads line by line; the first that does not follow from those before it ends it, and is reported.</summary>
    private static async Task RebuildAsync(string from, string draft, TextWriter report, CancellationToken cancellation)
    {
        var lines = Directory.Exists(from) ? new CommitLines(from).All() : File.ReadLines(from).Select((text, index) => (File: from, Number: index + 1, Text: text));
        await using var store = LiteDbHerdStore.Open(draft);
        var taken = 0;
        foreach (var share in lines.Chunk(AtOnce))
        {
            var written = share.Select(line => (line.File, line.Number, Task: AppendAsync(store, line.Text, cancellation))).ToList();
            foreach (var line in written)
            {
                try
                {
                    await line.Task;
                    taken++;
                }
                catch (Exception odd) when (odd is FormatException or ArgumentException or StoreConflictException or StoreDuplicateException)
                {
                    await Task.WhenAll(written.Select(one => one.Task.ContinueWith(_ => { }, TaskScheduler.Default)));
                    await report.WriteLineAsync($"Line {line.Number} of {line.File} cannot be taken: {odd.Message} What stands after it in the same group is missing.");
                }
            }
        }
        await report.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"{taken} lines were read."));
        if (taken == 0)
        {
            throw new DataFileException($"There is nothing in {from} to rebuild from. The data file is as it was.");
        }
    }

    private static async Task AppendAsync(LiteDbHerdStore store, string text, CancellationToken cancellation) =>
        await store.AppendAsync(CommitLine.Read(text).Commit, cancellation);

    private static void Swap(string draft, string data, string stamp, TextWriter report)
    {
        foreach (var old in new[] { data, DataFiles.LogOf(data) }.Where(File.Exists))
        {
            // Opened for this process alone first: a running bot must not lose the file under its feet.
            using (new DurableFile(old, FileMode.Open))
            {
            }
            File.Move(old, $"{old}.replaced-{stamp}");
            report.WriteLine($"The old {old} is {old}.replaced-{stamp} now.");
        }
        File.Move(draft, data);
        DurableFile.SyncFolderOf(data);
    }

    private static void Clear(string draft)
    {
        File.Delete(draft);
        File.Delete(DataFiles.LogOf(draft));
    }
}
