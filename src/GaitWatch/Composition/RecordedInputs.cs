using GaitWatch.Barn;
using GaitWatch.Store;
using GaitWatch.Web;

namespace GaitWatch;

/// <summary>Recorded messages on the way of live ones: read by what reads those, kept in the same log. Where the web meets the barn.</summary>
internal sealed class RecordedInputs(MessageReader reader, BarnStore store, TimeProvider time) : IRecordedInputs
{
    /// <inheritdoc/>
    public async Task<RecordedOutcome> TakeAsync(IReadOnlyList<RecordedMessage> messages, CancellationToken cancellation)
    {
        var now = time.GetUtcNow();
        var inputs = new Input[messages.Count];
        var faults = new List<RecordedFault>();
        for (var i = 0; i < messages.Count; i++)
        {
            inputs[i] = reader.Read(messages[i].Topic, messages[i].Payload.Span, now, live: false);
            if (inputs[i] is RejectedInput rejected)
                faults.Add(new RecordedFault(messages[i].Line, $"{rejected.Reason}: {rejected.Detail}"));
        }

        var appended = await store.Inputs.AppendAsync(inputs, cancellation);
        return new RecordedOutcome(appended.LastSeq, appended.Stored, appended.Duplicates, faults);
    }
}
