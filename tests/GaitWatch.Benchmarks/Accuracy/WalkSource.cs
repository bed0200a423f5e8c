using GaitWatch.Gait;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>One of the simulator's three sources of crossings.</summary>
/// <param name="Name">What the report calls it.</param>
/// <param name="Of">Makes a crossing.</param>
internal sealed record WalkSource(string Name, Func<CrossingKind, long, SimulatedPlatform?, SimulatedCrossing> Of)
{
    /// <summary>Those that make good crossings and bad ones.</summary>
    public static IReadOnlyList<WalkSource> OfEveryKind { get; } = [new("first", WalkGenerator.Of), new("second", SecondWalks.Of)];

    /// <summary>All; the third makes good crossings only.</summary>
    public static IReadOnlyList<WalkSource> All { get; } = [.. OfEveryKind, new("third", ThirdWalks.Of)];

    private static readonly DateTimeOffset s_start = new(2026, 3, 2, 5, 14, 7, TimeSpan.Zero);

    /// <summary>Good crossings, all of whose legs gave a whole footfall: with all feet inside the plates, or with some partly over an edge.</summary>
    public IEnumerable<SimulatedCrossing> Good(CrossingKind kind, long seed, bool overEdge, SimulatedPlatform? platform = null)
    {
        while (true)
        {
            var crossing = Of(kind, seed++, platform);
            if (crossing.Truth.Legs is { } legs && legs.Values().All(leg => leg.Share is not null)
                && crossing.Truth.Footfalls.All(footfall => footfall.IsWhole) != overEdge)
                yield return crossing;
        }
    }

    /// <summary>The frames in which a device sends a recording.</summary>
    public static List<Frame> Frames(float[][] samples, double hz) =>
    [
        .. Enumerable.Range(0, (samples[0].Length + 49) / 50).Select(i => new Frame(
            i, s_start.AddMilliseconds(Math.Round(1000 * 50 * i / hz)), hz, [.. samples.Select(cell => cell[(50 * i)..Math.Min(cell.Length, 50 * (i + 1))])])),
    ];

    /// <summary>The frames in which a device sends a crossing.</summary>
    public static List<Frame> Frames(SimulatedCrossing crossing) =>
    [
        .. crossing.Frames(50).Select((part, i) => new Frame(
            i, s_start.AddMilliseconds(Math.Round(1000 * part.Start / crossing.Hz)), crossing.Hz, [.. crossing.Samples.Select(cell => cell[part.Start..(part.Start + part.Count)])])),
    ];

    /// <summary>The analyser of a simulated platform.</summary>
    public static CrossingAnalyser Analyser(SimulatedPlatform? platform)
    {
        platform ??= SimulatedPlatform.Default;
        return new(
            new TwinPlate
            {
                Id = platform.Id, PlateLengthMetres = platform.PlateLengthMetres, SampleRateHz = platform.Hz,
                Cells = [.. platform.Cells.Select(cell => new LoadCell(cell.Id, cell.IsLeft ? PlateSide.Left : PlateSide.Right, cell.X))],
            },
            new GaitOptions());
    }
}
