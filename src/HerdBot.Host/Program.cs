using System.CommandLine;
using HerdBot.Host.Commands;

return new RootCommand("HerdBot") { ReadCommand.Create() }.Parse(args).Invoke();
