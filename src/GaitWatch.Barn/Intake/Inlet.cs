using System.Buffers;
using System.Collections.Concurrent;
using GaitWatch.Gait;
using GaitWatch.Store;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>The way of a live message from either broker into the <see cref="Intake"/>: read, counted, offered.</summary>
internal sealed class Inlet(MessageReader reader, Intake intake, BarnMetrics metrics, TimeProvider time, ILogger<Inlet> log)
{
    // A test transponder is told of once; a faulty reader that invents codes must not fill memory.
    private const int MostTestTags = 1000;

    private readonly ConcurrentDictionary<Eid, bool> _testTags = new();

    /// <summary>Takes a message; see <see cref="Intake.OfferAsync"/>.</summary>
    public ValueTask<Task> OfferAsync(string topic, ReadOnlySequence<byte> payload, CancellationToken cancellation)
    {
        metrics.Received();
        var input = payload.IsSingleSegment
            ? reader.Read(topic, payload.FirstSpan, time.GetUtcNow(), live: true)
            : reader.Read(topic, payload.ToArray(), time.GetUtcNow(), live: true);
        switch (input)
        {
            case RejectedInput rejected:
                log.MessageRejected(rejected.Topic, rejected.Reason, rejected.Detail);
                break;
            case TagInput { Read.Eid: { IsTest: true } eid } tag when _testTags.Count < MostTestTags && _testTags.TryAdd(eid, true):
                log.TestTag(eid.ToString(), tag.Platform);
                break;
        }

        return intake.OfferAsync(input, cancellation);
    }
}
