using System.Data.Common;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>How kept frames are found and read.</summary>
internal static class FrameQuery
{
    // The index is on the start: a frame that overlaps began at most this long before.
    private static readonly TimeSpan LongestFrame = TimeSpan.FromMinutes(1);

    /// <summary>@0 platform, @1 earliest start, @2 before, @3 ends after, @4 cells.</summary>
    public const string Sql = """
        SELECT "FrameSeq", "T0", "Hz", "Samples", "Cells" FROM frames
        WHERE "Platform" = @0 AND "T0" >= @1 AND "T0" < @2 AND "End" > @3 AND "Cells" = @4 ORDER BY "T0"
        """;

    public static long EarliestStart(DateTimeOffset from) => (from - LongestFrame).ToMs();

    public static Frame Read(DbDataReader row) =>
        new(row.GetInt64(0), row.GetInt64(1).FromMs(), row.GetDouble(2), FrameBytes.Read((byte[])row[3], row.GetInt32(4)));
}
