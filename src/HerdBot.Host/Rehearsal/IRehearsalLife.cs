using HerdBot.App.Messages;
using HerdBot.App.Ports;
using HerdBot.Core.Herd;
using NodaTime;

namespace HerdBot.Host.Rehearsal;

/// <summary>The program that a script is played on, from one start to the next power cut.</summary>
internal interface IRehearsalLife
{
    /// <summary>Whose history tells what came of the script.</summary>
    GroupId Group { get; }

    HerdState State { get; }

    IHerdStore Store { get; }

    /// <summary>Hands something over as a chat would, and waits until it has been worked on.</summary>
    Task HearAsync(Inbound inbound);

    /// <summary>Lets the clock run on, from due moment to due moment, each woken by Quartz.</summary>
    Task RunToAsync(Instant target);

    /// <summary>Ends without warning: the data file is left as it is.</summary>
    Task CutAsync();

    /// <summary>Ends in good order.</summary>
    Task EndAsync();
}
