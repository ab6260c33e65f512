namespace HerdBot.Tests.Support.StoreDisk;

/// <summary>A write that is in the cache alone: a block as it is after it, or the file's new end.</summary>
internal sealed class PendingWrite(SimulatedFile file, long at, byte[]? block)
{
    public SimulatedFile File => file;

    public bool IsCut => block is null;

    public bool Covers(PendingWrite earlier) => earlier.File == file && (IsCut ? earlier.At >= at : earlier.At == at);

    private long At => at;

    public void Land()
    {
        if (block is null)
        {
            file.OnDisk.SetLength(at);
            return;
        }

        file.OnDisk.Position = at;
        file.OnDisk.Write(block);
    }
}
