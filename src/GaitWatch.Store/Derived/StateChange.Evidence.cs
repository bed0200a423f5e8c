using System.IO.Compression;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

// What the fold leaves behind: assessments, checkpoints, zeros, common movement.
public sealed partial class StateChange
{
    private static readonly string UpsertAssessment =
        $"INSERT OR REPLACE INTO assessments({AssessmentColumns.Names}) VALUES ({string.Join(", ", Enumerable.Range(0, AssessmentColumns.Count).Select(i => "@" + i))})";

    private static readonly TimeSpan AllCheckpointsFor = TimeSpan.FromDays(8);

    /// <summary>Writes assessments, new or again.</summary>
    public Task WriteAssessmentsAsync(IReadOnlyCollection<PassageAssessment> assessments)
    {
        foreach (var assessment in assessments)
        {
            TouchPassage(assessment.PassageId);
            _writer.Execute(UpsertAssessment, AssessmentColumns.Values(assessment));
        }

        return Task.CompletedTask;
    }

    /// <summary>The newest saved fold from before an instant (from any time when null); null when there is none.</summary>
    public Task<(DateTimeOffset Head, byte[] Saved)?> CheckpointBeforeAsync(DateTimeOffset? before)
    {
        var rows = _writer.Query(
            """SELECT "Head", "Saved" FROM checkpoints WHERE "Head" < @0 ORDER BY "Head" DESC LIMIT 1""",
            row => (row.GetInt64(0).FromMs(), Unpack((byte[])row[1])), before?.ToMs() ?? long.MaxValue);
        return Task.FromResult<(DateTimeOffset, byte[])?>(rows is [var row] ? row : null);
    }

    /// <summary>Writes a saved fold; of older ones one a week is kept.</summary>
    public Task WriteCheckpointAsync(DateTimeOffset head, byte[] saved)
    {
        _writer.Execute("""INSERT OR REPLACE INTO checkpoints("Head", "Saved") VALUES (@0, @1)""", head.ToMs(), Pack(saved));
        _writer.Execute(
            """DELETE FROM checkpoints WHERE "Head" < @0 AND "Head" NOT IN (SELECT MAX("Head") FROM checkpoints GROUP BY "Head" / 604800000)""",
            (head - AllCheckpointsFor).ToMs());
        return Task.CompletedTask;
    }

    /// <summary>Writes what a platform's cells read when empty; of every quarter of an hour the first is kept.</summary>
    public Task WriteZerosAsync(string platform, IReadOnlyCollection<ZeroLevels> zeros)
    {
        foreach (var zero in zeros)
        {
            // Keyed by the quarter hour; the earliest reading within it wins, whenever it came.
            var bucket = zero.At.ToMs() / 900_000 * 900_000;
            var before = ZeroPoints(platform, bucket);
            _writer.Execute(
                """
                INSERT INTO zeros("Platform", "Bucket", "At", "Kg") VALUES (@0, @1, @2, @3) ON CONFLICT("Platform", "Bucket") DO UPDATE SET
                "At" = excluded."At", "Kg" = excluded."Kg" WHERE excluded."At" <= zeros."At"
                """,
                platform, bucket, zero.At.ToMs(), StoreJson.Write(zero.Kg));
            _outbox?.Add(PointDiff.Of(before, ZeroPoints(platform, bucket)));
        }

        return Task.CompletedTask;
    }

    /// <summary>The zero last read before an instant; null when none is known.</summary>
    public Task<ZeroLevels?> ZeroBeforeAsync(string platform, DateTimeOffset before)
    {
        var rows = _writer.Query(
            """SELECT "At", "Kg" FROM zeros WHERE "Platform" = @0 AND "At" < @1 ORDER BY "At" DESC LIMIT 1""",
            row => new ZeroLevels(row.GetInt64(0).FromMs(), [.. StoreJson.Read<double[]>(row.GetString(1))]), platform, before.ToMs());
        return Task.FromResult(rows is [var zero] ? zero : null);
    }

    /// <summary>Writes the newest common movement of platforms.</summary>
    public Task WriteShiftsAsync(IReadOnlyCollection<PlatformShift> shifts)
    {
        foreach (var shift in shifts)
        {
            _writer.Execute(
                """INSERT INTO shifts("Platform", "Body") VALUES (@0, @1) ON CONFLICT("Platform") DO UPDATE SET "Body" = excluded."Body" """,
                shift.Platform, StoreJson.Write(shift));
        }

        return Task.CompletedTask;
    }

    private static byte[] Pack(byte[] saved)
    {
        using var packed = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionLevel.Fastest))
            brotli.Write(saved);
        return packed.ToArray();
    }

    private static byte[] Unpack(byte[] packed)
    {
        using var brotli = new BrotliStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var saved = new MemoryStream();
        brotli.CopyTo(saved);
        return saved.ToArray();
    }
}
