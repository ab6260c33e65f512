using System.Globalization;
using System.Net;
using System.Text;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace HerdBot.Host.Health;

/// <summary>Tells a monitor on the same machine how the bot is: 200 where it is well, else 503, and why.</summary>
/// <param name="doctor">Looks.</param>
/// <param name="port">Where it is asked, on the loopback address.</param>
/// <param name="log">For a port that is taken.</param>
internal sealed partial class HealthPage(Doctor doctor, int port, ILogger<HealthPage> log) : BackgroundService
{
    /// <summary>Where it is asked.</summary>
    public static string Address(int port) => string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}/health");

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var listener = new HttpListener { Prefixes = { Address(port) + "/" } };
        try
        {
            listener.Start();
        }
        catch (HttpListenerException taken)
        {
            // Nobody can ask then; the bot works all the same.
            LogTaken(port, taken.Message);
            return;
        }
        await using var stop = stoppingToken.Register(listener.Stop);
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await AnswerAsync((await listener.GetContextAsync()).Response, stoppingToken);
            }
            catch (Exception gone) when (gone is HttpListenerException or ObjectDisposedException or IOException)
            {
                // The asker hung up, or the listener was stopped.
            }
        }
    }

    private async Task AnswerAsync(HttpListenerResponse response, CancellationToken cancellation)
    {
        var report = await doctor.LookAsync(cancellation);
        response.StatusCode = report.Well ? 200 : 503;
        response.ContentType = "application/json";
        await response.OutputStream.WriteAsync(Encoding.UTF8.GetBytes(report.ToJson()), cancellation);
        response.Close();
    }

    [LoggerMessage(3403, LogLevel.Error, "Nobody can ask how the bot is at port {Port}: {Why}")]
    private partial void LogTaken(int port, string why);
}
