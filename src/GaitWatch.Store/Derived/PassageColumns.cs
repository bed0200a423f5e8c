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

    private static readonly string[] Crossing =
        ["Id", "Platform", "FromFrames", "Eid", "Cow", "StartedAt", "EndedAt", "Accepted", "Reasons", "WeightKg", "StrideSeconds", "SpeedMetresPerSecond"];

    private static readonly string[] LegNames = ["Lf", "Rf", "Lh", "Rh"];

    private static readonly string[] LegFigures = ["LoadKg", "Share", "ShareError", "PeakKg", "StanceSeconds", "Footfalls"];

    private static readonly string[] Plates = ["Left", "Right"];

    private static readonly string[] EndsFigures = ["Percent", "Weight", "LoadKg"];

    private static readonly string[] All =
    [
        .. Crossing,
        .. LegNames.SelectMany(leg => LegFigures.Select(figure => $"{leg}_{figure}")),
        .. Plates.SelectMany(plate => EndsFigures.Select(figure => $"{plate}Ends{figure}")),
    ];

    /// <summary>The columns, in the order of <see cref="Values"/> and <see cref="Read"/>.</summary>
    public static string Names { get; } = string.Join(", ", All.Select(name => $"\"{name}\""));

    /// <summary>The columns of a table by its name in a query.</summary>
    public static string NamesOf(string table) => string.Join(", ", All.Select(name => $"{table}.\"{name}\""));

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
    public static Passage Read(DbDataReader row) => ReadFrom(row, 0);

    /// <summary>The passage whose columns begin at a place of the row.</summary>
    public static Passage ReadFrom(DbDataReader row, int first) => new()
    {
        Id = row.GetString(first),
        Platform = row.GetString(first + 1),
        Eid = (row.IsDBNull(first + 3) ? (long?)null : row.GetInt64(first + 3)).ToEid(),
        StartedAt = row.GetInt64(first + 5).FromMs(),
        EndedAt = row.GetInt64(first + 6).FromMs(),
        Reasons = ReadReasons(row.GetString(first + 8)),
        WeightKg = Number(row, first + 9),
        StrideSeconds = Number(row, first + 10),
        SpeedMetresPerSecond = Number(row, first + 11),
        Legs = new PerLeg<LegLoad>(ReadLeg(row, first, 0), ReadLeg(row, first, 1), ReadLeg(row, first, 2), ReadLeg(row, first, 3)),
        LeftEnds = ReadEnds(row, first, 0),
        RightEnds = ReadEnds(row, first, 1),
    };

    /// <summary>Whose the passage is whose columns begin at a place of the row.</summary>
    public static string? Cow(DbDataReader row, int first = 0) => row.IsDBNull(first + 4) ? null : row.GetString(first + 4);

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

    private static LegLoad ReadLeg(DbDataReader row, int first, int index)
    {
        var at = first + FirstLeg + index * PerLeg;
        return new LegLoad(Number(row, at), Number(row, at + 1), Number(row, at + 2), Number(row, at + 3), Number(row, at + 4), row.GetInt32(at + 5));
    }

    private static PlateEnds? ReadEnds(DbDataReader row, int first, int index)
    {
        var at = first + FirstEnds + index * PerEnds;
        return row.IsDBNull(at) ? null : new PlateEnds(row.GetDouble(at), row.GetDouble(at + 1), row.GetDouble(at + 2));
    }

    private static double? Number(DbDataReader row, int at) => row.IsDBNull(at) ? null : row.GetDouble(at);
}
