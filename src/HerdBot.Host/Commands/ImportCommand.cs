using System.CommandLine;
using System.Text;
using HerdBot.App.Herds;
using HerdBot.Host.Composition;
using HerdBot.Host.Files;
using HerdBot.Host.LiteDb;
using NodaTime.Extensions;

namespace HerdBot.Host.Commands;

/// <summary>The verb "import": a list of animals, as CSV, into the data file.</summary>
public static class ImportCommand
{
    /// <summary>The file of a folder that holds the herd.</summary>
    public const string HerdFile = "herd.csv";

    public static Command Create()
    {
        var from = new Argument<string>("PATH") { HelpName = "DIR|FILE", Description = $"A CSV file of animals, or a folder with such a file, {HerdFile}. Columns: {string.Join(", ", HerdColumns.Names)}; only name is needed, and role or sex." };
        var settings = new Option<string>("--settings") { Description = "The settings file.", DefaultValueFactory = _ => SettingsFile.Usual };
        var command = new Command("import", "Takes a list of animals (CSV) into the data file. What is there already is left as it is.") { from, settings };
        command.SetAction(async (parsed, cancellation) => await RunAsync(parsed.GetValue(from)!, parsed.GetValue(settings)!, Console.Out, Console.Error, cancellation));
        return command;
    }

    /// <summary>Imports; 0 where every line was good, 2 where one was not or nothing could be read.</summary>
    public static async Task<int> RunAsync(string path, string settingsFile, TextWriter output, TextWriter faults, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(faults);
        if (await SettingsFile.ReadAsync(settingsFile, faults) is not { } settings || await ReadAsync(Directory.Exists(path) ? Path.Combine(path, HerdFile) : path, faults) is not { } text)
        {
            return 2;
        }
        var (rows, problems) = HerdCsv.Read(text);
        try
        {
            await using var store = LiteDbHerdStore.Open(settings.Data);
            var listing = await HerdImport.RunAsync(store, settings.Setup, rows, SystemClocks.Real.GetCurrentInstant(), cancellation);
            foreach (var problem in problems.Concat(listing.Problems))
            {
                await faults.WriteLineAsync(problem);
            }
            await output.WriteLineAsync($"{listing.Added.Length} animals taken in, {listing.Known} known already, {listing.Problems.Length} lines not taken.{(listing.Added.IsEmpty ? "" : " The group knows them from the next start on.")}");
            return problems.Count + listing.Problems.Length == 0 ? 0 : 2;
        }
        catch (Exception odd) when (odd is DataFileException or InvalidDataException)
        {
            await faults.WriteLineAsync(odd.Message);
            return 2;
        }
    }

    private static async Task<string?> ReadAsync(string file, TextWriter faults)
    {
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(await File.ReadAllBytesAsync(file));
        }
        catch (Exception odd) when (odd is IOException or UnauthorizedAccessException)
        {
            await faults.WriteLineAsync($"The list '{file}' cannot be read: {odd.Message} Give a CSV file, or a folder with one called {HerdFile}.");
        }
        catch (DecoderFallbackException)
        {
            await faults.WriteLineAsync($"The list '{file}' is not written in UTF-8. Save it as 'CSV UTF-8' and import it again.");
        }
        return null;
    }
}
