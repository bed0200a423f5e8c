using System.Collections.Concurrent;

namespace GaitWatch.Lameness;

/// <summary>
/// How often, per passage, one CUSUM of log likelihood ratios exceeds its limit on a sound cow: one over the average run length,
/// tabulated over the change's size in standard deviations and the limit for one weight of tails.
/// </summary>
internal sealed class FalseAlarmTable
{
    private const double SmallestSize = 0.15;
    private const double LargestSize = 14;
    private const int Sizes = 24;
    private const double CellWidth = 0.1;
    private const int SmallestCells = 20;
    private const int CellStep = 18;
    private const int Limits = 9;

    private static readonly ConcurrentDictionary<int, FalseAlarmTable> _tables = new();
    private static readonly double _logStep = Math.Log(LargestSize / SmallestSize) / (Sizes - 1);
    private readonly double[,] _logRate = new double[Sizes, Limits];

    private FalseAlarmTable(double tails) => Parallel.For(0, Sizes, s => Fill(s, tails));

    private void Fill(int s, double tails)
    {
        var tail = new LikelihoodRatioTail(tails);
        const int most = SmallestCells + (CellStep * (Limits - 1));
        var edges = new double[2 * most];
        var size = SmallestSize * Math.Exp(s * _logStep);
        for (var i = 0; i < edges.Length; i++)
            edges[i] = tail.Cdf(size, (i - most + 0.5) * CellWidth);
        for (var l = 0; l < Limits; l++)
        {
            var cells = SmallestCells + (CellStep * l);
            _logRate[s, l] = -Math.Log(RunLength.Average(edges.AsSpan(most - cells, 2 * cells), cells));
        }
    }

    /// <summary>The table for one of <see cref="CowNoise.Tails"/>, by its place; made once a process.</summary>
    public static FalseAlarmTable For(int tailsIndex) => _tables.GetOrAdd(tailsIndex, i => new FalseAlarmTable(CowNoise.Tails[i]));

    /// <summary>False alarms per passage. Below the table the rate falls with the square of the size (a diffusion's), beyond the largest limit by e per unit.</summary>
    public double Rate(double size, double limit)
    {
        var small = Math.Min(size / SmallestSize, 1);
        var s = Math.Clamp(Math.Log(Math.Max(size, SmallestSize) / SmallestSize) / _logStep, 0, Sizes - 1.000001);
        var exact = ((limit / CellWidth) + 0.5 - SmallestCells) / CellStep;
        var l = Math.Clamp(exact, 0, Limits - 1.000001);
        var (si, li) = ((int)s, (int)l);
        var (sf, lf) = (s - si, l - li);
        var log = ((1 - sf) * (((1 - lf) * _logRate[si, li]) + (lf * _logRate[si, li + 1])))
            + (sf * (((1 - lf) * _logRate[si + 1, li]) + (lf * _logRate[si + 1, li + 1])));
        return small * small * Math.Exp(log - ((exact - l) * CellStep * CellWidth));
    }
}
