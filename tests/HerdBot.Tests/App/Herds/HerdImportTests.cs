using FluentAssertions;
using HerdBot.App.Herds;
using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Tests.App.Messages;
using HerdBot.Tests.Support;
using NodaTime;
using Xunit;

namespace HerdBot.Tests.App.Herds;

/// <summary>A list on its way into a group's herd.</summary>
public sealed class HerdImportTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 4, 18, 12, 0);
    private static readonly FarmSetup Setup = new(Some.Farm(), [Some.Dam("Sage"), Some.Dam("Willow")]);
    private static readonly HerdRow[] List = [Row(2, "Luna"), Row(3, "Sage"), Row(4, "Coca")];

    [Fact]
    public async Task A_group_that_opens_later_knows_the_animals_of_the_list_each_once()
    {
        var store = new InMemoryHerdStore();
        (await HerdImport.RunAsync(store, Setup, List, Now)).Should().Match<HerdListing>(listing => listing.Added.Length == 2 && listing.Known == 1);

        using var first = await Desk.OpenAsync(store);
        first.State.Roster.Select(animal => animal.Name).Should().Equal("Sage", "Willow", "Luna", "Coca");
        using var again = await Desk.OpenAsync(store);
        again.State.Roster.Should().HaveCount(4);
    }

    [Fact]
    public async Task The_same_list_again_adds_nobody()
    {
        var store = new InMemoryHerdStore();
        await HerdImport.RunAsync(store, Setup, List, Now);

        (await HerdImport.RunAsync(store, Setup, List, Now)).Should().Match<HerdListing>(listing => listing.Added.IsEmpty && listing.Known == 3);
        (await HerdImport.ReadAsync(store)).Should().HaveCount(2);
    }

    [Fact]
    public async Task One_that_was_renamed_in_the_group_is_known_by_its_old_name()
    {
        var store = new InMemoryHerdStore();
        using (var desk = await Desk.OpenAsync(store))
        {
            await desk.HandleAsync(Desk.Line("k1", "Sage is now Salvia"), Desk.Dawn);
        }

        (await HerdImport.RunAsync(store, Setup with { Herd = [] }, List, Now)).Known.Should().Be(1);
        using var again = await Desk.OpenAsync(store);
        again.State.Roster.Select(animal => animal.Name).Should().Equal("Salvia", "Willow", "Luna", "Coca");
    }

    private static HerdRow Row(int line, string name) => new(line, new Dictionary<string, string> { ["name"] = name, ["role"] = "dam" });
}
