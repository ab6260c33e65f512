namespace HerdBot.Host.LiteDb;

/// <summary>
/// The log of LiteDB 5.0.21, made to survive a power cut. Stock LiteDB never syncs its log, and believes a
/// transaction whole as soon as it finds the page that bears the confirm flag, in whatever order the disk wrote the
/// pages. So that page is written in two steps: all pages, the flag off; sync; then the flag alone; sync. A commit
/// is there with all its pages or not at all, and is there for good when LiteDB's insert returns.
/// </summary>
/// <remarks>
/// Page size and place of the flag belong to this version of LiteDB: the package is pinned, and DurableLogStreamTests
/// holds both against the real engine. Source: measured by the project, by reading the pages LiteDB writes.
/// </remarks>
internal sealed class DurableLogStream(Stream file, WriteGuard guard) : GuardedStream(file, guard)
{
    internal const int PageBytes = 8192;

    internal const int ConfirmFlagAt = 18;

    private static readonly byte[] Confirmed = [1];

    private readonly byte[] _page = new byte[PageBytes];

    public override void Write(byte[] buffer, int offset, int count)
    {
        if (count == PageBytes && buffer[offset + ConfirmFlagAt] == 1)
        {
            WriteConfirming(buffer.AsSpan(offset, count));
        }
        else
        {
            base.Write(buffer, offset, count);
        }
    }

    // A cut log whose old pages come back would be replayed over newer ones.
    public override void SetLength(long value)
    {
        base.SetLength(value);
        Flush();
    }

    // The flag changes one byte, so that a half-written sector can't harm the rest of the page.
    private void WriteConfirming(ReadOnlySpan<byte> page)
    {
        var start = Position;
        page.CopyTo(_page);
        _page[ConfirmFlagAt] = 0;
        base.Write(_page, 0, PageBytes);
        Flush();
        Position = start + ConfirmFlagAt;
        base.Write(Confirmed, 0, 1);
        Flush();
        Position = start + PageBytes;
    }
}
