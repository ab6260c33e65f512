using HerdBot.App.Access;
using HerdBot.Host.Telegram;
using Microsoft.Extensions.Hosting;

namespace HerdBot.Host.Composition;

/// <summary>Shows the one-time code on the console while nobody owns the bot.</summary>
public sealed class SetUpInvitation(AccessDoor door, SetUpCode code) : IHostedService
{
    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        if (!door.HasOwner)
        {
            Console.Out.WriteLine(SetUpCodes.Invitation(code, null));
        }
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
