using System.Collections.Immutable;
using System.Text;
using NodaTime;

namespace HerdBot.App.Ports;

/// <summary>
/// What a store knows by heart: which keys are taken, how far each group is, what waits. It says yes or no to a
/// write before the disk is asked, so that every store refuses the same things. Not safe for several threads.
/// </summary>
public sealed class StoreIndex
{
    /// <summary>The longest key, in bytes of UTF-8.</summary>
    public const int MaxKeyBytes = 200;

    /// <summary>The longest name of a group, in characters.</summary>
    public const int MaxGroupCharacters = 100;

    /// <summary>The most text that one inbox entry, or one commit's events, may hold, in bytes of UTF-8.</summary>
    public const int MaxTextBytes = 2_000_000;

    private static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private readonly HashSet<string> _committed = new(StringComparer.Ordinal);
    private readonly OrderedDictionary<string, InboxEntry> _waiting = new(StringComparer.Ordinal);
    private readonly OrderedDictionary<GroupId, long> _versions = [];

    /// <summary>The position of the newest commit; 0 where there is none.</summary>
    public long Head { get; private set; }

    /// <summary>The entries that no commit bears the key of, in the order they came.</summary>
    public ImmutableArray<InboxEntry> Waiting => [.. _waiting.Values];

    /// <summary>The groups that have a history, in the order of their first commit.</summary>
    public ImmutableArray<GroupId> Groups => [.. _versions.Keys];

    /// <summary>How many commits a group has.</summary>
    public long VersionOf(GroupId group) => _versions.GetValueOrDefault(group);

    /// <summary>The entry as a store keeps it: its instant cut to the millisecond.</summary>
    /// <exception cref="ArgumentException">A key or text that no store keeps: empty, too long, or not well-formed Unicode.</exception>
    public static InboxEntry Checked(InboxEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        CheckKey(entry.Key);
        CheckText(Bytes(entry.Raw));
        return entry with { ReceivedAt = ToMillisecond(entry.ReceivedAt) };
    }

    /// <summary>The commit as a store keeps it: its instant cut to the millisecond.</summary>
    /// <exception cref="ArgumentException">A group, key or text that no store keeps, or no event at all.</exception>
    public static Commit Checked(Commit commit)
    {
        ArgumentNullException.ThrowIfNull(commit);
        CheckKey(commit.Key);
        if (commit.Group.Value is not { Length: > 0 and <= MaxGroupCharacters })
        {
            throw new ArgumentException($"A group's name has 1 to {MaxGroupCharacters} characters.");
        }

        if (commit.Events.IsDefaultOrEmpty)
        {
            throw new ArgumentException("A commit holds at least one event.");
        }

        CheckText(Bytes(commit.Group.Value) + commit.Events.Sum(e => Bytes(e.Type) + Bytes(e.Data)));
        return commit with { At = ToMillisecond(commit.At) };
    }

    /// <summary>Takes a checked entry in; false where its key is known.</summary>
    public bool TryTakeIn(InboxEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return !_committed.Contains(entry.Key) && _waiting.TryAdd(entry.Key, entry);
    }

    /// <summary>Gives a checked commit its place.</summary>
    /// <exception cref="StoreDuplicateException">Its key is taken. Asked first, so that a repeat is told from a conflict.</exception>
    /// <exception cref="StoreConflictException">The group has moved on.</exception>
    public StoredCommit Append(Commit commit)
    {
        ArgumentNullException.ThrowIfNull(commit);
        if (_committed.Contains(commit.Key))
        {
            throw new StoreDuplicateException($"A commit with the key '{commit.Key}' is stored already.");
        }

        var version = VersionOf(commit.Group);
        if (version != commit.ExpectedVersion)
        {
            throw new StoreConflictException($"Group '{commit.Group}' is at version {version}, not {commit.ExpectedVersion}.");
        }

        var stored = new StoredCommit(Head + 1, version + 1, commit);
        Remember(stored);
        return stored;
    }

    /// <summary>Learns a commit that was read back, oldest first.</summary>
    /// <returns>False where it doesn't follow from those before it: the history is damaged.</returns>
    public bool TryRestore(StoredCommit stored)
    {
        ArgumentNullException.ThrowIfNull(stored);
        var follows = stored.Position > Head
            && stored.Version == VersionOf(stored.Commit.Group) + 1
            && !_committed.Contains(stored.Commit.Key);
        if (follows)
        {
            Remember(stored);
        }

        return follows;
    }

    private void Remember(StoredCommit stored)
    {
        _committed.Add(stored.Commit.Key);
        _waiting.Remove(stored.Commit.Key);
        _versions[stored.Commit.Group] = stored.Version;
        Head = stored.Position;
    }

    private static void CheckKey(string key)
    {
        if (Bytes(key) is 0 or > MaxKeyBytes)
        {
            throw new ArgumentException($"A key has 1 to {MaxKeyBytes} bytes.");
        }
    }

    private static void CheckText(long bytes)
    {
        if (bytes > MaxTextBytes)
        {
            throw new ArgumentException($"The text has {bytes} bytes; a store keeps at most {MaxTextBytes} at once.");
        }
    }

    // Throws on half a surrogate pair: as UTF-8 it would come back as another character.
    private static long Bytes(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return StrictUtf8.GetByteCount(text);
    }

    private static Instant ToMillisecond(Instant instant) =>
        Instant.FromUnixTimeMilliseconds(instant.ToUnixTimeMilliseconds());
}
