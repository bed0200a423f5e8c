using GaitWatch.Simulator;

namespace GaitWatch;

/// <summary>
/// The demonstration: the real service, and beside it a simulated barn that speaks to it as a real one does, over MQTT and the
/// API alone.
/// </summary>
internal static class Demo
{
    /// <summary>Starts it, tells its history, lets cows cross until it is stopped, and cleans up.</summary>
    /// <param name="context">Of the command.</param>
    /// <param name="folder">Where the store is kept; null for a temporary folder.</param>
    /// <param name="seed">Everything is drawn from it.</param>
    /// <param name="cancellation">Stops it.</param>
    public static async Task<int> RunAsync(CommandContext context, string? folder, long seed, CancellationToken cancellation)
    {
        var temporary = folder is null ? Directory.CreateTempSubdirectory("gaitwatch-demo-").FullName : null;
        try
        {
            await RunInAsync(context, folder ?? temporary!, seed, cancellation);
        }
        catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
        {
            await context.Error.WriteLineAsync("The demo has ended.");
        }
        catch (InvalidOperationException e) when (e.InnerException is not OperationCanceledException || !cancellation.IsCancellationRequested)
        {
            throw new CommandFailedException(e.Message, e);
        }
        finally
        {
            if (temporary is not null)
                Directory.Delete(temporary, recursive: true);
        }

        return ExitCode.Done;
    }

    private static async Task RunInAsync(CommandContext context, string folder, long seed, CancellationToken cancellation)
    {
        var configuration = new ConfigurationBuilder()
            // The log of a busy year would drown what the demo has to say; the command line can ask for it.
            .AddConfiguration(context.Configuration())
            .AddInMemoryCollection([new("Logging:LogLevel:Default", "Warning")])
            .AddCommandLine([.. context.SettingArguments])
            .Build();
        var settings = DemoPorts.Choose(context.Settings(configuration), context.Out) with { DataDirectory = Path.GetFullPath(folder) };
        await using var service = await BarnService.StartAsync(settings, configuration, mqtt: true, context.Time, cancellation);
        var url = ServiceConnection.OwnAddress(settings.Http);
        using var api = new ApiClient(ServiceConnection.Client(url, settings.Http));
        await context.Out.WriteLineAsync($"GaitWatch runs at {url} . Its barn is simulated: sixty cows and a year of crossings, all invented.");

        var progress = new ProgressLine(context);
        var feed = new BarnFeedOptions { Topics = new(settings.Farm, settings.Platforms[0].Id) };
        var barn = new DemoBarn(seed, context.Time.GetUtcNow(), feed);
        await new DemoHistory(api, settings.Mqtt, progress, context.Time).TellAsync(barn, feed, cancellation);
        progress.End();
        await DemoGuide.WriteAsync(context, api, barn, url, settings.TimeZone, cancellation);

        await using var broker = await DemoHistory.ConnectAsync(settings.Mqtt, feed.Topics, context.Time, cancellation);
        await barn.LiveAsync(broker, context.Time, cancellationToken: cancellation);
    }
}
