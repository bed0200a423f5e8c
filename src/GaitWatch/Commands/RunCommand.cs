using System.CommandLine;

namespace GaitWatch;

/// <summary><c>run</c>: the service.</summary>
internal static class RunCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var verb = new VerbCommand("run", "The service: takes readings over MQTT, analyses them, serves the pages and the API, until it is stopped (Ctrl-C, or the system's stop).")
        {
            Examples =
            [
                ("gaitwatch run", "with the settings of appsettings.json"),
                ("gaitwatch run --GaitWatch:Http:Urls=http://*:8080", "pages for the whole network"),
                ("gaitwatch run --GaitWatch:Mqtt:Embedded=false --GaitWatch:Mqtt:Host=broker.farm", "with a broker of your own"),
            ],
        };
        verb.SetAction(async (_, cancellation) =>
        {
            var configuration = context.Configuration();
            var settings = context.Settings(configuration, tellNotices: true);
            await using var service = await BarnService.StartAsync(settings, configuration, mqtt: true, context.Time, cancellation);
            var broker = settings.Mqtt.Embedded ? "embedded broker" : "broker";
            await context.Out.WriteLineAsync(
                $"GaitWatch runs. Pages: {string.Join(' ', settings.Http.Urls)}; readings: {broker} at {settings.Mqtt.Host}:{settings.Mqtt.Port}; store: {settings.DataDirectory}. Ctrl-C stops it.");
            await service.UntilStoppedAsync(cancellation);
            return ExitCode.Done;
        });
        return verb;
    }
}
