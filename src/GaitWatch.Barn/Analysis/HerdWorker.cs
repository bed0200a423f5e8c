using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>
/// Turns inputs into state: frames and tags into crossings, writes into the register, and the history of all of it into
/// assessments and alerts. One change of the store at a time, whole or not at all, so that a crash between two repeats
/// nothing that shows.
/// </summary>
/// <remarks>Not safe for use by several threads at once. One worker a store.</remarks>
public sealed class HerdWorker
{
    // Further behind than one change takes, larger changes are cheaper: late frames are then analysed together.
    private const int LargestChange = 50_000;

    private readonly BarnStore _store;
    private readonly BarnOptions _options;
    private readonly TimeProvider _time;
    private readonly BarnMetrics _metrics;
    private readonly ILogger<HerdWorker> _log;
    private readonly Dictionary<string, CrossingUpdate> _platforms;
    private readonly FoldRunner _runner;
    private KnownEvents? _known;
    private DateTimeOffset? _newest;

    /// <summary>Makes a worker; nothing is read before <see cref="RunOnceAsync"/>.</summary>
    /// <param name="store">The store.</param>
    /// <param name="options">The settings.</param>
    /// <param name="time">The clock, used only for when something was revised and against devices whose clock runs ahead.</param>
    /// <param name="metrics">What is measured.</param>
    /// <param name="log">The log.</param>
    public HerdWorker(BarnStore store, BarnOptions options, TimeProvider time, BarnMetrics metrics, ILogger<HerdWorker> log)
    {
        _store = store;
        _options = options;
        _time = time;
        _metrics = metrics;
        _log = log;
        _platforms = options.Platforms.ToDictionary(
            platform => platform.Id, platform => new CrossingUpdate(platform, options.Gait), StringComparer.Ordinal);
        _runner = new FoldRunner(options, time, log);
    }

    /// <summary>A change was committed that may show.</summary>
    public event Action? Changed;

    /// <summary>Folds until the state shows everything in the log.</summary>
    /// <param name="progress">Told of the newest sequence number folded after each change; may be null.</param>
    /// <param name="cancellation">Stops between two changes.</param>
    /// <exception cref="StoreUnavailableException">The store cannot be read or written.</exception>
    public async Task CatchUpAsync(IProgress<long>? progress = null, CancellationToken cancellation = default)
    {
        while (await RunOnceAsync(cancellation))
            progress?.Report(_store.Progress.Folded);
    }

