using HerdBot.App.Ports;
using HerdBot.Tests.Support.StoreContract;

namespace HerdBot.Tests.Host.LiteDb;

public sealed class InMemoryHerdStoreContentTests : HerdStoreContentContract
{
    protected override IHerdStore Store { get; } = new InMemoryHerdStore();
}
