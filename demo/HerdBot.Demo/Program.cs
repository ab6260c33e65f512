using HerdBot.Demo;

return await DemoCommand.Create().Parse(args).InvokeAsync();
