using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

/// <summary>
/// Turns inputs into state without any detection: passages are written, tags given to cows, alerts closed when somebody says
/// so. It stands where the analysis stands, which the pages and the API know only through the store.
/// </summary>
internal sealed class PlainFold
{
    private readonly BarnStore _store;

    public PlainFold(BarnStore store) => _store = store;

    public async Task RunAsync(CancellationToken stop)
    {
        try
        {
            while (true)
            {
                await _store.Progress.UntilAppendedAsync(_store.Progress.Folded, stop);
                await FoldAsync(stop);
            }
        }
        catch (OperationCanceledException)
        {
            // The farm closes.
        }
    }

    private async Task FoldAsync(CancellationToken stop)
    {
        await using var state = await _store.BeginAsync(stop);
        var batch = await state.InputsAfterAsync(await state.FoldedAsync(), 10_000);
        var register = await state.RegisterAsync();
        var tags = batch.Writes.OfType<RegisterWrite>().Select(write => write.Registration.Eid).OfType<Eid>().ToHashSet();
        await state.ReassignAsync(tags, register);
        foreach (var platform in batch.Passages.GroupBy(p => p.Platform))
            await state.ReplacePassagesAsync([], [.. platform.Select(p => p.Passage.ToPassage(p.Platform, new GaitOptions()))], fromFrames: false, register);
        foreach (var close in batch.Writes.OfType<CloseAlertWrite>())
            await CloseAsync(state, close.Closed);
        await state.CommitAsync(batch.LastSeq);
    }

    private async Task CloseAsync(StateChange state, AlertClosedByHand closed)
    {
        var open = (await _store.Reader.AlertsAsync(null, closed.At, null, closed.Cow, Page.All))
            .FirstOrDefault(alert => alert.Pattern == closed.Pattern.WireName() && alert.Leg == closed.Leg.WireName() && alert.ClosedAt is null);
        if (open is null)
            return;
        var last = (await _store.Reader.AlertStepsAsync(open.Id))[^1].Alert;
        await state.WriteAlertStepsAsync(
            [new AlertChange(closed.At, AlertChangeKind.Closed, last with { State = AlertState.Closed, ClosedAt = closed.At, CloseReason = closed.Reason })]);
    }
}
