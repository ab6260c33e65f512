using System.Globalization;
using System.Text;
using HerdBot.App.Ports;

namespace HerdBot.Host.Copies;

/// <summary>
/// The second copy: every commit as a line of JSON, in files of so many lines each, named by their first position. Only
/// ever added to. One writer at a time.
/// </summary>
/// <param name="folder">Where; made when something is written.</param>
internal sealed class CommitLines(string folder)
{
    private const int LinesAFile = 100_000;
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>The files, oldest first.</summary>
    public IReadOnlyList<string> Files => Directory.Exists(folder) ? [.. Directory.GetFiles(folder, "events-*.jsonl").Order(StringComparer.Ordinal)] : [];

    /// <summary>The last commit that is here whole; null where there is none. A line cut short by a crash is taken off.</summary>
    public StoredCommit? Last()
    {
        StoredCommit? last = null;
        if (Files is [.., var file])
        {
            CutToLines(file);
            last = File.ReadLines(file).LastOrDefault() is { } line ? CommitLine.Read(line) : null;
        }
        return last;
    }

    /// <summary>Adds commits, in their order; they are on the disk when it returns.</summary>
    public void Add(IReadOnlyCollection<StoredCommit> commits)
    {
        Directory.CreateDirectory(folder);
        foreach (var share in commits.GroupBy(stored => ((stored.Position - 1) / LinesAFile * LinesAFile) + 1))
        {
            var name = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"events-{share.Key:000000000000}.jsonl"));
            using var file = new FileStream(name, FileMode.Append, FileAccess.Write, FileShare.Read);
            file.Write(Utf8.GetBytes(string.Concat(share.Select(stored => CommitLine.Write(stored) + "\n"))));
            file.Flush(flushToDisk: true);
        }
    }

    /// <summary>Every line, with the file it is in and its number there.</summary>
    public IEnumerable<(string File, int Number, string Text)> All() =>
        Files.SelectMany(file => File.ReadLines(file).Select((text, index) => (file, index + 1, text)));

    /// <summary>Puts what is here aside: it is of another history.</summary>
    public string SetAside(string mark)
    {
        var aside = Directory.CreateDirectory(Path.Combine(folder, $"before-{mark}")).FullName;
        foreach (var file in Files)
        {
            File.Move(file, Path.Combine(aside, Path.GetFileName(file)));
        }
        return aside;
    }

    private static void CutToLines(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.Read);
        var end = stream.Length;
        while (end > 0 && !EndsLine(stream, end))
        {
            end--;
        }
        if (end < stream.Length)
        {
            stream.SetLength(end);
        }
    }

    private static bool EndsLine(FileStream stream, long end)
    {
        stream.Position = end - 1;
        return stream.ReadByte() == '\n';
    }
}
