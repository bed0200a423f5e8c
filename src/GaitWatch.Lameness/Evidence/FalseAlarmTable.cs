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

    /// <summary>Where a limit stands in every table. Beyond the largest the rate falls by e per unit.</summary>
    public static LimitPlace Place(double limit)
    {
        var exact = ((limit / CellWidth) + 0.5 - SmallestCells) / CellStep;
        var l = Math.Clamp(exact, 0, Limits - 1.000001);
        return new LimitPlace((int)l, l - (int)l, (exact - l) * CellStep * CellWidth);
    }

    /// <summary>Where a size stands in every table, standard deviations of one passage. Below the smallest the rate falls with the square of the size (a diffusion's).</summary>
    public static SizePlace PlaceOfSize(double size)
    {
        var small = Math.Min(size / SmallestSize, 1);
        var s = Math.Clamp(Math.Log(Math.Max(size, SmallestSize) / SmallestSize) / _logStep, 0, Sizes - 1.000001);
        return new SizePlace((int)s, s - (int)s, small * small);
    }

    /// <summary>False alarms per passage.</summary>
    public double Rate(in SizePlace size, in LimitPlace limit)
    {
        var (s, l) = (size.Row, limit.Column);
        var log = ((1 - size.Part) * (((1 - limit.Part) * _logRate[s, l]) + (limit.Part * _logRate[s, l + 1])))
            + (size.Part * (((1 - limit.Part) * _logRate[s + 1, l]) + (limit.Part * _logRate[s + 1, l + 1])));
        return size.Factor * Math.Exp(log - limit.Beyond);
    }

    /// <summary>A limit's column, how far it is towards the next, and how far beyond the last, log likelihood ratio.</summary>
    internal readonly record struct LimitPlace(int Column, double Part, double Beyond);

    /// <summary>A size's row, how far it is towards the next, and the factor of a size below the first.</summary>
    internal readonly record struct SizePlace(int Row, double Part, double Factor);
}
