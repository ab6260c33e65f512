using HerdBot.Host.LiteDb;

namespace HerdBot.Host.Copies;

/// <summary>A backup that was made, opened and counted.</summary>
/// <param name="Path">The file.</param>
/// <param name="Commits">How many commits it holds.</param>
/// <param name="Events">How many events.</param>
internal sealed record Backup(string Path, long Commits, long Events);

/// <summary>A backup a day, the newest fourteen kept. One that cannot be opened again, or is short, counts for nothing.</summary>
/// <param name="store">What is backed up.</param>
/// <param name="folder">Where to.</param>
/// <param name="time">The clock.</param>
internal sealed class DailyBackups(LiteDbHerdStore store, string folder, TimeProvider time)
{
    private const int Kept = 14;
    private const string Prefix = "backup-";
    private const string Suffix = ".db";
    private static readonly TimeSpan Day = TimeSpan.FromDays(1);

    /// <summary>The backups, oldest first.</summary>
    public IReadOnlyList<string> Files => Directory.Exists(folder)
        ? [.. Directory.GetFiles(folder, $"{Prefix}*{Suffix}").Where(file => At(file) is not null).Order(StringComparer.Ordinal)] : [];

    /// <summary>Makes one where the last is a day old or older; null where none is due, or there is nothing to back up.</summary>
    /// <exception cref="DataFileException">It could not be made, or does not hold what it should. It is deleted again.</exception>
    public async Task<Backup?> MakeAsync(CancellationToken cancellation)
    {
        var newest = Files.Select(At).LastOrDefault();
        if ((newest is { } last && time.GetUtcNow() - last < Day && last <= time.GetUtcNow()) || await store.HeadPositionAsync(cancellation) == 0)
        {
            return null;
        }
        Directory.CreateDirectory(folder);
        var backup = await MakeAsync(store, Path.Combine(folder, $"{Prefix}{Stamp.Of(time)}{Suffix}"), cancellation);
        foreach (var old in Files.SkipLast(Kept))
        {
            File.Delete(old);
        }
        return backup;
    }

    /// <summary>Makes a backup, opens it and counts it.</summary>
    /// <exception cref="DataFileException">As above.</exception>
    public static async Task<Backup> MakeAsync(LiteDbHerdStore store, string path, CancellationToken cancellation)
    {
        var head = await store.HeadPositionAsync(cancellation);
        await store.BackupAsync(path, cancellation);
        try
        {
            var backup = await CountAsync(path, cancellation);
            return backup.Commits >= head ? backup : throw new DataFileException($"The backup {path} holds {backup.Commits} of {head} commits.");
        }
        catch (DataFileException)
        {
            File.Delete(path);
            throw;
        }
    }

    /// <summary>Opens a data file and counts what is in it.</summary>
    /// <exception cref="DataFileException">It cannot be opened.</exception>
    public static async Task<Backup> CountAsync(string path, CancellationToken cancellation)
    {
        var (commits, events) = (0L, 0L);
        await using (var opened = LiteDbHerdStore.Open(path))
        {
            var position = 0L;
            while (await opened.ReadAllAsync(position, 1000, cancellation) is { Length: > 0 } share)
            {
                position = share[^1].Position;
                commits += share.Length;
                events += share.Sum(stored => stored.Commit.Events.Length);
            }
        }
        File.Delete(DataFiles.LogOf(Path.GetFullPath(path)));
        return new Backup(path, commits, events);
    }

    private static DateTimeOffset? At(string file) => Stamp.Read(Path.GetFileName(file)[Prefix.Length..^Suffix.Length]);
}
