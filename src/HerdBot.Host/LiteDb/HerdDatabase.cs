using System.Collections.Immutable;
using HerdBot.App.Ports;
using LiteDB;
using LiteDB.Engine;

namespace HerdBot.Host.LiteDb;

/// <summary>
/// LiteDB with what HerdBot keeps in it: one document a commit, so that one insert writes all its events or none, and
/// one an inbox entry. Only ever inserts. One thread at a time: readers beside a writer see pages change under them
/// (LiteDB's issue 2817).
/// </summary>
internal sealed class HerdDatabase : IDisposable
{
    private const string Commits = "commits";
    private const string Inbox = "inbox";

    private readonly DataFiles _files;
    private readonly WriteGuard _guard = new();
    private readonly LiteEngine _engine;
    private long _lastInboxId;

    /// <summary>Opens the files and reads what must be known by heart. They are closed with this, or when it fails.</summary>
    /// <exception cref="DataFileException">Not HerdBot's, newer, or damaged. Nothing was changed.</exception>
    public HerdDatabase(DataFiles files)
    {
        _files = files;
        try
        {
            files.Settle();
            _engine = Engine(new GuardedStream(files.Data, _guard), new DurableLogStream(files.Log, _guard));
            Load();
            _guard.Open();
        }
        catch (Exception failure)
        {
            Abandon(failure);
            Dispose();
            throw failure switch
            {
                DataFileException => failure,
                IOException and not EndOfStreamException =>
                    new DataFileException($"The data file {files.Path} can't be read: {failure.Message}", failure),
                _ => new DataFileException(
                    $"The data file {files.Path} is damaged and can't be read. Nothing was changed in it. Bring back a backup.", failure),
            };
        }
    }

    /// <summary>What is stored, as far as it must be known by heart.</summary>
    public StoreIndex Index { get; } = new();

    /// <summary>The bytes of a data file with nothing in it but its collections, indexes and schema.</summary>
    public static byte[] Empty()
    {
        using var data = new MemoryStream();
        using (var engine = Engine(data, new MemoryStream()))
        {
            engine.EnsureIndex(Commits, "g", "$.g", unique: false);
            engine.EnsureIndex(Commits, "k", "$.k", unique: true);
            engine.EnsureIndex(Inbox, "k", "$.k", unique: true);
            HerdSchema.Stamp(engine);
        }

        return data.ToArray();
    }

    public bool TakeIn(InboxEntry entry)
    {
        var isNew = Index.TryTakeIn(entry);
        if (isNew)
        {
            Insert(Inbox, HerdDocuments.ToDocument(++_lastInboxId, entry));
        }

        return isNew;
    }

    public long Append(Commit commit)
    {
        var stored = Index.Append(commit);
        Insert(Commits, HerdDocuments.ToDocument(stored));
        return stored.Position;
    }

    /// <summary>Runs several writes as one transaction.</summary>
    public void Together(Action writes)
    {
        _engine.BeginTrans();
        writes();
        if (!_engine.Commit())
        {
            throw new InvalidOperationException("LiteDB did not commit.");
        }
    }

    public ImmutableArray<StoredCommit> ReadGroup(GroupId group, long afterVersion)
    {
        if (Index.VersionOf(group) <= afterVersion)
        {
            return [];
        }

        var query = new Query
        {
            Where = { BsonExpression.Create("$.g = @0", group.Value), BsonExpression.Create("$.v > @0", afterVersion) },
        };
        return [.. Read(Commits, query).Select(HerdDocuments.ToCommit).OrderBy(stored => stored.Version)];
    }

    public ImmutableArray<StoredCommit> ReadAll(long afterPosition, int limit)
    {
        var query = InOrder();
        query.Where.Add(BsonExpression.Create("$._id > @0", afterPosition));
        query.Limit = limit;
        return [.. Read(Commits, query).Select(HerdDocuments.ToCommit)];
    }

    /// <summary>Moves the log into the data file and copies that.</summary>
    /// <returns>The position of the newest commit in the copy.</returns>
    /// <exception cref="DataFileException">The copy could not be written.</exception>
    public long BackUp(string path)
    {
        if (path == _files.Path || path == DataFiles.LogOf(_files.Path))
        {
            throw new DataFileException($"{path} belongs to the running HerdBot. Name another file for the backup.");
        }

        _engine.Checkpoint();
        ThrowIfFailed();
        try
        {
            _files.Data.Position = 0;
            DurableFile.WriteWhole(path, _files.Data.CopyTo);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new DataFileException($"The backup {path} can't be written: {failure.Message}", failure);
        }

        return Index.Head;
    }

    /// <summary>To be asked after every write: LiteDB isn't told when the disk fails.</summary>
    public void ThrowIfFailed()
    {
        if (_guard.Failure is { } failure)
        {
            throw new IOException("The disk failed.", failure);
        }
    }

    /// <summary>From here on nothing reaches the disk. Safe to call from any thread.</summary>
    public void Abandon(Exception cause) => _guard.Trip(cause);

    /// <summary>Closes: the log goes into the data file, unless abandoned. Opening it again heals whatever is missed here.</summary>
    public void Dispose()
    {
        _engine?.Dispose();
        _files.Dispose();
    }

    private static LiteEngine Engine(Stream data, Stream log) => new(new EngineSettings
    {
        DataStream = data,
        LogStream = log,
        // Without it LiteDB takes 'Sage' and 'sage' for one key.
        Collation = Collation.Binary,
    });

    private void Load()
    {
        HerdSchema.Check(_files.Path, Read(HerdSchema.Collection, new Query()));
        foreach (var stored in Read(Commits, InOrder()).Select(HerdDocuments.ToCommit))
        {
            if (!Index.TryRestore(stored))
            {
                throw new InvalidDataException($"Commit {stored.Position} doesn't follow from those before it.");
            }
        }

        foreach (var document in Read(Inbox, InOrder()))
        {
            Index.TryTakeIn(HerdDocuments.ToEntry(document));
            _lastInboxId = document["_id"].AsInt64;
        }
    }

    private void Insert(string collection, BsonDocument document) =>
        _engine.Insert(collection, [document], BsonAutoId.Int64);

    private static Query InOrder() => new() { OrderBy = BsonExpression.Create("$._id") };

    // To be read to the end at once: an open cursor holds a transaction.
    private IEnumerable<BsonDocument> Read(string collection, Query query)
    {
        using var reader = _engine.Query(collection, query);
        while (reader.Read())
        {
            yield return reader.Current.AsDocument;
        }
    }
}
