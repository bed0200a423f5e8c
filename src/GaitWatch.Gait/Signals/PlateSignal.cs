using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>What one plate carries over time, zero removed, smoothed.</summary>
/// <param name="ForceKg">Its load F, kg.</param>
/// <param name="MomentKgMetres">Its moment about the entry edge, the sum of load times place over the cells, kg m.</param>
/// <param name="Hz">Rate of both, Hz.</param>
/// <param name="LengthMetres">Length of the plate.</param>
internal sealed record PlateSignal(double[] ForceKg, double[] MomentKgMetres, double Hz, double LengthMetres)
{
    /// <summary>By how much each of its cells' zero changed meanwhile.</summary>
    public ImmutableArray<ZeroChange> ZeroChanges { get; init; } = [];

    /// <summary>Number of samples.</summary>
    public int Count => ForceKg.Length;

    /// <summary>Seconds between samples.</summary>
    public double Step => 1 / Hz;

    /// <summary>Samples in a time, at least one.</summary>
    public int Samples(double seconds) => Math.Max(1, (int)Math.Round(seconds * Hz));

    /// <summary>Centre of pressure at a sample, metres from the entry edge; means nothing where there is no load.</summary>
    public double PressureX(int sample) => MomentKgMetres[sample] / ForceKg[sample];
}
