using System.Collections.Immutable;
using FluentAssertions;
using HerdBot.App.Ports;
using NodaTime;

namespace HerdBot.Tests.Support.StoreContract;

/// <summary>Entries and commits with nothing special about them.</summary>
internal static class SomeStored
{
    public static readonly GroupId Alderbrook = new("alderbrook");

    public static readonly Instant Dawn = Instant.FromUtc(2026, 4, 11, 10, 40);

    public static InboxEntry Entry(string key, string raw = "{\"text\":\"Sage had a girl 6:40, 24 lb\"}") => new(key, Dawn, raw);

    public static Commit Commit(long expectedVersion, string key, GroupId? group = null, params string[] data) => new(
        group ?? Alderbrook,
        expectedVersion,
        key,
        Dawn,
        [.. (data is [] ? ["{\"kind\":\"weight\",\"value\":24}"] : data).Select(json => new EventRecord("fact", 1, json))]);

    public static StoredCommit Stored(long position, Commit commit) => new(position, commit.ExpectedVersion + 1, commit);

    /// <summary>As tests compare commits: a record compares its list by reference.</summary>
    public static void ShouldBe(this ImmutableArray<StoredCommit> actual, params StoredCommit[] expected) =>
        Flat(actual).Should().Equal(Flat(expected));

    private static IEnumerable<object> Flat(IEnumerable<StoredCommit> commits) => commits.SelectMany(stored =>
        stored.Commit.Events.Cast<object>().Prepend((stored with { Commit = stored.Commit with { Events = default } }).ToString()));
}
