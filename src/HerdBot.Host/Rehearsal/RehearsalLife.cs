using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using HerdBot.Host.LiteDb;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HerdBot.Host.Rehearsal;

/// <summary>The whole program from one start to the next power cut, on a clock that jumps.</summary>
internal sealed class RehearsalLife : IRehearsalLife
{
    private readonly PlainHouse house;
    private readonly IAudience audience;
    private readonly ClockJumps jumps;

    private RehearsalLife(PlainHouse house, FakeTimeProvider clock, IAudience audience)
    {
        (this.house, this.audience) = (house, audience);
        jumps = new ClockJumps(clock, house.Pipeline, house.Services.GetRequiredService<SignalledWakeUp>(), SettleAsync);
    }

    public GroupId Group => PlainHouse.Group;

    public HerdState State => house.State;

    public IHerdStore Store => house.Store;

    public static async Task<RehearsalLife> StartAsync(FarmSetup setup, string data, FakeTimeProvider clock, IAudience audience)
    {
        var house = new PlainHouse(setup, LiteDbHerdStore.Open(data), clock, audience, tick: false, ClockJumps.Prepare);
        await house.StartAsync();
        await audience.RestAsync();
        return new RehearsalLife(house, clock, audience);
    }

    public async Task HearAsync(Inbound inbound)
    {
        audience.Hear(inbound);
        await house.HearAsync(inbound);
        await audience.RestAsync();
    }

    public Task RunToAsync(Instant target) => jumps.RunToAsync(target);

    public Task CutAsync() => house.CutAsync();

    public Task EndAsync() => house.EndAsync();

    private async Task SettleAsync()
    {
        await house.SettleAsync();
        await audience.RestAsync();
    }
}
