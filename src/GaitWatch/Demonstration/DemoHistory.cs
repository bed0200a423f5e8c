using System.Globalization;
using System.Net.Http.Headers;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>Tells the simulated year: the register over the API, the passages over MQTT, as fast as both take them.</summary>
internal sealed class DemoHistory(ApiClient api, MqttSettings mqtt, ProgressLine progress, TimeProvider time)
{
    // A device keeps some messages in flight; a year told in seconds needs many, for what is acknowledged together is committed together.
    private const int ManyInFlight = 5000;

    private static readonly TimeSpan LookAgain = TimeSpan.FromMilliseconds(100);

    /// <summary>Tells everything, and waits until the analysis has seen it.</summary>
    public async Task TellAsync(DemoBarn barn, BarnFeedOptions feed, CancellationToken cancellation)
    {
        progress.Show("What the farm and its trimmer entered in the year …");
        await EnterAsync(barn, feed, cancellation);
        await using (var broker = await ConnectAsync(mqtt, feed.Topics, time, cancellation, ManyInFlight))
        {
            var told = new Progress(progress);
            await BarnPump.SendAsync(
                barn.History().OfType<BarnMessage>(), broker, new(barn.Herd.Spec.Start, TimeOnly.MinValue, TimeSpan.Zero), barn.Herd.Spec.End, told, null, cancellation);
        }

        for (var pending = long.MaxValue; pending > 0; pending = (await api.GetAsync<IngestView>("api/ingest", cancellation)).Pending)
        {
            if (pending != long.MaxValue)
            {
                progress.Show($"{pending} readings to be analysed …");
                await Task.Delay(LookAgain, cancellation);
            }
        }
    }

    /// <summary>Connects to the broker as the platform's device.</summary>
    public static Task<MqttTransport> ConnectAsync(MqttSettings mqtt, Topics topics, TimeProvider time, CancellationToken cancellation, int inFlight = 200) =>
        MqttTransport.ConnectAsync(new MqttTransportOptions { Host = mqtt.Host, Port = mqtt.Port, Topics = topics, InFlight = inFlight }, null, time, cancellation);

    // The year's entries all at once, each with the instant it holds from: what follows from them does not depend on when they came.
    private async Task EnterAsync(DemoBarn barn, BarnFeedOptions feed, CancellationToken cancellation)
    {
        using var recording = new MemoryStream();
        var transport = new RecordingTransport(recording);
        foreach (var write in BarnFeed.History(barn.Herd, feed).OfType<BarnWrite>())
            await transport.SendAsync(write, cancellation);
        recording.Position = 0;
        using var body = new StreamContent(recording) { Headers = { ContentType = new MediaTypeHeaderValue("application/x-ndjson") } };
        var taken = await api.PostAsync<ReplayTotal>("api/inputs", body, cancellation);
        if (taken.Rejected > 0)
            throw new CommandFailedException($"What the simulated farm entered was not taken: {taken.Faults[0].Fault}");
    }

    private sealed class Progress(ProgressLine line) : IProgress<BarnProgress>
    {
        public void Report(BarnProgress value) =>
            line.Show(string.Create(CultureInfo.InvariantCulture, $"A year of crossings: {100 * value.Part:0} %, {value.At:yyyy-MM-dd}, {value.Sent} sent"));
    }
}
