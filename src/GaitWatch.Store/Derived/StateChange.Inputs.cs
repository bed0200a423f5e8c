using System.Collections.Immutable;
using System.Data.Common;
using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Store;

// What came in, as the analysis reads it.
public sealed partial class StateChange
{
    // Frames closer together than this are told as one span: reading the space between costs nothing.
    private static readonly TimeSpan OneSpan = TimeSpan.FromMinutes(1);

    /// <summary>What came in after a sequence number, at most <paramref name="most"/> sequence numbers of it.</summary>
    public Task<InputBatch> InputsAfterAsync(long seq, int most)
    {
        var newest = _writer.Query("""SELECT "Value" FROM counters WHERE "Name" = 'last-seq'""", row => row.GetInt64(0)) is [var last] ? last : 0;
        var until = Math.Min(newest, seq + most);
        if (until <= seq)
            return Task.FromResult(new InputBatch { LastSeq = seq });
        return Task.FromResult(new InputBatch
        {
            LastSeq = until,
            Frames = Spans(
                """SELECT "Platform", "T0", "End" FROM frames WHERE "Seq" > @0 AND "Seq" <= @1 ORDER BY "Platform", "T0" """, seq, until),
            Tags = Spans(
                """SELECT "Platform", "At", "At" FROM tags WHERE "Seq" > @0 AND "Seq" <= @1 ORDER BY "Platform", "At" """, seq, until),
            Passages =
            [
                .. _writer.Query(
                    """
                    SELECT "Platform", "DeviceId", "Eid", "StartedAt", "EndedAt", "Lf", "Rf", "Lh", "Rh" FROM device_passages
                    WHERE "Seq" > @0 AND "Seq" <= @1 ORDER BY "Seq"
                    """,
                    row => (row.GetString(0), new DevicePassage(
                        row.GetString(1), (row.IsDBNull(2) ? (long?)null : row.GetInt64(2)).ToEid(), row.GetInt64(3).FromMs(), row.GetInt64(4).FromMs(),
                        new PerLeg<double>(row.GetDouble(5), row.GetDouble(6), row.GetDouble(7), row.GetDouble(8)))),
                    seq, until),
            ],
            Writes =
            [
                .. _writer.Query(
                    """SELECT "Body" FROM writes WHERE "Seq" > @0 AND "Seq" <= @1 ORDER BY "Seq" """,
                    row => StoreJson.Read<FarmWrite>(row.GetString(0)), seq, until),
            ],
        });
    }

    /// <summary>A platform's frames that overlap [from, to), in order of time.</summary>
    /// <param name="platform">The platform.</param>
    /// <param name="cells">How many cells the platform has; frames of another number are left out.</param>
    /// <param name="from">Inclusive.</param>
    /// <param name="to">Exclusive.</param>
    public Task<IReadOnlyList<Frame>> FramesAsync(string platform, int cells, DateTimeOffset from, DateTimeOffset to) =>
        Task.FromResult<IReadOnlyList<Frame>>(_writer.Query(
            FrameQuery.Sql, FrameQuery.Read, platform, FrameQuery.EarliestStart(from), to.ToMs(), from.ToMs(), cells));

    /// <summary>What lies on either side of a span of a platform's frames, however far away.</summary>
    /// <returns>End of the last frame that began before <paramref name="from"/>, beginning of the first that began at or after <paramref name="to"/>; null where there is none.</returns>
    public Task<(DateTimeOffset? Before, DateTimeOffset? After)> FramesAroundAsync(string platform, DateTimeOffset from, DateTimeOffset to)
    {
        var before = _writer.Query(
            """SELECT "End" FROM frames WHERE "Platform" = @0 AND "T0" < @1 ORDER BY "T0" DESC LIMIT 1""", row => row.GetInt64(0), platform, from.ToMs());
        var after = _writer.Query(
            """SELECT "T0" FROM frames WHERE "Platform" = @0 AND "T0" >= @1 ORDER BY "T0" LIMIT 1""", row => row.GetInt64(0), platform, to.ToMs());
        return Task.FromResult<(DateTimeOffset?, DateTimeOffset?)>(
            (before is [var end] ? end.FromMs() : null, after is [var begin] ? begin.FromMs() : null));
    }

    /// <summary>A platform's tag reads in [from, to), in order of time.</summary>
    public Task<IReadOnlyList<TagRead>> TagsAsync(string platform, DateTimeOffset from, DateTimeOffset to) =>
        Task.FromResult<IReadOnlyList<TagRead>>(_writer.Query(
            """SELECT "At", "Eid" FROM tags WHERE "Platform" = @0 AND "At" >= @1 AND "At" < @2 ORDER BY "At", "Eid" """,
            row => new TagRead(row.GetInt64(0).FromMs(), row.GetInt64(1).ToEid()), platform, from.ToMs(), to.ToMs()));

    /// <summary>Everything that people entered up to a sequence number, in order of arrival.</summary>
    public Task<ImmutableArray<FarmWrite>> WritesUntilAsync(long seq) => Task.FromResult<ImmutableArray<FarmWrite>>(
        [.. _writer.Query("""SELECT "Body" FROM writes WHERE "Seq" <= @0 ORDER BY "Seq" """, row => StoreJson.Read<FarmWrite>(row.GetString(0)), seq)]);

    /// <summary>The register of everything that was written so far, folded or not.</summary>
    public async Task<HerdRegister> RegisterAsync() =>
        new((await WritesUntilAsync(long.MaxValue)).OfType<RegisterWrite>().Select(write => write.Registration));

    /// <summary>Removes frames and tags that began before an instant; later ones of that age are refused as too late.</summary>
    public Task PruneFramesAsync(DateTimeOffset before)
    {
        _writer.Execute("""DELETE FROM frames WHERE "End" <= @0""", before.ToMs());
        _writer.Execute("""DELETE FROM tags WHERE "At" <= @0""", before.ToMs());
        SetMark("frames-kept-from", before.ToMs());
        _prunedBefore = before;
        return Task.CompletedTask;
    }

    private ImmutableArray<InputSpan> Spans(string sql, long after, long until)
    {
        var spans = ImmutableArray.CreateBuilder<InputSpan>();
        foreach (var next in _writer.Query(sql, ReadSpan, after, until))
        {
            if (spans.Count > 0 && spans[^1] is var open && open.Platform == next.Platform && next.From - open.To <= OneSpan)
                spans[^1] = open with { To = next.To > open.To ? next.To : open.To };
            else
                spans.Add(next);
        }

        return spans.ToImmutable();
    }

    private static InputSpan ReadSpan(DbDataReader row) => new(row.GetString(0), row.GetInt64(1).FromMs(), row.GetInt64(2).FromMs());
}
