using System.Diagnostics.Metrics;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>What the barn side measures of itself.</summary>
public sealed class BarnMetrics : IDisposable
{
    /// <summary>The meter's name.</summary>
    public const string MeterName = "GaitWatch.Barn";

    private readonly Meter _meter = new(MeterName);
    private readonly Counter<long> _received;
    private readonly Counter<long> _stored;
    private readonly Counter<long> _rejected;
    private readonly Counter<long> _duplicates;
    private readonly Histogram<double> _commit;
    private readonly Histogram<double> _fold;
    private readonly Counter<long> _foldFailures;
    private readonly Counter<long> _published;
    private readonly Lock _gate = new();
    private Mean _commits;
    private Mean _folds;
    private long _failures;

    /// <summary>Makes the instruments.</summary>
    /// <param name="store">Whose progress is told.</param>
    public BarnMetrics(BarnStore store)
    {
        _received = _meter.CreateCounter<long>("gaitwatch.inputs.received", "{input}", "Messages taken in, of every kind.");
        _stored = _meter.CreateCounter<long>("gaitwatch.inputs.stored", "{input}", "Inputs that became durable and were new.");
        _rejected = _meter.CreateCounter<long>("gaitwatch.inputs.rejected", "{input}", "Messages kept as rejected.");
        _duplicates = _meter.CreateCounter<long>("gaitwatch.inputs.duplicates", "{input}", "Inputs that were there already.");
        _commit = _meter.CreateHistogram<double>("gaitwatch.commit.duration", "s", "How long a batch of inputs took to become durable.");
        _fold = _meter.CreateHistogram<double>("gaitwatch.fold.duration", "s", "How long a change of the derived state took.");
        _foldFailures = _meter.CreateCounter<long>("gaitwatch.fold.failures", "{change}", "Changes of the derived state that failed and were tried again.");
        _published = _meter.CreateCounter<long>("gaitwatch.topics.published", "{message}", "Retained messages published or cleared.");
        _meter.CreateObservableGauge(
            "gaitwatch.worker.lag", () => Math.Max(0, store.Progress.Appended - store.Progress.Folded), "{input}",
            "Inputs that are durable and not yet folded into the state.");
    }

    /// <inheritdoc/>
    public void Dispose() => _meter.Dispose();

    internal bool Owns(Instrument instrument) => ReferenceEquals(instrument.Meter, _meter);

    internal void Received() => _received.Add(1);

    internal void Committed(AppendResult result, TimeSpan took)
    {
        _stored.Add(result.Stored);
        _rejected.Add(result.Rejected);
        _duplicates.Add(result.Duplicates);
        _commit.Record(took.TotalSeconds);
        lock (_gate)
            _commits = _commits.With(took.TotalSeconds);
    }

    internal void Folded(TimeSpan took)
    {
        _fold.Record(took.TotalSeconds);
        lock (_gate)
            _folds = _folds.With(took.TotalSeconds);
    }

    internal void FoldFailed()
    {
        _foldFailures.Add(1);
        lock (_gate)
            _failures++;
    }

    /// <summary>Mean seconds of a commit and of a change since this was last asked, null when there was none; failures since the start.</summary>
    internal (double? Commit, double? Fold, long Failures) SinceLastAsked()
    {
        lock (_gate)
        {
            var told = (_commits.Value, _folds.Value, _failures);
            _commits = default;
            _folds = default;
            return told;
        }
    }

    internal void Published(int messages) => _published.Add(messages);

    private readonly record struct Mean(double Sum, int Count)
    {
        public double? Value => Count == 0 ? null : Sum / Count;

        public Mean With(double value) => new(Sum + value, Count + 1);
    }
}
