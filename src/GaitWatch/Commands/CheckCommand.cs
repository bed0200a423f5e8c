using System.Collections.Immutable;
using System.CommandLine;
using System.Text.Json;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>check</c>: what is wrong with the settings, the store, the broker, the clock, the platforms, and what to do.</summary>
internal static class CheckCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var json = new Option<bool>("--json") { Description = "Print the findings as JSON." };
        var health = new Option<bool>("--health") { Description = "Only ask the running service whether it is ready; prints a line. For whatever watches and restarts it." };
        var verb = new VerbCommand("check", "Looks at settings, data folder, store, clock, pages, broker and platforms: what is wrong and what to do. Exit code 1 when something is.")
        {
            Examples =
            [
                ("gaitwatch check", "before the first start, and whenever something is odd"),
                ("gaitwatch check --health", "as a health check of a container"),
                ("gaitwatch check --json", "for a program that watches the barn"),
                ("gaitwatch check --GaitWatch:Mqtt:Port=1884", "what a setting would do"),
            ],
        };
        verb.Add(json);
        verb.Add(health);
        verb.SetAction(async (parsed, cancellation) =>
        {
            if (parsed.GetValue(health))
                return await HealthCheck.RunAsync(context, cancellation);
            var lines = await LinesAsync(context, cancellation);
            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(JsonSerializer.Serialize(lines.Select(line => new { line.What, State = line.StateWord, line.Found, line.ToDo }), ContractJson.Options));
            else
                Write(context, lines);
            return lines.Any(line => line.State == CheckState.Fault) ? ExitCode.Failed : ExitCode.Done;
        });
        return verb;
    }

    private static async Task<ImmutableArray<CheckLine>> LinesAsync(CommandContext context, CancellationToken cancellation)
    {
        SettingsResult read;
        try
        {
            read = CommandContext.ReadSettings(context.Configuration());
        }
        catch (CommandFailedException e)
        {
            return [CheckLine.Fault("settings", e.Message)];
        }

        var lines = ImmutableArray.CreateBuilder<CheckLine>();
        lines.AddRange(read.Faults.Select(fault => CheckLine.Fault("settings", fault.ToString())));
        lines.AddRange(read.Notices.Select(notice => CheckLine.Notice("settings", notice)));
        if (read.Settings is not { } settings)
            return lines.ToImmutable();
        if (lines.Count == 0)
            lines.Add(CheckLine.Ok("settings", "All can be used."));

        lines.AddRange(DataDirectoryCheck.Of(settings.DataDirectory));
        var (pages, service) = await PagesAsync(settings, cancellation);
        using (service)
        {
            var (store, inFuture) = service is null
                ? await StoreCheck.OfAsync(Translation.Store(settings), context.Time, cancellation)
                : await OfServiceAsync(service, context.Time, cancellation);
            lines.Add(store);
            lines.AddRange(ClockCheck.Of(context.Time.GetUtcNow(), Built(), inFuture, settings.TimeZone));
            lines.AddRange(pages);
            lines.AddRange(PagesCheck.Certificate(settings.Http, context.Time.GetUtcNow()));
            lines.Add(await BrokerCheck.OfAsync(settings.Mqtt, service is not null, cancellation));
            if (settings.Influx is { } influx)
                lines.Add(await InfluxCheck.OfAsync(influx, service, cancellation));
            lines.AddRange(service is null
                ? PlatformsCheck.SetUp(settings.Platforms)
                : PlatformsCheck.Health(await service.GetAsync<IReadOnlyList<PlatformView>>("api/platforms", cancellation), settings.TimeZone));
        }

        return lines.ToImmutable();
    }

    // The running service, if one answers at the settings' first address, and how the pages stand.
    private static async Task<(IEnumerable<CheckLine> Lines, ApiClient? Service)> PagesAsync(GaitWatchSettings settings, CancellationToken cancellation)
    {
        var url = ServiceConnection.OwnAddress(settings.Http);
        var client = ServiceConnection.Client(url, settings.Http);
        try
        {
            if (await ServiceConnection.AnswersAsync(client, url, cancellation))
                return ([CheckLine.Ok("pages", $"The service runs and answers at {url}.")], new ApiClient(client));
            client.Dispose();
            return (PagesCheck.Free(settings.Http), null);
        }
        catch (CommandFailedException e)
        {
            client.Dispose();
            return ([CheckLine.Fault("pages", e.Message, "Stop the other program, or set GaitWatch:Http:Urls to another port.")], null);
        }
    }

    private static async Task<(CheckLine Line, DateTimeOffset? InFuture)> OfServiceAsync(ApiClient service, TimeProvider time, CancellationToken cancellation)
    {
        try
        {
            var counts = await service.GetAsync<IngestView>("api/ingest", cancellation);
            var soon = time.GetUtcNow().AddMinutes(5).UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
            var late = await service.GetAsync<IReadOnlyList<PassageView>>($"api/passages?from={soon}&page=1&pageSize=1", cancellation);
            return (CheckLine.Ok("store", $"The running service holds it: {counts.Stored} inputs, {counts.Rejected} rejected, {counts.Pending} not analysed yet."), late.Count > 0 ? late[0].StartedAt : null);
        }
        catch (CommandFailedException e)
        {
            return (CheckLine.Fault("store", e.Message), null);
        }
    }

    private static DateTimeOffset Built() => File.GetLastWriteTimeUtc(typeof(CheckCommand).Assembly.Location);

    private static void Write(CommandContext context, ImmutableArray<CheckLine> lines)
    {
        var listing = new Listing("What", "State", "Found");
        foreach (var line in lines)
        {
            listing.Add(line.What, line.StateWord, line.Found);
            if (line.ToDo is not null)
                listing.Add("", "", $"-> {line.ToDo}");
        }

        listing.WriteTo(context);
        var faults = lines.Count(line => line.State == CheckState.Fault);
        context.Out.WriteLine();
        context.Out.WriteLine(faults switch { 0 => "Nothing is wrong.", 1 => "One thing is wrong.", _ => $"{faults} things are wrong." });
    }
}
