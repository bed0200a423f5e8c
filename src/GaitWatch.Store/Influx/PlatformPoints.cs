using System.Collections.Immutable;
using System.Globalization;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>The points of a platform's own health: what its cells read when empty, and what it says of itself.</summary>
internal static class PlatformPoints
{
    public static IReadOnlyList<SeriesPoint> OfZero(StoreOptions options, string platform, long at, IReadOnlyList<double> kg)
    {
        var cells = options.Platforms.FirstOrDefault(known => known.Id == platform)?.Cells ?? [];
        return
        [
            .. kg.Select((reading, i) => (Kg: reading, Cell: Name(cells, i))).Where(cell => double.IsFinite(cell.Kg)).Select(cell => new PointBuilder("platform_zero", at, options.Farm)
                .Tag("platform", platform)
                .Tag("cell", cell.Cell)
                .Field("zero_kg", cell.Kg)
                .Build()),
        ];
    }

    public static SeriesPoint OfStatus(string farm, string platform, long at, bool online, string? firmware) =>
        new PointBuilder("platform_status", at, farm)
            .Tag("platform", platform)
            .Field("online", online)
            .Field("firmware", firmware)
            .Build();

    private static string Name(ImmutableArray<LoadCell> cells, int i) => i < cells.Length ? cells[i].Id : (i + 1).ToString(CultureInfo.InvariantCulture);
}
