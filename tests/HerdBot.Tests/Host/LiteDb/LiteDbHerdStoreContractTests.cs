using HerdBot.App.Ports;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using Xunit;

namespace HerdBot.Tests.Host.LiteDb;

public sealed class LiteDbHerdStoreContractTests : HerdStoreContract, IAsyncLifetime
{
    private readonly StoreFolder _folder = new();
    private readonly LiteDbHerdStore _store;

    public LiteDbHerdStoreContractTests() => _store = LiteDbHerdStore.Open(_folder.DataFile);

    protected override IHerdStore Store => _store;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        await _store.DisposeAsync();
        _folder.Dispose();
    }
}
