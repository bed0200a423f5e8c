using System.Security.Cryptography;
using System.Text;
using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>
/// The durable inbox: every frame, tag, passage, status and write that came in, in order of arrival. When
/// <see cref="AppendAsync"/> has returned, its batch survives a power cut.
/// </summary>
/// <remarks>
/// Safe to use from several threads; batches are written one after another. Where two messages claim the same identity with
/// different content, the one whose content sorts first is kept and the other is kept as rejected, so that the state does not
/// depend on which came first.
/// </remarks>
public sealed class InputLog
{
    private readonly Writer _writer;
    private readonly Progress _progress;
    private readonly TimeProvider _time;
    private readonly SeriesOutbox _series;
    private long _last;

    internal InputLog(Writer writer, Progress progress, TimeProvider time, long last, SeriesOutbox series)
    {
        _series = series;
        _writer = writer;
        _progress = progress;
        _time = time;
        _last = last;
    }

    /// <summary>Makes a batch durable in one commit.</summary>
    /// <param name="inputs">The inputs, in order of arrival.</param>
    /// <param name="cancellation">Gives up waiting for the turn; a commit under way is finished.</param>
    /// <returns>What became of them.</returns>
    /// <exception cref="StoreUnavailableException">Nothing of the batch is durable: the disk is full, the file locked or damaged. The message says which and what to do.</exception>
    public async Task<AppendResult> AppendAsync(IReadOnlyList<Input> inputs, CancellationToken cancellation = default)
    {
        await _writer.BeginAsync(cancellation);
        try
        {
            var batch = new Batch(this, _last);
            foreach (var input in inputs)
                batch.Add(input);
            batch.WriteCounters();
            _writer.Commit();
            _last = batch.Last;
            _progress.ReportAppended(_last);
            _series.Written(batch.Outbox);
            return new AppendResult(_last, batch.Stored, batch.Duplicates, batch.Rejected);
        }
        finally
        {
            _writer.End();
        }
    }

    private sealed class Batch(InputLog log, long last)
    {
        private readonly Writer _writer = log._writer;
        private readonly long _now = log._time.GetUtcNow().ToMs();
        private readonly DateTimeOffset? _keptFrom = log._progress.FramesKeptFrom;

        public OutboxWriter? Outbox { get; } = log._series.IsOn ? log._series.Writing() : null;

        public long Last { get; private set; } = last;

        public int Stored { get; private set; }

        public int Duplicates { get; private set; }

        public int Rejected { get; private set; }

