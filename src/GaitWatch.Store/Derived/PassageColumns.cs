using System.Collections.Immutable;
using System.Data.Common;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>A passage as the columns of its row, in one order for reading and writing.</summary>
internal static class PassageColumns
{
    private const int FirstLeg = 12;
    private const int PerLeg = 6;
    private const int FirstEnds = FirstLeg + 4 * PerLeg;
    private const int PerEnds = 3;

    /// <summary>The columns, in the order of <see cref="Values"/> and <see cref="Read"/>.</summary>
    public static string Names { get; } = string.Join(", ",
        new[] { "Id", "Platform", "FromFrames", "Eid", "Cow", "StartedAt", "EndedAt", "Accepted", "Reasons", "WeightKg", "StrideSeconds", "SpeedMetresPerSecond" }
            .Concat(from leg in new[] { "Lf", "Rf", "Lh", "Rh" }
                    from figure in new[] { "LoadKg", "Share", "ShareError", "PeakKg", "StanceSeconds", "Footfalls" }
                    select $"{leg}_{figure}")
            .Concat(from plate in new[] { "Left", "Right" }
                    from figure in new[] { "Percent", "Weight", "LoadKg" }
                    select $"{plate}Ends{figure}")
            .Select(name => $"\"{name}\""));

    /// <summary>How many there are.</summary>
    public static int Count => FirstEnds + 2 * PerEnds;

    /// <summary>The values of a row.</summary>
    public static object?[] Values(Passage passage, string? cow, bool fromFrames)
    {
        var values = new object?[Count];
        values[0] = passage.Id;
        values[1] = passage.Platform;
        values[2] = fromFrames ? 1 : 0;
        values[3] = passage.Eid?.Value;
        values[4] = cow;
        values[5] = passage.StartedAt.ToMs();
        values[6] = passage.EndedAt.ToMs();
        values[7] = passage.IsAccepted ? 1 : 0;
        values[8] = WriteReasons(passage.Reasons);
        values[9] = passage.WeightKg;
        values[10] = passage.StrideSeconds;
        values[11] = passage.SpeedMetresPerSecond;
        for (var i = 0; i < 4; i++)
        {
            var leg = passage.Legs[Legs.All[i]];
            var at = FirstLeg + i * PerLeg;
            values[at] = leg.LoadKg;
            values[at + 1] = leg.Share;
            values[at + 2] = leg.ShareError;
            values[at + 3] = leg.PeakKg;
            values[at + 4] = leg.StanceSeconds;
            values[at + 5] = leg.Footfalls;
        }

        PlateEnds?[] plates = [passage.LeftEnds, passage.RightEnds];
        for (var i = 0; i < plates.Length; i++)
        {
            var at = FirstEnds + i * PerEnds;
            values[at] = plates[i]?.Percent;
            values[at + 1] = plates[i]?.Weight;
            values[at + 2] = plates[i]?.LoadKg;
        }

        return values;
    }

    /// <summary>The passage of a row.</summary>
    public static Passage Read(DbDataReader row) => new()
    {
        Id = row.GetString(0),
        Platform = row.GetString(1),
        Eid = (row.IsDBNull(3) ? (long?)null : row.GetInt64(3)).ToEid(),
        StartedAt = row.GetInt64(5).FromMs(),
        EndedAt = row.GetInt64(6).FromMs(),
        Reasons = ReadReasons(row.GetString(8)),
        WeightKg = Number(row, 9),
        StrideSeconds = Number(row, 10),
        SpeedMetresPerSecond = Number(row, 11),
        Legs = new PerLeg<LegLoad>(ReadLeg(row, 0), ReadLeg(row, 1), ReadLeg(row, 2), ReadLeg(row, 3)),
        LeftEnds = ReadEnds(row, 0),
        RightEnds = ReadEnds(row, 1),
    };

    /// <summary>Whose the passage of a row is.</summary>
    public static string? Cow(DbDataReader row) => row.IsDBNull(4) ? null : row.GetString(4);

    public static string WriteReasons(ImmutableArray<QualityReason> reasons) =>
        reasons.IsEmpty ? "" : string.Join(',', reasons.Select(reason => reason.WireName()));

    public static ImmutableArray<QualityReason> ReadReasons(string names) => names.Length == 0
        ? []
        :
        [
            .. names.Split(',').Select(name => QualityReasons.TryParseWireName(name, out var reason)
                ? reason
                : throw new InvalidDataException($"The store holds the reason '{name}', which this version does not know.")),
        ];

    private static LegLoad ReadLeg(DbDataReader row, int index)
    {
        var at = FirstLeg + index * PerLeg;
        return new LegLoad(Number(row, at), Number(row, at + 1), Number(row, at + 2), Number(row, at + 3), Number(row, at + 4), row.GetInt32(at + 5));
    }

    private static PlateEnds? ReadEnds(DbDataReader row, int index)
    {
        var at = FirstEnds + index * PerEnds;
        return row.IsDBNull(at) ? null : new PlateEnds(row.GetDouble(at), row.GetDouble(at + 1), row.GetDouble(at + 2));
    }

    private static double? Number(DbDataReader row, int at) => row.IsDBNull(at) ? null : row.GetDouble(at);
}
