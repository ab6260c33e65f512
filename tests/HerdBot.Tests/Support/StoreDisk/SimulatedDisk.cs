namespace HerdBot.Tests.Support.StoreDisk;

/// <summary>What of the writes that were not synced is there after a power cut.</summary>
internal enum Survival
{
    /// <summary>The first so many, in the order they were written.</summary>
    Prefix,

    /// <summary>Any of them, by pages of 8 KB.</summary>
    Subset,

    /// <summary>Any of them, by halves of such pages.</summary>
    Torn,
}

/// <summary>
/// A disk with a cache that forgets. A write goes to the cache, from there to the disk at a moment of the system's
/// own choice, or when it is synced. When its operations are used up nothing works any more: either the process was
/// killed, and the cache is still there, or the power went, and the cache is lost but for what <see cref="Survival"/> allows. A model of what disks do, not a disk: it shows the kind of harm, not how often.
/// </summary>
internal sealed class SimulatedDisk
{
    private readonly List<PendingWrite> _pending = [];
    private readonly TaskCompletionSource _atTheGate = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Survival _survival;
    private readonly Chance _chance;
    private int _operationsLeft = int.MaxValue;

    public SimulatedDisk(Survival survival, Chance chance, byte[] data, byte[] log)
    {
        (_survival, _chance) = (survival, chance);
        Data = new SimulatedFile(this, data);
        Log = new SimulatedFile(this, log);
    }

    public SimulatedFile Data { get; }

    public SimulatedFile Log { get; }

    public int Syncs { get; private set; }

    /// <summary>Closed, it keeps a sync waiting, as a slow disk does.</summary>
    public ManualResetEventSlim Gate { get; } = new(initialState: true);

    /// <summary>Ends when a sync has found the gate closed.</summary>
    public Task AtTheGate => _atTheGate.Task;

    public bool IsWorking => _operationsLeft > 0;

    public int BlockBytes => _survival == Survival.Torn ? 4096 : 8192;

    public void WorkFor(int operations) => _operationsLeft = operations;

    /// <summary>The same disk after the power was cut and came back.</summary>
    public SimulatedDisk CutPower()
    {
        var survivors = _survival == Survival.Prefix
            ? _pending.Take(_chance.Below(_pending.Count + 1))
            : _pending.Where(_ => _chance.OneIn(2));
        foreach (var write in survivors)
        {
            write.Land();
        }

        return new SimulatedDisk(_survival, _chance, AfterCut(Data), AfterCut(Log));
    }

    public void Wrote(PendingWrite write)
    {
        _pending.Add(write);
        if (_chance.OneIn(8))
        {
            WriteBack(_survival == Survival.Prefix ? 0 : _chance.Below(_pending.Count));
        }

        Spend();
    }

    public void Sync(SimulatedFile file)
    {
        if (!Gate.IsSet)
        {
            _atTheGate.TrySetResult();
        }

        Gate.Wait();
        Spend();
        Syncs++;
        var last = _pending.FindLastIndex(write => write.File == file);
        var landing = _pending.Where((write, n) => n <= last && (_survival == Survival.Prefix || write.File == file)).ToList();
        landing.ForEach(write => write.Land());
        _pending.RemoveAll(landing.Contains);
    }

    private void WriteBack(int n)
    {
        var write = _pending[n];
        var earlier = _pending.Take(n).Where(other => other.File == write.File).ToList();
        if (earlier.Exists(other => other.IsCut))
        {
            return;
        }

        write.Land();
        _pending.RemoveAt(n);
        _pending.RemoveAll(other => earlier.Contains(other) && write.Covers(other));
    }

    // A file may have grown on the disk though its new pages have not come: they are zeros then.
    private byte[] AfterCut(SimulatedFile file)
    {
        var bytes = file.OnDisk.ToArray();
        return _survival != Survival.Prefix && file.Length > bytes.Length && _chance.OneIn(2)
            ? [.. bytes, .. new byte[file.Length - bytes.Length]]
            : bytes;
    }

    private void Spend()
    {
        if (_operationsLeft == 0 || --_operationsLeft == 0)
        {
            throw new IOException("Nothing works any more.");
        }
    }
}
