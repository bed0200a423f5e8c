using System.Text;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

/// <summary>Stands where the host reads recorded messages: keeps what came, and stores a status for each so that order can be seen.</summary>
public sealed class RecordedMessages : IRecordedInputs
{
    public BarnStore? Store { get; set; }

    public List<(long Line, string Topic, string Payload)> Taken { get; } = [];

    public List<int> Batches { get; } = [];

    public async Task<RecordedOutcome> TakeAsync(IReadOnlyList<RecordedMessage> messages, CancellationToken cancellation)
    {
        Batches.Add(messages.Count);
        Taken.AddRange(messages.Select(m => (m.Line, m.Topic, Encoding.UTF8.GetString(m.Payload.Span))));
        var faults = messages.Where(m => m.Topic.EndsWith("/nowhere", StringComparison.Ordinal)).Select(m => new RecordedFault(m.Line, $"topic is '{m.Topic}': no platform.")).ToArray();
        var appended = await Store!.Inputs.AppendAsync([.. messages.Select(m => new StatusInput(Some.Platform, true, Some.Now.AddMilliseconds(m.Line), null))], cancellation);
        return new RecordedOutcome(appended.LastSeq, messages.Count - faults.Length, 0, faults);
    }
}
