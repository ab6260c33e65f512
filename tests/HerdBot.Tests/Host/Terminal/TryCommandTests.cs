using System.CommandLine;
using FluentAssertions;
using HerdBot.Host.Commands;
using HerdBot.Host.LiteDb;
using HerdBot.Tests.Support.StoreContract;
using Xunit;

namespace HerdBot.Tests.Host.Terminal;

public sealed class TryCommandTests : IDisposable
{
    private readonly StoreFolder _folder = new();
    private readonly StringWriter _error = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("0")]
    [InlineData("3601")]
    [InlineData("-5")]
    [InlineData("1.5")]
    [InlineData("fast")]
    public async Task A_speed_out_of_range_is_refused_in_one_sentence(string speed)
    {
        (await RunAsync("--speed", speed)).Should().Be(2);

        _error.ToString().Should().Be($"--speed is '{speed}'; it must be a whole number from 1 to 3600, like --speed 60.{Environment.NewLine}");
    }

    [Fact]
    public async Task A_data_file_that_another_one_holds_is_refused_in_one_sentence()
    {
        await using var held = LiteDbHerdStore.Open(_folder.DataFile);

        (await RunAsync("--data", _folder.DataFile)).Should().Be(2);

        _error.ToString().Should().Be($"The data file {_folder.DataFile} is in use by another HerdBot. Stop that one first.{Environment.NewLine}");
    }

    [Fact]
    public async Task A_file_that_is_no_data_file_is_refused_and_left_alone()
    {
        await File.WriteAllTextAsync(_folder.DataFile, "Dear diary");

        (await RunAsync("--data", _folder.DataFile)).Should().Be(2);

        _error.ToString().Trim().Should().Contain("is not a HerdBot data file").And.NotContain("\n");
        (await File.ReadAllTextAsync(_folder.DataFile)).Should().Be("Dear diary");
    }

    private Task<int> RunAsync(params string[] args) =>
        TryCommand.Create().Parse(args).InvokeAsync(new InvocationConfiguration { Error = _error });
}
