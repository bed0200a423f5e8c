using GaitWatch.Store;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>
/// Keeps the retained topics as the store has them: after each change, and at every connection, whatever the broker kept
/// from earlier, and again what may have passed by somebody who subscribed while it went out. Sends only what differs, and not
/// more often than <see cref="BarnOptions.PublishEvery"/>, less often when it takes long.
/// </summary>
internal sealed class Publisher : BackgroundService
{
    // At most a tenth of the time goes into publishing.
    private const int RestPerWork = 9;
    private const long Nobody = long.MaxValue;

    private readonly BarnStore _store;
    private readonly BarnOptions _options;
    private readonly IBrokerLink _link;
    private readonly HerdWorker _worker;
    private readonly BarnMetrics _metrics;
    private readonly TimeProvider _time;
    private readonly ILogger<Publisher> _log;
    private readonly TopicScheme _topics;
    private readonly Retained _retained = new();
    private readonly SemaphoreSlim _due = new(0, 1);
    private long _joinedSince = Nobody;

    public Publisher(
        BarnStore store, BarnOptions options, IBrokerLink link, HerdWorker worker, BarnMetrics metrics, TimeProvider time, ILogger<Publisher> log)
    {
        _store = store;
        _options = options;
        _link = link;
        _worker = worker;
        _metrics = metrics;
        _time = time;
        _log = log;
        _topics = new TopicScheme(options.Farm);
        // Before anything is started, so that the first connection is not missed.
        _worker.Changed += Due;
        _link.Connecting += _retained.Forget;
        _link.Connected += Due;
        _link.SeenOut += Seen;
        _link.Joined += Joined;
    }

    public override void Dispose()
    {
        _worker.Changed -= Due;
        _link.Connecting -= _retained.Forget;
        _link.Connected -= Due;
        _link.SeenOut -= Seen;
        _link.Joined -= Joined;
        _due.Dispose();
        base.Dispose();
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            while (true)
            {
                await _due.WaitAsync(stoppingToken);
                var begun = _time.GetTimestamp();
                await TryPublishAsync(stoppingToken);
                await Task.Delay(Rest(_time.GetElapsedTime(begun)), _time, stoppingToken);
            }
        }
        catch (OperationCanceledException)
        {
            // What is published stays as it is: retained, until the next start puts it right.
        }
    }

    /// <summary>On a machine that is busy with inputs, looking what shows must not become the greater part of the work.</summary>
    private TimeSpan Rest(TimeSpan took) => took * RestPerWork > _options.PublishEvery ? took * RestPerWork : _options.PublishEvery;

    private async Task TryPublishAsync(CancellationToken stopping)
    {
        if (!_link.IsConnected)
            return;
        var joinedSince = Interlocked.Exchange(ref _joinedSince, Nobody);
        try
        {
            await PublishAsync(stopping);
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            throw;
        }
        catch (Exception fault)
        {
            // The next connection begins anew; while this one lasts it is tried again.
            _log.PublishingFailed(fault.Message);
            if (_link.IsConnected)
                Due();
        }

        // A round later, so that it comes after whatever the broker hands the newcomer as kept.
        if (joinedSince != Nobody && _retained.Doubt(joinedSince))
            Due();
    }

    private async Task PublishAsync(CancellationToken stopping)
    {
        var missing = _retained.Missing(await OutMessages.OfAsync(_store.Reader, _topics, stopping));
        foreach (var (topic, payload) in missing)
        {
            await _link.PublishAsync(topic, payload, stopping);
            _retained.Holds(topic, payload, _time.GetTimestamp());
        }

        _metrics.Published(missing.Length);
    }

    private void Seen(string topic, byte[] payload)
    {
        _retained.Holds(topic, payload, _time.GetTimestamp());
        Due();
    }

    private void Joined(long since)
    {
        long known;
        do
            known = Interlocked.Read(ref _joinedSince);
        while (since < known && Interlocked.CompareExchange(ref _joinedSince, since, known) != known);
        Due();
    }

    private void Due()
    {
        try
        {
            _due.Release();
        }
        catch (SemaphoreFullException)
        {
            // Already due.
        }
    }
}
