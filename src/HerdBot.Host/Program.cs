using System.CommandLine;
using HerdBot.Host.Commands;

var root = new RootCommand("HerdBot helps a llama and alpaca farm to get every cria through birth and its first weeks.")
{
    ReadCommand.Create(),
    RehearseCommand.Create(),
    TryCommand.Create(),
};
return await root.Parse(args).InvokeAsync();
