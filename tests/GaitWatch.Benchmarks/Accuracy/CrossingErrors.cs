using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>Errors of many crossings against what really happened.</summary>
internal sealed class CrossingErrors
{
    private readonly List<double> _share = [], _weight = [], _peak = [], _stance = [], _stride = [];
    private readonly List<(double Error, double Stated)> _stated = [];

    /// <summary>Crossings looked at.</summary>
    public int Crossings { get; private set; }

    /// <summary>Those that were accepted.</summary>
    public int Accepted { get; private set; }

    /// <summary>RMS of the shares' errors, percentage points.</summary>
    public double SharePoints => Rms(_share);

    /// <summary>95 % of the shares' errors are below this, points.</summary>
    public double SharePoints95 => Quantile(0.95);

    /// <summary>The largest, points.</summary>
    public double WorstSharePoints => Quantile(1);

    /// <summary>RMS, per cent.</summary>
    public double WeightPercent => Rms(_weight);

    /// <summary>RMS, per cent.</summary>
    public double PeakPercent => Rms(_peak);

    /// <summary>RMS, milliseconds.</summary>
    public double StanceMilliseconds => Rms(_stance);

    /// <summary>RMS, milliseconds.</summary>
    public double StrideMilliseconds => Rms(_stride);

    /// <summary>Takes a crossing in.</summary>
    public void Add(SimulatedCrossing crossing, Measured measured)
    {
        Crossings++;
        if (!measured.Accepted)
            return;
        Accepted++;
        _weight.Add(100 * ((measured.WeightKg / crossing.Truth.WeightKg) - 1));
        _stride.Add(1000 * (measured.StrideSeconds - crossing.Truth.StrideSeconds!.Value));
        foreach (var foot in Feet.All)
        {
            var (was, got) = (crossing.Truth.Legs!.Value[foot], measured.Legs[foot]);
            _share.Add(100 * (got.Share - was.Share!.Value));
            _peak.Add(100 * ((got.PeakKg / was.PeakKg!.Value) - 1));
            _stance.Add(1000 * (got.StanceSeconds - was.StanceSeconds!.Value));
            if (got.Error is { } stated)
                _stated.Add((got.Share - was.Share.Value, stated));
        }
    }

    /// <summary>Error over stated error by fifths of the stated error: mean and standard deviation.</summary>
    public IEnumerable<(double Mean, double Deviation)> StandardisedFifths() => _stated.OrderBy(each => each.Stated)
        .Select(each => each.Error / each.Stated).Chunk(Math.Max(1, (_stated.Count + 4) / 5)).Select(MeanAndDeviation);

    /// <summary>The same over all.</summary>
    public (double Mean, double Deviation) Standardised() => MeanAndDeviation([.. _stated.Select(each => each.Error / each.Stated)]);

    private static (double Mean, double Deviation) MeanAndDeviation(double[] values)
    {
        if (values.Length == 0)
            return (double.NaN, double.NaN);
        var mean = values.Average();
        return (mean, Math.Sqrt(values.Average(value => (value - mean) * (value - mean))));
    }

    private double Quantile(double part)
    {
        if (_share.Count == 0)
            return double.NaN;
        var sizes = _share.Select(Math.Abs).Order().ToArray();
        return sizes[(int)Math.Min(sizes.Length - 1, part * sizes.Length)];
    }

    private static double Rms(List<double> errors) => errors.Count == 0 ? double.NaN : Math.Sqrt(errors.Average(error => error * error));
}