        public void Add(Input input)
        {
            switch (input)
            {
                case FrameInput frame when frame.Frame.End <= _keptFrom:
                    Reject(TooLate(frame.Platform, "frames", frame.Frame.T0));
                    break;
                case TagInput tag when tag.Read.At <= _keptFrom:
                    Reject(TooLate(tag.Platform, "tag", tag.Read.At));
                    break;
                case FrameInput frame:
                    AddFrame(frame);
                    break;
                case TagInput tag:
                    Count(_writer.Execute(Sql.InsertTag, ++Last, tag.Platform, tag.Read.At.ToMs(), tag.Read.Eid.Value) > 0);
                    break;
                case DevicePassageInput passage:
                    AddPassage(passage);
                    break;
                case StatusInput status:
                    _writer.Execute(Sql.UpsertStatus, status.Platform, ++Last, status.Online ? 1 : 0, status.At?.ToMs(), status.Firmware, _now);
                    Outbox?.Add([PlatformPoints.OfStatus(log._series.Farm, status.Platform, status.At?.ToMs() ?? _now, status.Online, status.Firmware)]);
                    Stored++;
                    break;
                case WriteInput write:
                    var body = StoreJson.Write<FarmWrite>(write.Write);
                    var digest = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(body)));
                    Count(_writer.Execute(Sql.InsertWrite, ++Last, digest, write.Write.At.ToMs(), body) > 0);
                    break;
                case RejectedInput rejected:
                    Reject(rejected);
                    break;
                default:
                    throw new ArgumentException($"An input of kind {input.GetType().Name} cannot be kept.", nameof(input));
            }
        }

        public void WriteCounters()
        {
            _writer.Execute(Sql.RaiseCounter, "stored", Stored);
            _writer.Execute(Sql.RaiseCounter, "duplicates", Duplicates);
            _writer.Execute(Sql.RaiseCounter, "rejected", Rejected);
            _writer.Execute(Sql.SetCounter, "last-seq", Last);
        }

        private static RejectedInput TooLate(string platform, string what, DateTimeOffset at) => new(
            $"gaitwatch/+/{platform}/{what}", "too-late",
            $"t is {at:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}: frames and tags are kept for FrameRetentionDays, and those of that time are gone.", []);

        private void AddFrame(FrameInput input)
        {
            var frame = input.Frame;
            var samples = FrameBytes.Write(frame);
            var end = frame.End.ToMs();
            if (_writer.Execute(Sql.InsertFrame, ++Last, input.Platform, frame.T0.ToMs(), end, frame.Seq, frame.Hz, frame.SamplesKg.Length, samples) > 0)
            {
                Stored++;
                return;
            }

            var kept = _writer.Query(Sql.FindFrame, row => (FrameSeq: row.GetInt64(0), Hz: row.GetDouble(1), Samples: (byte[])row[2]), input.Platform, frame.T0.ToMs())[0];
            var order = samples.AsSpan().SequenceCompareTo(kept.Samples);
            if (order == 0)
                order = frame.Hz.CompareTo(kept.Hz);
            if (order == 0)
            {
                Duplicates++;
                return;
            }

            Conflict($"gaitwatch/+/{input.Platform}/frames", $"t0 {frame.T0:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}");
            if (order < 0)
                _writer.Execute(Sql.ReplaceFrame, input.Platform, frame.T0.ToMs(), ++Last, end, frame.Seq, frame.Hz, frame.SamplesKg.Length, samples);
        }

        private void AddPassage(DevicePassageInput input)
        {
            var passage = input.Passage;
            object?[] values =
            [
                ++Last, input.Platform, passage.DeviceId, passage.Eid?.Value, passage.StartedAt.ToMs(), passage.EndedAt.ToMs(),
                passage.LoadKg.Lf, passage.LoadKg.Rf, passage.LoadKg.Lh, passage.LoadKg.Rh,
            ];
            if (_writer.Execute(Sql.InsertDevicePassage, values) > 0)
            {
                Stored++;
                return;
            }

            var kept = _writer.Query(
                Sql.FindDevicePassage, row => Enumerable.Range(0, 7).Select(i => row.IsDBNull(i) ? -1 : row.GetDouble(i)).ToArray(),
                input.Platform, passage.DeviceId)[0];
            double[] arrived =
            [
                passage.Eid?.Value ?? -1, passage.StartedAt.ToMs(), passage.EndedAt.ToMs(),
                passage.LoadKg.Lf, passage.LoadKg.Rf, passage.LoadKg.Lh, passage.LoadKg.Rh,
            ];
            var order = arrived.AsSpan().SequenceCompareTo(kept);
            if (order == 0)
            {
                Duplicates++;
                return;
            }

            Conflict($"gaitwatch/+/{input.Platform}/passage", $"id {passage.DeviceId}");
            if (order < 0)
                _writer.Execute(Sql.ReplaceDevicePassage, values);
        }

        private void Conflict(string topic, string identity) => Reject(new RejectedInput(
            topic, "conflicting-duplicate",
            $"{identity} came twice with different content: a device must give every frame its own t0 and every passage its own id. One of the two is used.", []));

        private void Reject(RejectedInput rejected)
        {
            var payload = rejected.Payload.Length <= RejectedInput.LongestPayload ? rejected.Payload : rejected.Payload[..RejectedInput.LongestPayload];
            _writer.Execute(Sql.InsertRejected, ++Last, _now, rejected.Topic, rejected.Reason, rejected.Detail, payload);
            Rejected++;
        }

        private void Count(bool isNew)
        {
            if (isNew)
                Stored++;
            else
                Duplicates++;
        }
    }

    private static class Sql
    {
        public const string InsertFrame = """
            INSERT INTO frames("Seq", "Platform", "T0", "End", "FrameSeq", "Hz", "Cells", "Samples")
            VALUES (@0, @1, @2, @3, @4, @5, @6, @7) ON CONFLICT DO NOTHING
            """;

        public const string FindFrame = """SELECT "FrameSeq", "Hz", "Samples" FROM frames WHERE "Platform" = @0 AND "T0" = @1""";

        public const string ReplaceFrame = """
            UPDATE frames SET "Seq" = @2, "End" = @3, "FrameSeq" = @4, "Hz" = @5, "Cells" = @6, "Samples" = @7 WHERE "Platform" = @0 AND "T0" = @1
            """;

        public const string InsertTag = """INSERT INTO tags("Seq", "Platform", "At", "Eid") VALUES (@0, @1, @2, @3) ON CONFLICT DO NOTHING""";

        public const string InsertDevicePassage = """
            INSERT INTO device_passages("Seq", "Platform", "DeviceId", "Eid", "StartedAt", "EndedAt", "Lf", "Rf", "Lh", "Rh")
            VALUES (@0, @1, @2, @3, @4, @5, @6, @7, @8, @9) ON CONFLICT DO NOTHING
            """;

        public const string FindDevicePassage = """
            SELECT "Eid", "StartedAt", "EndedAt", "Lf", "Rf", "Lh", "Rh" FROM device_passages WHERE "Platform" = @0 AND "DeviceId" = @1
            """;

        public const string ReplaceDevicePassage = """
            UPDATE device_passages SET "Seq" = @0, "Eid" = @3, "StartedAt" = @4, "EndedAt" = @5, "Lf" = @6, "Rf" = @7, "Lh" = @8, "Rh" = @9
            WHERE "Platform" = @1 AND "DeviceId" = @2
            """;

        public const string UpsertStatus = """
            INSERT INTO statuses("Platform", "Seq", "Online", "At", "Firmware", "ReceivedAt") VALUES (@0, @1, @2, @3, @4, @5)
            ON CONFLICT("Platform") DO UPDATE SET "Seq" = excluded."Seq", "Online" = excluded."Online", "At" = excluded."At",
            "Firmware" = COALESCE(excluded."Firmware", statuses."Firmware"), "ReceivedAt" = excluded."ReceivedAt"
            """;

        public const string InsertWrite = """INSERT INTO writes("Seq", "Digest", "At", "Body") VALUES (@0, @1, @2, @3) ON CONFLICT DO NOTHING""";

        public const string InsertRejected = """
            INSERT INTO rejected("Seq", "ReceivedAt", "Topic", "Reason", "Detail", "Payload") VALUES (@0, @1, @2, @3, @4, @5)
            """;

        public const string RaiseCounter = """
            INSERT INTO counters("Name", "Value") VALUES (@0, @1) ON CONFLICT("Name") DO UPDATE SET "Value" = counters."Value" + excluded."Value"
            """;

        public const string SetCounter = """
            INSERT INTO counters("Name", "Value") VALUES (@0, @1) ON CONFLICT("Name") DO UPDATE SET "Value" = excluded."Value"
            """;
    }
}
