using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>
/// Keeps the herd's fold in step with the store. What lies after everything folded is folded on; what lies before takes the
/// newest saved fold from before it and folds all that follows again. Either way the inputs are read from the store in the
/// one order of a history, so that the state is the same however they came.
/// </summary>
internal sealed class FoldRunner(BarnOptions options, TimeProvider time, ILogger log)
{
    // Bounds the memory of a long fold.
    private const int WriteEvery = 5_000;

    private static readonly TimeSpan Resolution = TimeSpan.FromMilliseconds(1);

    private readonly HashSet<string> _setAside = new(StringComparer.Ordinal);
    private readonly RecentFolds _recent = new();
    private readonly List<PassageAssessment> _assessments = [];
    private readonly List<AlertChange> _steps = [];
    private readonly Dictionary<string, DateTimeOffset> _touched = new(StringComparer.Ordinal);
    private HerdFold? _fold;
    private bool _isOutdated;

    /// <summary>Whether the kept folds are of another version, so that everything must be folded again even though nothing came in.</summary>
    public bool IsOutdated => _isOutdated;

    /// <summary>Cows of whom assessments or alerts were written or removed by the last <see cref="AdvanceAsync"/>, and from when on they may differ.</summary>
    public IReadOnlyDictionary<string, DateTimeOffset> Touched => _touched;

    /// <summary>The fold in memory is not to be trusted any more; it is restored before it is used again.</summary>
    public void Reset()
    {
        _fold = null;
        _recent.Clear();
    }

    /// <summary>Leaves an input out from now on.</summary>
    public void SetAside(string key) => _setAside.Add(key);

    /// <summary>Brings the fold in memory to where the store stands, before a change is made.</summary>
    public async Task LoadAsync(StateChange change, KnownEvents known)
    {
        if (_fold is not null)
            return;
        _fold = await RestoreAsync(change, before: null);
        if (_isOutdated)
            return;
        await foreach (var input in PastAsync(change, known))
            Fold(input);
        foreach (var input in Since(known))
            Fold(input);
    }

    /// <summary>Folds what the change has made of the inputs.</summary>
    /// <param name="change">The change; passages and registrations are already written.</param>
    /// <param name="known">What people have entered, this change included.</param>
    /// <param name="earliest">Earliest instant at which the history differs from what was folded; null when it does not.</param>
    /// <returns>Whether anything was folded.</returns>
    public async Task<bool> AdvanceAsync(StateChange change, KnownEvents known, DateTimeOffset? earliest)
    {
        _touched.Clear();
        var again = _isOutdated || (earliest is not null && earliest <= _fold!.Head);
        if (again)
        {
            _fold = await RestoreAsync(change, _isOutdated ? DateTimeOffset.MinValue : earliest);
            var from = _fold.Head + Resolution ?? DateTimeOffset.MinValue;
            foreach (var cow in await change.ForgetFromAsync(from))
                Touch(cow, from);
        }

        _assessments.Clear();
        _steps.Clear();
        var folded = 0;
        var nextDay = DayAfter(_fold!.Head);
        await foreach (var input in PastAsync(change, known))
        {
            // Saved only between two instants, so that what goes on from it begins after its head.
            if (input is PassageInput && input.At >= nextDay && _fold.Head < input.At)
            {
                await change.WriteCheckpointAsync(_fold.Head!.Value, _fold.Save());
                nextDay = DayAfter(input.At);
            }

            nextDay ??= DayAfter(input.At);
            Take(Fold(input));
            folded++;
            if (_assessments.Count >= WriteEvery)
                await FlushAsync(change);
        }

        if (_fold.Head is { } head && _recent.IsDue(folded))
            _recent.Add(head, _fold.Save());
        foreach (var input in Since(known))
        {
            Take(Fold(input));
            folded++;
        }

        await FlushAsync(change);
        if (again)
            await change.SettleRevisionAsync(time.GetUtcNow());
        if (again || folded > 0)
            await change.WriteShiftsAsync(_fold.Shifts);
        _isOutdated = false;
        return again || folded > 0;
    }

    private void Take(FoldStep step)
    {
        if (step.Assessment is not null)
            _assessments.Add(step.Assessment);
        if (!step.Changes.IsDefaultOrEmpty)
            _steps.AddRange(step.Changes);
    }

    private FoldStep Fold(HerdInput input)
    {
        try
        {
            return _fold!.Fold(input);
        }
        catch (Exception fault)
        {
            throw new PoisonInputException($"{input.Key} at {Rfc3339.Show(input.At)} cannot be folded.", fault) { Key = input.Key };
        }
    }

    /// <summary>What follows the fold's head up to the newest passage, in the order of a history.</summary>
    private async IAsyncEnumerable<HerdInput> PastAsync(StateChange change, KnownEvents known)
    {
        var head = _fold!.Head;
        var events = known.All;
        var next = known.FirstAfter(head);
        await foreach (var passage in change.HistoryAsync(head + Resolution ?? DateTimeOffset.MinValue))
        {
            for (; next < events.Length && HerdInput.Order.Compare(events[next], passage) < 0; next++)
            {
                if (!_setAside.Contains(events[next].Key))
                    yield return events[next];
            }

            if (!_setAside.Contains(passage.Key))
                yield return passage;
        }
    }

    /// <summary>The events since the newest passage, as far as event time has come. The fold's head is that passage.</summary>
    private IEnumerable<CowEventInput> Since(KnownEvents known) => known.All
        .Skip(known.FirstAfter(_fold!.Head))
        .TakeWhile(one => one.At <= known.NewestWrite)
        .Where(one => !_setAside.Contains(one.Key));

    private async Task<HerdFold> RestoreAsync(StateChange change, DateTimeOffset? before)
    {
        if (before is { } instant && _recent.Before(instant) is { } recent)
            return HerdFold.Restore(options.Lameness, recent);
        if (await change.CheckpointBeforeAsync(before) is not { } checkpoint)
            return new HerdFold(options.Lameness);
        try
        {
            return HerdFold.Restore(options.Lameness, checkpoint.Saved);
        }
        catch (FormatException fault)
        {
            log.CheckpointOutdated(fault.Message);
            _isOutdated = true;
            return new HerdFold(options.Lameness);
        }
    }

    private async Task FlushAsync(StateChange change)
    {
        foreach (var assessment in _assessments)
            Touch(assessment.Cow, assessment.At);
        foreach (var step in _steps)
            Touch(step.Alert.Cow, step.At);
        await change.WriteAssessmentsAsync(_assessments);
        await change.WriteAlertStepsAsync(_steps);
        _assessments.Clear();
        _steps.Clear();
    }

    private void Touch(string cow, DateTimeOffset from)
    {
        if (!_touched.TryGetValue(cow, out var earlier) || from < earlier)
            _touched[cow] = from;
    }

    private DateTimeOffset? DayAfter(DateTimeOffset? instant) =>
        instant is { } at ? options.Calendar.EndOf(options.Calendar.DayOf(at)) : null;
}
