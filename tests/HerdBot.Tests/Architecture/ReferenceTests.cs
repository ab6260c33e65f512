using System.Reflection;
using FluentAssertions;
using HerdBot.App.Messages;
using HerdBot.Core.Care;
using Xunit;

namespace HerdBot.Tests.Architecture;

/// <summary>One direction: the core knows nobody, the use cases know the core, vendors stay outside.</summary>
public sealed class ReferenceTests
{
    private static readonly string[] Platform = ["System.", "Microsoft.CSharp", "netstandard", "mscorlib"];
    private static readonly string Sources = Path.Combine(Root(), "src");

    public static TheoryData<Assembly, string[]> Allowed => new()
    {
        { typeof(CarePlan).Assembly, ["NodaTime", "MathNet.Numerics"] },
        { typeof(Pipeline).Assembly, ["HerdBot.Core", "NodaTime", "Microsoft.Extensions.Logging.Abstractions"] },
    };

    [Theory]
    [MemberData(nameof(Allowed))]
    public void An_assembly_refers_to_what_its_row_allows_and_nothing_else(Assembly assembly, string[] allowed) =>
        assembly.GetReferencedAssemblies().Select(reference => reference.Name!)
            .Where(name => !Array.Exists(Platform, prefix => name.StartsWith(prefix, StringComparison.Ordinal))).Should().BeSubsetOf(allowed);

    [Theory]
    [InlineData("LiteDB", "HerdBot.Host/LiteDb")]
    [InlineData("Telegram.Bot", "HerdBot.Host/Telegram")]
    [InlineData("Quartz", "HerdBot.Host/Quartz", "HerdBot.Host/Composition")]
    [InlineData("ScottPlot", "HerdBot.Host/Calendar")]
    [InlineData("Ical.Net", "HerdBot.Host/Calendar")]
    [InlineData("Spectre.Console", "HerdBot.Host/Terminal", "HerdBot.Host/Commands")]
    [InlineData("CsvHelper", "HerdBot.Host/Files")]
    [InlineData("System.CommandLine", "HerdBot.Host/Commands", "HerdBot.Host/Program.cs")]
    public void A_vendor_is_used_in_its_own_folder_alone(string vendor, params string[] folders) =>
        Files().Where(file => File.ReadLines(file).Any(line => line.StartsWith($"using {vendor};", StringComparison.Ordinal) || line.StartsWith($"using {vendor}.", StringComparison.Ordinal)))
            .Select(file => Path.GetRelativePath(Sources, file).Replace('\\', '/')).Should().OnlyContain(file => folders.Any(folder => file.StartsWith(folder, StringComparison.Ordinal)));

    [Fact]
    public void The_core_waits_for_nothing() =>
        Files().Where(file => file.Contains("HerdBot.Core") && File.ReadAllText(file).Contains("await ")).Should().BeEmpty();

    [Fact]
    public void The_scan_sees_the_sources() => Files().Should().HaveCountGreaterThan(100);

    /// <summary>Every source file of what ships, in every folder.</summary>
    internal static IEnumerable<string> Files() => Directory.EnumerateFiles(Sources, "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Split(Path.DirectorySeparatorChar).Any(part => part is "obj" or "bin"));

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "HerdBot.sln")))
        {
            folder = folder.Parent ?? throw new DirectoryNotFoundException("No HerdBot.sln above the tests.");
        }
        return folder.FullName;
    }
}
