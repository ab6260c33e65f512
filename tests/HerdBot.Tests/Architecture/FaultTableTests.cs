using System.Text.RegularExpressions;
using FluentAssertions;
using Xunit;
using Xunit.v3;

namespace HerdBot.Tests.Architecture;

/// <summary>Faults.md names tests: each is there.</summary>
public sealed class FaultTableTests
{
    [Fact]
    public async Task Every_test_that_the_table_of_faults_names_is_there()
    {
        var table = await File.ReadAllTextAsync(Path.Combine(ReferenceTests.Root(), "tests", "HerdBot.Tests", "Faults.md"));
        var named = Regex.Matches(table, "`([A-Z]\\w+_\\w+)`").Select(match => match.Groups[1].Value).ToList();
        var tests = typeof(FaultTableTests).Assembly.GetTypes().SelectMany(type => type.GetMethods())
            .Where(method => method.GetCustomAttributes(inherit: true).OfType<IFactAttribute>().Any()).Select(method => method.Name).ToHashSet();

        named.Should().HaveCountGreaterThan(25);
        named.Except(tests).Should().BeEmpty();
    }
}
