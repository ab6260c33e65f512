namespace HerdBot.Host.Commands;

/// <summary>Reads what a verb is given; "-" is standard input.</summary>
internal static class InputFile
{
    /// <summary>All lines; null, after a plain sentence, where the file cannot be read.</summary>
    public static async Task<IReadOnlyList<string>?> ReadLinesAsync(string file, string what)
    {
        try
        {
            if (file == "-")
            {
                using var input = new StreamReader(Console.OpenStandardInput());
                return (await input.ReadToEndAsync()).Split('\n');
            }
            return await File.ReadAllLinesAsync(file);
        }
        catch (Exception odd) when (odd is IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync($"The {what} '{file}' cannot be read: {odd.Message} Check the path.");
            return null;
        }
    }
}
