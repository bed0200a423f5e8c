using System.IO.Pipelines;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.WebUtilities;

namespace GaitWatch.Web;

/// <summary>
/// Reads a recording line by line and hands it on in order and in batches: messages to who reads live ones, writes to the routes
/// that take them over HTTP. The next batch is read when the last one is durable, so that memory is bounded.
/// </summary>
internal sealed class RecordingIntake(BarnStore store, IRecordedInputs messages, IEnumerable<WriteRoute> writes, WriteDesk desk, TimeProvider time)
{
    /// <summary>How many faults are told one by one.</summary>
    public const int FaultsTold = 100;

    private const int MostLinesABatch = 2000;
    private const int MostBytesABatch = 4 * 1024 * 1024;

    public Task<RecordingView> TakeAsync(PipeReader recording, CancellationToken cancellation) => new Run(this, cancellation).TakeAsync(recording);

    private sealed class Run(RecordingIntake intake, CancellationToken cancellation)
    {
        private readonly List<RecordedMessage> _messages = [];
        private readonly List<Input> _inputs = [];
        private readonly List<RecordedFault> _faults = [];
        private long _bytes;
        private long _lines;
        private long _stored;
        private long _duplicates;
        private long _rejected;
        private long _lastSeq;

        public async Task<RecordingView> TakeAsync(PipeReader recording)
        {
            await foreach (var (line, content) in LineReader.ReadAsync(recording, cancellation))
            {
                if (content is { Length: 0 })
                    continue;
                _lines++;
                if (content is null)
                    await RejectAsync(line, "recording", "too-large", $"The line is longer than {LineReader.LongestLine / (1024 * 1024)} MiB, the longest that is read.", []);
                else
                    await TakeLineAsync(line, content);
            }

            await FlushAsync();
            return new RecordingView(_lines, _stored, _duplicates, _rejected, _faults);
        }

        private async Task TakeLineAsync(long line, byte[] content)
        {
            switch (RecordedLine.Read(content))
            {
                case RecordedLine.Message message:
                    // What goes before keeps its place: inputs of one kind are handed on before the other kind's begin.
                    await FlushInputsAsync();
                    _messages.Add(new RecordedMessage(line, message.Topic, message.Payload));
                    _bytes += message.Payload.Length;
                    if (_messages.Count >= MostLinesABatch || _bytes >= MostBytesABatch)
                        await FlushMessagesAsync();
                    break;
                case RecordedLine.Write write:
                    await TakeWriteAsync(line, write);
                    break;
                case RecordedLine.Unreadable unreadable:
                    await RejectAsync(line, "recording", "bad-json", unreadable.Fault, content);
                    break;
            }
        }

        private async Task TakeWriteAsync(long line, RecordedLine.Write write)
        {
            var what = $"{write.Method} {write.Route}";
            var cut = write.Route.IndexOf('?', StringComparison.Ordinal);
            var path = cut < 0 ? write.Route : write.Route[..cut];
            var values = new RouteValueDictionary();
            var route = intake.Routes.FirstOrDefault(candidate => candidate.Matches(write.Method, path, values));
            if (route is null)
            {
                await RejectAsync(line, what, "unknown-route", $"route is '{what}': one of {string.Join(", ", intake.Routes.Select(r => $"{r.Method} {r.Pattern}"))} is needed.", write.Body);
                return;
            }

            if (route.ReadsState)
            {
                await FlushAsync();
                await intake.Desk.UntilShownAsync(_lastSeq, cancellation);
            }
            else if (route.ReadsWrites)
            {
                // What people entered is read from the log itself, which need not be analysed for that.
                await FlushInputsAsync();
            }

            foreach (var key in values.Keys.ToArray())
                values[key] = Uri.UnescapeDataString((string)values[key]!);
            var query = new QueryCollection(cut < 0 ? [] : QueryHelpers.ParseQuery(write.Route[cut..]).ToDictionary(q => q.Key, q => q.Value));
            // Where no body need be sent, a recording may hold null for it.
            var body = route.BodyIsOptional && write.Body.AsSpan().SequenceEqual("null"u8) ? [] : write.Body;
            var decision = write.Body.Length > route.MostBytes
                ? WriteDecision.Refuse(Refusal.TooLarge("body", $"body is longer than {route.MostBytes / 1024} KiB, the most that this route takes."))
                : await route.DecideAsync(new WriteRequest(values, query, body, intake.Now), cancellation);
            if (decision.MovedTo is { } moved)
                await TakeWriteAsync(line, write with { Route = moved });
            else if (decision.Refused is { } refused)
                await RejectAsync(line, what, $"refused-{refused.Status}", refused.Faults.ToString(), write.Body);
            else
            {
                await FlushMessagesAsync();
                _inputs.AddRange(decision.Writes.Select(taken => new WriteInput(taken)));
                if (_inputs.Count >= MostLinesABatch)
                    await FlushInputsAsync();
            }
        }

        private async Task RejectAsync(long line, string topic, string reason, string fault, byte[] content)
        {
            Tell(new RecordedFault(line, fault));
            await FlushMessagesAsync();
            _inputs.Add(new RejectedInput(topic, reason, $"Line {line} of a recording: {fault}", content.Length > RejectedInput.LongestPayload ? content[..RejectedInput.LongestPayload] : content));
        }

        private void Tell(RecordedFault fault)
        {
            _rejected++;
            if (_faults.Count < FaultsTold)
                _faults.Add(fault);
        }

        private async Task FlushAsync()
        {
            await FlushMessagesAsync();
            await FlushInputsAsync();
        }

        private async Task FlushMessagesAsync()
        {
            if (_messages.Count == 0)
                return;
            var outcome = await intake.Messages.TakeAsync(_messages, cancellation);
            _stored += outcome.Stored;
            _duplicates += outcome.Duplicates;
            foreach (var fault in outcome.Faults)
                Tell(fault);
            _lastSeq = Math.Max(_lastSeq, outcome.LastSeq);
            _messages.Clear();
            _bytes = 0;
        }

        private async Task FlushInputsAsync()
        {
            if (_inputs.Count == 0)
                return;
            var appended = await intake.Store.Inputs.AppendAsync(_inputs, cancellation);
            _stored += appended.Stored;
            _duplicates += appended.Duplicates;
            _lastSeq = Math.Max(_lastSeq, appended.LastSeq);
            _inputs.Clear();
        }
    }

    private BarnStore Store => store;

    private IRecordedInputs Messages => messages;

    private WriteDesk Desk => desk;

    private DateTimeOffset Now => time.GetUtcNow();

    private WriteRoute[] Routes { get; } = [.. writes];
}
