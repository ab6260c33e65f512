using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using HerdBot.Tests.Support;
using HerdBot.Tests.Support.FakeBotApi;

namespace HerdBot.Tests.Host.Program;

/// <summary>The program as people start it: a process of its own, with a settings file in a folder of its own.</summary>
internal sealed partial class RealProgram : IAsyncDisposable
{
    // The host's own output beside ours, "bin/Debug/net10.0" alike: the copy among the tests lacks what ASP.NET brings along.
    private static readonly string Dll = Path.Combine(
        AppContext.BaseDirectory.Replace(Path.Combine("tests", "HerdBot.Tests"), Path.Combine("src", "HerdBot.Host"), StringComparison.Ordinal), "herdbot.dll");

    private readonly Process process;
    private readonly StringBuilder output = new();
    private readonly StringBuilder errors = new();
    private readonly FakeGate heard = new();
    private readonly TaskCompletionSource<string> code = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private RealProgram(Process process)
    {
        this.process = process;
        process.OutputDataReceived += (_, line) => Take(output, line.Data);
        process.ErrorDataReceived += (_, line) => Take(errors, line.Data);
    }

    public string Output => Read(output);

    public string Errors => Read(errors);

    public static RealProgram Start(DirectoryInfo folder, params string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet", [Dll, .. arguments])
        {
            WorkingDirectory = folder.FullName,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment.Remove("HERDBOT_TOKEN");
        var program = new RealProgram(new Process { StartInfo = start });
        program.process.Start();
        program.process.BeginOutputReadLine();
        program.process.BeginErrorReadLine();
        return program;
    }

    public static RealProgram Serve(DirectoryInfo folder) => Start(folder, "serve", "--settings", "bot.settings.json");

    public static void WriteSettings(DirectoryInfo folder, FakeBotApi fake, string? token = null)
    {
        var settings = new JsonObject
        {
            ["token"] = token ?? fake.Token,
            ["data"] = "farm.db",
            ["server"] = fake.Url,
            ["farm"] = new JsonObject
            {
                ["zone"] = "America/Denver",
                ["people"] = new JsonArray(new JsonObject { ["name"] = "Ana", ["owner"] = true }),
                ["herd"] = new JsonArray(new JsonObject { ["name"] = "Juniper", ["role"] = "dam", ["state"] = "due" }),
            },
        };
        File.WriteAllText(Path.Combine(folder.FullName, "bot.settings.json"), settings.ToJsonString());
    }

    /// <summary>The code that the console shows while nobody owns the bot.</summary>
    public Task<string> SetUpCodeAsync() => code.Task.WaitAsync(Patience.Hang);

    /// <summary>Waits until the log, which is written a little after what it tells of, holds some words.</summary>
    public async Task UntilItSaysAsync(string words)
    {
        if (!await heard.WaitForAsync(() => Errors.Contains(words, StringComparison.Ordinal)))
        {
            throw new TimeoutException($"The log never held '{words}':\n{Errors}");
        }
    }

    /// <summary>SIGKILL: no handler runs, nothing is flushed.</summary>
    public async Task KillAsync()
    {
        process.Kill();
        await process.WaitForExitAsync();
    }

    /// <summary>Waits for its own end and tells its exit status.</summary>
    public async Task<int> EndAsync()
    {
        using var limit = new CancellationTokenSource(Patience.Hang);
        await process.WaitForExitAsync(limit.Token);
        return process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            await KillAsync();
        }
        process.Dispose();
    }

    private void Take(StringBuilder into, string? line)
    {
        if (line is null)
        {
            return;
        }
        heard.Change(() => into.AppendLine(line));
        if (Invitation().Match(line) is { Success: true } match)
        {
            code.TrySetResult(match.Groups[1].Value);
        }
    }

    private string Read(StringBuilder from) => heard.Read(from.ToString);

    [GeneratedRegex("/start ([A-Z0-9]{8}) ")]
    private static partial Regex Invitation();
}
