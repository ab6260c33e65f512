using System.Buffers.Binary;

namespace HerdBot.Host.LiteDb;

/// <summary>The data file and its log, opened for this process alone and looked at before LiteDB may touch them.</summary>
internal sealed record DataFiles(string Path, Stream Data, Stream Log) : IDisposable
{
    // The first page of a LiteDB 5 file: a title, a version of the format, and how many pages there are.
    private const int TitleAt = 32;
    private const int FormatAt = 59;
    private const int LastPageAt = 64;
    private const byte Format = 8;

    private static ReadOnlySpan<byte> Title => "** This is a LiteDB file **"u8;

    /// <summary>Opens the pair, and makes it where there is none.</summary>
    /// <exception cref="DataFileException">In use, not ours, cut short, or out of reach. Nothing was changed.</exception>
    public static DataFiles Open(string path)
    {
        try
        {
            MakeFolder(FolderOf(path));
            return File.Exists(path) ? OpenExisting(path) : Create(path);
        }
        catch (IOException failure) when (IsInUse(failure))
        {
            throw new DataFileException($"The data file {path} is in use by another HerdBot. Stop that one first.", failure);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new DataFileException($"The data file {path} can't be opened: {failure.Message}", failure);
        }
    }

    /// <summary>A pair of any make, looked at like files.</summary>
    public static DataFiles Of(Stream data, Stream log)
    {
        var files = new DataFiles("in memory", data, log);
        CheckIsLiteDb(files.Path, data);
        files.CheckIsWhole();
        return files;
    }

    /// <summary>The log's name, as LiteDB's own tools expect it.</summary>
    public static string LogOf(string path) =>
        System.IO.Path.Combine(FolderOf(path), $"{System.IO.Path.GetFileNameWithoutExtension(path)}-log{System.IO.Path.GetExtension(path)}");

    /// <summary>
    /// What a killed process wrote may be in the system's cache alone. It is about to be believed: make it true first.
    /// </summary>
    public void Settle()
    {
        Data.Flush();
        Log.Flush();
    }

    public void Dispose()
    {
        Log.Dispose();
        Data.Dispose();
    }

    private static DataFiles OpenExisting(string path)
    {
        var data = new DurableFile(path, FileMode.Open);
        try
        {
            CheckIsLiteDb(path, data);
            return WithLog(path, data);
        }
        catch
        {
            data.Dispose();
            throw;
        }
    }

    private static DataFiles WithLog(string path, DurableFile data)
    {
        var files = new DataFiles(path, data, new DurableFile(LogOf(path), FileMode.OpenOrCreate));
        try
        {
            files.CheckIsWhole();
            DurableFile.SyncFolderOf(path);
            return files;
        }
        catch
        {
            files.Log.Dispose();
            throw;
        }
    }

    private static void MakeFolder(string folder)
    {
        if (!Directory.Exists(folder))
        {
            MakeFolder(FolderOf(folder));
            Directory.CreateDirectory(folder);
            DurableFile.SyncFolderOf(folder);
        }
    }

    // The log is opened first and held: two that start at once can't both make the file.
    private static DataFiles Create(string path)
    {
        using (var log = new DurableFile(LogOf(path), FileMode.OpenOrCreate))
        {
            if (log.Length > 0)
            {
                throw new DataFileException($"The data file {path} is missing, but its log {LogOf(path)} is there and not empty. "
                    + "Bring the data file back, or move the log away to start anew.");
            }

            var empty = HerdDatabase.Empty();
            DurableFile.WriteWhole(path, file => file.Write(empty));
        }

        return OpenExisting(path);
    }

    // LiteDB itself would cut a foreign file to whole pages before looking at it.
    private static void CheckIsLiteDb(string path, Stream data)
    {
        var head = new byte[FormatAt + 1];
        data.Position = 0;
        var read = data.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
        if (read < head.Length || !head.AsSpan(TitleAt, Title.Length).SequenceEqual(Title) || head[FormatAt] != Format)
        {
            throw new DataFileException($"The file {path} is not a HerdBot data file. Nothing was changed in it. "
                + "Name another file, or bring back a backup.");
        }
    }

    // While the log holds pages the data file may lag behind; with an empty log it must be complete.
    private void CheckIsWhole()
    {
        var last = new byte[sizeof(uint)];
        Data.Position = LastPageAt;
        Data.ReadExactly(last);
        var expected = (BinaryPrimitives.ReadUInt32LittleEndian(last) + 1L) * DurableLogStream.PageBytes;
        if (Log.Length == 0 && Data.Length < expected)
        {
            throw new DataFileException($"The data file {Path} is cut short: {Data.Length} of {expected} bytes are there. "
                + "Nothing was changed in it. Bring back a backup.");
        }
    }

    private static string FolderOf(string path) => System.IO.Path.GetDirectoryName(path)!;

    // On Unix the error number is EWOULDBLOCK, 11 on Linux and 35 on macOS; on Windows a sharing violation.
    private static bool IsInUse(IOException failure) => failure.HResult is 11 or 35 or unchecked((int)0x80070020);
}
