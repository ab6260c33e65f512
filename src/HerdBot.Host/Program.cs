using System.CommandLine;
using HerdBot.Host.Commands;

var root = new RootCommand("HerdBot helps a llama and alpaca farm to get every cria through birth and its first weeks.")
{
    ServeCommand.Create(), ReadCommand.Create(), RehearseCommand.Create(), TryCommand.Create(), CheckCommand.Create(),
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
return await root.Parse(args).InvokeAsync();
