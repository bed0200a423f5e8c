using System.CommandLine;
using System.Diagnostics;

namespace GaitWatch.Simulator;

/// <summary><c>publish</c>: the barn's messages to a broker, and its writes to the service if one is named.</summary>
internal static class PublishCommand
{
    public static Command Build(TextWriter output, TextWriter error)
    {
        var command = new Command("publish", "Publishes a barn to an MQTT broker, as the devices of a farm do.");
        var host = new Option<string>("--host") { Description = "Broker's host.", DefaultValueFactory = _ => "127.0.0.1" };
        var port = new Option<int>("--port") { Description = "Broker's port.", DefaultValueFactory = _ => 1883 };
        var username = new Option<string?>("--username") { Description = "User name at the broker." };
        var password = new Option<string?>("--password") { Description = "Password at the broker." };
        var mqtt5 = new Option<bool>("--mqtt5") { Description = "MQTT 5.0 instead of 3.1.1." };
        var inFlight = new Option<int?>("--in-flight") { Description = "Messages under way at once, 1 to 60000. Default 200." };
        var register = new Option<string?>("--register") { Description = "The service's address, as http://127.0.0.1:8080, for herd register, visits and findings. Without it they are left out." };
        var live = new Option<bool>("--live") { Description = "After the history, crossings as they happen, in frames unless --summed is given, until Ctrl-C. With --days 0: only these." };
        var fast = new Option<bool>("--fast") { Description = "Only the history, as fast as the broker acknowledges (default)." };
        var seconds = new Option<int?>("--seconds-between") { Description = "With --live: seconds between crossings, 5 to 3600. Default 9." };
        port.Check(value => value is < 1 or > 65535 ? $"{value}: from 1 to 65535 would be right." : null);
        register.Check(value => Uri.TryCreate(value, UriKind.Absolute, out var uri) && (uri.Scheme is "http" or "https") ? null : $"'{value}': an address as http://127.0.0.1:8080 would be right.");
        inFlight.Within(1, 60000);
        seconds.Within(5, 3600);
        var herd = new HerdOptions(command);
        foreach (var option in new Option[] { host, port, username, password, mqtt5, inFlight, register, live, fast, seconds })
            command.Options.Add(option);
        command.Validators.Add(result =>
        {
            if (result.ValueOrDefault(live) && result.ValueOrDefault(fast))
                result.AddError("--live and --fast exclude each other: choose one.");
            if (!herd.HasHistory(result) && !result.ValueOrDefault(live))
                result.AddError("--days 0 without --live publishes nothing: give days, or --live.");
        });

        command.SetAction(async (parsed, cancellationToken) =>
        {
            var time = TimeProvider.System;
            var feed = herd.Feed(parsed);
            try
            {
                var barn = new DemoBarn(herd.Herd(parsed, time.GetUtcNow()), feed);
                using var client = parsed.GetValue(register) is { } address ? new HttpClient { BaseAddress = new(address) } : null;
                await using var transport = await MqttTransport.ConnectAsync(
                    new()
                    {
                        Host = parsed.GetValue(host)!,
                        Port = parsed.GetValue(port),
                        Username = parsed.GetValue(username),
                        Password = parsed.GetValue(password),
                        Mqtt5 = parsed.GetValue(mqtt5),
                        InFlight = parsed.GetValue(inFlight) ?? 200,
                        Topics = feed.Topics,
                    },
                    client is null ? null : new HttpTransport(client),
                    time,
                    cancellationToken);
                if (herd.HasHistory(parsed))
                    await HistoryAsync(barn, transport, output, error, cancellationToken);
                if (parsed.GetValue(live))
                {
                    await output.WriteLineAsync("Cows are crossing. Ctrl-C ends it.");
                    await barn.LiveAsync(transport, time, parsed.GetValue(seconds) ?? 9, cancellationToken);
                }

                return 0;
            }
            catch (OperationCanceledException)
            {
                await error.WriteLineAsync("Ended.");
                return 0;
            }
            catch (InvalidOperationException failure)
            {
                await error.WriteLineAsync(failure.Message);
                return 1;
            }
        });
        return command;
    }

    private static async Task HistoryAsync(DemoBarn barn, MqttTransport transport, TextWriter output, TextWriter error, CancellationToken cancellationToken)
    {
        var watch = Stopwatch.StartNew();
        await barn.HistoryAsync(transport, new LineProgress(error), cancellationToken);
        await output.WriteLineAsync(FormattableString.Invariant(
            $"{transport.Sent} messages acknowledged in {watch.Elapsed.TotalSeconds:0.0} s, {transport.Sent / watch.Elapsed.TotalSeconds:0} a second."));
        if (transport.Reconnects > 0)
            await output.WriteLineAsync($"The connection was lost and made again {transport.Reconnects} times; what was not acknowledged was sent again.");
        if (transport.LeftOut > 0)
            await output.WriteLineAsync($"{transport.LeftOut} writes to register, visits and findings left out: no --register.");
    }
}
