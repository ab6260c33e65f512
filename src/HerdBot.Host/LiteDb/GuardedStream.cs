namespace HerdBot.Host.LiteDb;

/// <summary>
/// A file as LiteDB sees it: every write goes through the guard, a read is whole or fails, and Flush means that the
/// disk has it. LiteDB's wrapper round a foreign stream calls plain Flush at a checkpoint (read in 5.0.21), so the
/// stream beneath must sync there.
/// </summary>
/// <param name="file">What holds the bytes; its Flush syncs. It stays open when this is disposed.</param>
/// <param name="guard">Shared by all files of one store.</param>
internal class GuardedStream(Stream file, WriteGuard guard) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => true;

    public override long Length => file.Length;

    public override long Position
    {
        get => file.Position;
        set => file.Position = value;
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        file.ReadExactly(buffer, offset, count);
        return count;
    }

    public override void Write(byte[] buffer, int offset, int count)
    {
        var end = Position + count;
        guard.Write(() => file.Write(buffer, offset, count));
        Position = end;
    }

    public override void Flush() => guard.Write(file.Flush);

    public override void SetLength(long value) => guard.Write(() => file.SetLength(value));

    public override long Seek(long offset, SeekOrigin origin) => file.Seek(offset, origin);
}
