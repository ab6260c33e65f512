using HerdBot.App.Ports;
using HerdBot.Tests.Support.StoreContract;

namespace HerdBot.Tests.Host.LiteDb;

public sealed class InMemoryHerdStoreTests : HerdStoreContract
{
    protected override IHerdStore Store { get; } = new InMemoryHerdStore();
}
