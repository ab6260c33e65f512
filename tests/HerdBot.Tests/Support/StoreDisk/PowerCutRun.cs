using FluentAssertions;
using HerdBot.App.Ports;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;

namespace HerdBot.Tests.Support.StoreDisk;

/// <summary>Someone who writes to a store until the power goes, and remembers what the store said.</summary>
internal sealed class PowerCutRun(Chance chance)
{
    private static readonly GroupId[] Groups = [new("alderbrook"), new("highfield"), new("long meadow")];

    private readonly Dictionary<string, Commit> _asked = [];
    private readonly HashSet<string> _acknowledged = [];
    private readonly Dictionary<string, InboxEntry> _takenIn = [];
    private readonly Dictionary<GroupId, long> _versions = Groups.ToDictionary(group => group, _ => 0L);
    private int _next;

    public int Acknowledged => _acknowledged.Count + _takenIn.Count;

    /// <summary>Writes one at a time and several at once, until a call fails.</summary>
    public async Task WriteUntilDarkAsync(LiteDbHerdStore store)
    {
        var lit = true;
        while (lit)
        {
            var calls = Enumerable.Range(0, chance.OneIn(3) ? 1 + chance.Below(8) : 1).Select(_ => WriteAsync(store)).ToList();
            var answers = await Task.WhenAll(calls);
            answers.ToList().ForEach(remember => remember?.Invoke());
            lit = answers.All(remember => remember is not null);
        }
    }

    /// <summary>Holds what the reopened store has against what it said before; from now on it stands by that.</summary>
    public async Task CheckAsync(LiteDbHerdStore store)
    {
        var stored = await store.ReadAllAsync();
        var byKey = stored.ToDictionary(c => c.Commit.Key);

        _acknowledged.Except(byKey.Keys).Should().BeEmpty("what the store acknowledged is there");
        stored.Where(c => !c.Commit.Events.SequenceEqual(_asked[c.Commit.Key].Events)).Should().BeEmpty("a commit is there as a whole");
        foreach (var group in Groups)
        {
            var versions = (await store.ReadGroupAsync(group)).Select(c => c.Version).ToList();
            versions.Should().Equal(Enumerable.Range(1, versions.Count).Select(n => (long)n));
            _versions[group] = versions.Count;
        }

        var waiting = await store.ReadWaitingAsync();
        _takenIn.Values.Where(entry => !byKey.ContainsKey(entry.Key)).Except(waiting).Should().BeEmpty("so is what it took in");
        _acknowledged.UnionWith(byKey.Keys);
    }

    // What to remember once the store has said yes; null where it could not say.
    private Task<Action?> WriteAsync(LiteDbHerdStore store) => chance.OneIn(3) ? TakeInAsync(store) : AppendAsync(store);

    private async Task<Action?> TakeInAsync(LiteDbHerdStore store)
    {
        var entry = SomeStored.Entry($"u{_next++}", new string('r', chance.Below(3000)));
        return await SaysYesAsync(() => store.TakeInAsync(entry), () => _takenIn.Add(entry.Key, entry));
    }

    private async Task<Action?> AppendAsync(LiteDbHerdStore store)
    {
        var group = Groups[chance.Below(Groups.Length)];
        var key = _takenIn.Keys.FirstOrDefault(k => !_asked.ContainsKey(k)) ?? $"k{_next++}";
        var data = Enumerable.Range(0, 1 + chance.Below(3)).Select(n => $"{key}/{n} " + new string('d', chance.Below(9000))).ToArray();
        var commit = SomeStored.Commit(_versions[group]++, key, group, data);
        _asked.Add(key, commit);
        return await SaysYesAsync(() => store.AppendAsync(commit), () => _acknowledged.Add(key));
    }

    private static async Task<Action?> SaysYesAsync(Func<Task> ask, Action remember)
    {
        try
        {
            await ask();
            return remember;
        }
        catch (StoreOutcomeUnknownException)
        {
            return null;
        }
    }
}
