using System.CommandLine;
using HerdBot.Host.Commands;

var root = new RootCommand("HerdBot helps a llama and alpaca farm to get every cria through birth and its first weeks.")
{
    ServeCommand.Create(), ReadCommand.Create(), RehearseCommand.Create(), TryCommand.Create(), CheckCommand.Create(), HealthCommand.Create(), CopyCommands.Backup(), CopyCommands.Restore(), DueCommand.Create(), ExportCommand.Create(), ImportCommand.Create(),
};
root.SetAction(async (_, cancellation) =>
{
    if (File.Exists(SettingsFile.Usual))
    {
        return await ServeCommand.RunAsync(SettingsFile.Usual, cancellation);
    }
    Console.Out.WriteLine("""
        Try it here, without an account:  herdbot try
        Set up the real bot:              copy bot.settings.example.json to bot.settings.json, fill it in,
                                          then 'herdbot check' and 'herdbot serve' (README.md has the steps)
        All verbs:                        herdbot --help
        """);
    return 0;
});
var parsed = root.Parse(args);
if (parsed.Errors.Count > 0)
{
    await Console.Error.WriteLineAsync($"{string.Join(" ", parsed.Errors.Select(error => error.Message))} 'herdbot --help' lists the verbs, 'herdbot VERB --help' what each takes.");
    return 2;
}
return await parsed.InvokeAsync();
