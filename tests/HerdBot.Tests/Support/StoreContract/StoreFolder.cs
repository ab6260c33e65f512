namespace HerdBot.Tests.Support.StoreContract;

/// <summary>A folder for one test, gone with it.</summary>
internal sealed class StoreFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("herdbot-");

    public string DataFile => Path.Combine(_folder.FullName, "herd.db");

    public string LogFile => Path.Combine(_folder.FullName, "herd-log.db");

    public string Named(string name) => Path.Combine(_folder.FullName, name);

    public void Dispose() => _folder.Delete(recursive: true);
}