    /// <summary>Folds the next inputs.</summary>
    /// <returns>False when there were none.</returns>
    /// <exception cref="StoreUnavailableException">The store cannot be read or written; nothing was changed.</exception>
    /// <remarks>
    /// An input at which the analysis fails is set aside: kept as rejected, <c>analysis-failed</c>, and left out. Where the failure does
    /// not say which it was, it is found by halves, and must fail twice.
    /// </remarks>
    public async Task<bool> RunOnceAsync(CancellationToken cancellation = default)
    {
        var most = (int)Math.Clamp(_store.Progress.Appended - _store.Progress.Folded, _options.MostPerChange, LargestChange);
        var failures = 0;
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            try
            {
                return await ChangeAsync(most, setAside: most == 1 && failures >= 2, cancellation);
            }
            catch (Exception fault) when (fault is not (StoreUnavailableException or OperationCanceledException))
            {
                // A defect met by one input must not stop all others: it is found by halves, and set aside.
                Forget();
                _metrics.FoldFailed();
                failures = most == 1 || fault is PoisonInputException ? failures + 1 : 0;
                _log.ChangeFailed(most, fault);
                if (fault is PoisonInputException { Key: { Length: > 0 } key })
                    await SetAsideAsync(key, fault);
                else if (most > 1)
                    most /= 2;
                else if (failures > 2)
                    throw;
            }
            catch
            {
                Forget();
                throw;
            }
        }
    }

    private void Forget()
    {
        // What is in memory may be ahead of the store, whose change was taken back.
        _runner.Reset();
        _known = null;
    }

    private async Task<bool> ChangeAsync(int most, bool setAside, CancellationToken cancellation)
    {
        using var span = BarnTraces.Change();
        var begun = _time.GetTimestamp();
        var failed = new List<RejectedInput>();
        await using (var change = await _store.BeginAsync(cancellation))
        {
            var folded = await change.FoldedAsync();
            _known ??= await KnownEvents.FoldedAsync(change, _options.Calendar, folded);
            await _runner.LoadAsync(change, _known);
            var batch = await change.InputsAfterAsync(folded, most);
            if (batch.LastSeq == folded && !_runner.IsOutdated)
                return false;
            if (setAside)
                failed.Add(SetAside(batch));
            else
                await FoldAsync(change, batch, failed);
            await change.CommitAsync(batch.LastSeq);
        }


        if (failed.Count > 0)
            await _store.Inputs.AppendAsync(failed, cancellation);
        _metrics.Folded(_time.GetElapsedTime(begun));
        Changed?.Invoke();
        return true;
    }

    private async Task FoldAsync(StateChange change, InputBatch batch, List<RejectedInput> failed)
    {
        var known = _known!.With(batch.Writes);
        var earliest = known.EarliestDifference(_known);
        earliest = Earliest.Of(earliest, await CrossingsAsync(change, batch, known.Register, failed));
        earliest = Earliest.Of(earliest, await DevicePassagesAsync(change, batch, known.Register));
        earliest = Earliest.Of(earliest, await ReassignAsync(change, batch, known.Register));
        await _runner.AdvanceAsync(change, known, earliest);
        RecoveryUpdate.Run(change, known, _runner.Touched, known.CowsTreatedOtherwise(_known), new RecoveryOptions { TimeZone = _options.Calendar.Zone });
        await PruneAsync(change, batch);
        _known = known;
    }

    private async Task<DateTimeOffset?> CrossingsAsync(StateChange change, InputBatch batch, HerdRegister register, List<RejectedInput> failed)
    {
        DateTimeOffset? earliest = null;
        var keptFrom = _store.Progress.FramesKeptFrom;
        var touched = batch.Frames.Select(span => span.Platform).Concat(batch.Tags.Select(span => span.Platform)).Distinct(StringComparer.Ordinal);
        foreach (var name in touched)
        {
            // A platform that is no longer set up keeps its frames and waits for its geometry.
            if (!_platforms.TryGetValue(name, out var platform))
                continue;
            var passages = await platform.RunAsync(
                change,
                [.. batch.Frames.Where(span => span.Platform == name)],
                [.. batch.Tags.Where(span => span.Platform == name)],
                keptFrom,
                (span, fault) => failed.Add(SetAside(span, fault)));
            earliest = Earliest.Of(earliest, (await passages.WriteAsync(register)).Earliest);
        }

        return earliest;
    }

    private async Task<DateTimeOffset?> DevicePassagesAsync(StateChange change, InputBatch batch, HerdRegister register)
    {
        if (batch.Passages.IsEmpty)
            return null;
        var written = batch.Passages.Select(one => one.Passage.ToPassage(one.Platform, _options.Gait)).ToArray();
        var replaced = await change.ReplacePassagesAsync([], written, fromFrames: false, register);
        return Earliest.Of(replaced, Earliest.EndOfAccepted(written));
    }

    private static async Task<DateTimeOffset?> ReassignAsync(StateChange change, InputBatch batch, HerdRegister register)
    {
        var cows = batch.Writes.OfType<RegisterWrite>().Select(write => write.Registration.Cow).Distinct(StringComparer.Ordinal);
        var tags = cows.SelectMany(register.TagsOf).Distinct().ToArray();
        return tags.Length == 0 ? null : await change.ReassignAsync(tags, register);
    }

    private async Task PruneAsync(StateChange change, InputBatch batch)
    {
        var now = _time.GetUtcNow();
        _newest = batch.Frames.Concat(batch.Tags).Select(span => (DateTimeOffset?)span.To)
            .Concat(batch.Passages.Select(one => (DateTimeOffset?)one.Passage.EndedAt))
            .Where(at => FrameRetention.IsBelieved(at!.Value, now))
            .Append(_newest)
            .Max();
        // Only when nothing waits to be folded, or a frame could be removed before it was looked at.
        if (_newest is not { } newest || batch.LastSeq < _store.Progress.Appended)
            return;
        var keptFrom = FrameRetention.KeptFrom(_options.Calendar, _options.FrameRetentionDays, newest);
        if (_store.Progress.FramesKeptFrom is { } already && keptFrom <= already)
            return;
        await change.PruneFramesAsync(keptFrom);
    }

    private RejectedInput SetAside(InputSpan span, Exception fault)
    {
        _log.SpanFailed(span.Platform, Rfc3339.Show(span.From), Rfc3339.Show(span.To), fault);
        return new RejectedInput(
            $"{TopicScheme.Root}/{_options.Farm}/{span.Platform}/frames", RejectionReasons.AnalysisFailed,
            $"frames from {Rfc3339.Show(span.From)} to {Rfc3339.Show(span.To)} could not be analysed ({fault.GetType().Name}): a defect of GaitWatch, please report it.", []);
    }

    private RejectedInput SetAside(InputBatch batch)
    {
        var what = batch switch
        {
            { Frames: [var span, ..] } => $"frames of '{span.Platform}' at {Rfc3339.Show(span.From)}",
            { Tags: [var span, ..] } => $"tag of '{span.Platform}' at {Rfc3339.Show(span.From)}",
            { Passages: [var one, ..] } => $"passage '{one.Passage.DeviceId}' of '{one.Platform}'",
            { Writes: [var write, ..] } => $"{write.GetType().Name} at {Rfc3339.Show(write.At)}",
            _ => "an input without content",
        };
        _log.InputSetAside(what, batch.LastSeq);
        return new RejectedInput(
            what, RejectionReasons.AnalysisFailed, $"{what} could not be analysed: a defect of GaitWatch, please report it.", []);
    }

    private async Task SetAsideAsync(string key, Exception fault)
    {
        _runner.SetAside(key);
        _log.InputSetAside(key, 0);
        await _store.Inputs.AppendAsync(
            [new RejectedInput(key, RejectionReasons.AnalysisFailed, $"{fault.Message} It is left out: a defect of GaitWatch, please report it.", [])]);
    }
}
