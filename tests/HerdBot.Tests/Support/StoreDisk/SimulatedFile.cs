namespace HerdBot.Tests.Support.StoreDisk;

/// <summary>A file on a <see cref="SimulatedDisk"/>. Read from the cache; Flush syncs. Stays open when disposed, as a disk outlives a process.</summary>
internal sealed class SimulatedFile : Stream
{
    private readonly SimulatedDisk _disk;
    private readonly MemoryStream _cache = new();

    public SimulatedFile(SimulatedDisk disk, byte[] bytes)
    {
        _disk = disk;
        _cache.Write(bytes);
        OnDisk.Write(bytes);
    }

    /// <summary>What would be left if nothing of the cache survived.</summary>
    public MemoryStream OnDisk { get; } = new();

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => _cache.Length;

    public override long Position
    {
        get => _cache.Position;
        set => _cache.Position = value;
    }

    public override int Read(byte[] buffer, int offset, int count) => _cache.Read(buffer, offset, count);

    public override void Write(byte[] buffer, int offset, int count)
    {
        var start = _cache.Position;
        _cache.Write(buffer, offset, count);
        var block = start - (start % _disk.BlockBytes);
        for (; block < start + count; block += _disk.BlockBytes)
        {
            var end = (int)Math.Min(block + _disk.BlockBytes, _cache.Length);
            _disk.Wrote(new PendingWrite(this, block, _cache.GetBuffer()[(int)block..end]));
        }
    }

    public override void SetLength(long value)
    {
        _cache.SetLength(value);
        _disk.Wrote(new PendingWrite(this, value, null));
    }

    public override void Flush() => _disk.Sync(this);

    public override long Seek(long offset, SeekOrigin origin) => _cache.Seek(offset, origin);
}
