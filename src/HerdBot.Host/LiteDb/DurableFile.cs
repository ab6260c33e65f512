using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace HerdBot.Host.LiteDb;

/// <summary>
/// A file that no one else may open while it is open here, and whose Flush reaches the disk. On Linux the lock is the
/// kernel's and goes with the process, however that ends.
/// </summary>
internal sealed class DurableFile(string path, FileMode mode)
    : FileStream(path, mode, FileAccess.ReadWrite, FileShare.None, bufferSize: 0, FileOptions.RandomAccess)
{
    /// <summary>Flushes down to the disk, not to the system's cache alone.</summary>
    public override void Flush() => Flush(flushToDisk: true);

    /// <summary>Writes a file whole or not at all: beside its place first, then moved there.</summary>
    public static void WriteWhole(string path, Action<Stream> write)
    {
        var draft = path + ".new";
        using (var file = new DurableFile(draft, FileMode.Create))
        {
            WriteOrDelete(file, write);
        }

        File.Move(draft, path, overwrite: true);
        SyncFolderOf(path);
    }

    /// <summary>Makes a new file's name as durable as its bytes. Windows keeps names safe by itself.</summary>
    public static void SyncFolderOf(string path)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        // .NET opens no folders; the number is O_RDONLY, zero on every Unix.
        using var folder = new SafeFileHandle(OpenForReading(Path.GetDirectoryName(path)!, 0), ownsHandle: true);
        if (folder.IsInvalid)
        {
            throw new IOException($"The folder of {path} can't be opened to sync it (error {Marshal.GetLastPInvokeError()}).");
        }

        RandomAccess.FlushToDisk(folder);
    }

    // Half a draft on a full disk would only keep it full.
    private static void WriteOrDelete(DurableFile file, Action<Stream> write)
    {
        try
        {
            write(file);
            file.Flush();
        }
        catch
        {
            File.Delete(file.Name);
            throw;
        }
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    private static extern nint OpenForReading([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);
}
