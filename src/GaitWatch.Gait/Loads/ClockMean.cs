namespace GaitWatch.Gait;

/// <summary>The mean over trials, each weighted by how likely the times make it, gathered one after the other.</summary>
internal sealed class ClockMean
{
    /// <summary>A trial less likely than this part of the likeliest so far is left out.</summary>
    private const double LeastLikely = 0.0005;

    private readonly int _knots;
    private readonly double[] _strides;
    private readonly double[] _squares;
    private double _highest = double.MinValue;
    private double _total;
    private double _stancePart;
    private double _squaredError;

    /// <param name="knots">Knots of the course.</param>
    public ClockMean(int knots)
    {
        _knots = knots;
        _strides = new double[knots];
        _squares = new double[NormalEquations.Row(knots)];
    }

    /// <summary>Stride times at the knots, seconds; null when no trial could be solved.</summary>
    public double[]? Strides => _total > 0 ? Array.ConvertAll(_strides, sum => sum / _total) : null;

    /// <summary>Strides after its contact by which a lift is told.</summary>
    public double StancePart => _stancePart / _total;

    /// <summary>Scatter of a contact or a lift about the course, seconds.</summary>
    public double TimeError => Math.Sqrt(_squaredError / _total);

    /// <summary>Takes a trial in.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="logLikelihood">Of the times, but for a constant.</param>
    /// <param name="solved">Its equations, solved; the stride times at the knots are the last unknowns.</param>
    public void Add(ClockTrial trial, double logLikelihood, NormalEquations solved)
    {
        if (logLikelihood > _highest)
        {
            // What was gathered is less likely beside the new one by so much.
            var less = Math.Exp(_highest - logLikelihood);
            _highest = logLikelihood;
            _total *= less;
            _stancePart *= less;
            _squaredError *= less;
            foreach (var sums in (ReadOnlySpan<double[]>)[_strides, _squares])
            {
                for (var k = 0; k < sums.Length; k++)
                    sums[k] *= less;
            }
        }

        var weight = Math.Exp(logLikelihood - _highest);
        if (!(weight > LeastLikely))
            return;
        _total += weight;
        _stancePart += weight * trial.StancePart;
        _squaredError += weight * trial.TimeError * trial.TimeError;
        solved.AddCovariance(_squares, _knots, weight);
        var strides = solved.Solution.AsSpan(solved.Size - _knots);
        for (var a = 0; a < _knots; a++)
        {
            _strides[a] += weight * strides[a];
            for (var b = 0; b <= a; b++)
                _squares[NormalEquations.Row(a) + b] += weight * strides[a] * strides[b];
        }
    }

    /// <summary>Covariance of the stride times at the knots: that of each trial and what the trials differ, seconds squared.</summary>
    public double[,] Covariance()
    {
        var covariance = new double[_knots, _knots];
        for (var a = 0; a < _knots; a++)
        {
            for (var b = 0; b <= a; b++)
            {
                covariance[a, b] = covariance[b, a] =
                    (_squares[NormalEquations.Row(a) + b] / _total) - (_strides[a] / _total * (_strides[b] / _total));
            }
        }

        return covariance;
    }
}
