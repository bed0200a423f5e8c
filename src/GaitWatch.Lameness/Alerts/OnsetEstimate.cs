namespace GaitWatch.Lameness;

/// <summary>When a change began, from all of her recent days and not only those since the evidence left zero, which is late where a change is slow.</summary>
/// <param name="Day">Median of the posterior, days on the scale of <see cref="DayMean.Day"/>.</param>
/// <param name="Earliest">Its 5 % point.</param>
/// <param name="Latest">Its 95 % point.</param>
/// <remarks>
/// Her days' means, projected on the change that was raised, are a constant, the wandering about it, noise, and from some instant on a straight rise to a plateau. Over a grid
/// of instants and rises the size is integrated out (Broemeling L.D., Tsurumi H. 1987, Econometrics and Structural Change: the posterior of a change point), every
/// instant being equally probable beforehand. Days far out count little (Lange K.L. et al. 1989, J Am Stat Assoc 84:881-896).
/// </remarks>
internal readonly record struct OnsetEstimate(double Day, double Earliest, double Latest)
{
    /// <summary>Days before the alert that are thought of, and how finely.</summary>
    private const double Back = 40;
    private const double Step = 0.25;

    /// <summary>Fewer days than this tell no more than the evidence's last zero.</summary>
    private const int LeastDays = 5;

    /// <summary>Days from the beginning to the plateau that are thought of, each as probable as the next: evenly on a logarithm.</summary>
    private static readonly double[] _rises = [0.5, 1, 2, 4, 8, 14, 22];

    /// <summary>Sizes that are thought of, in units of the design, and how far the level before may lie from the baseline as it is thought to have been.</summary>
    private const double SizeSpread = 2;
    private const double LevelSpread = 0.5;

    /// <summary>
    /// The part of each likelihood that is believed (Miller J.W., Dunson D.B. 2019, J Am Stat Assoc 114:1113-1125: a posterior that allows for a model that is not quite right).
    /// No change is quite a straight rise, and she was caught at a moment that her noise helped to choose; believed in full, an interval that should hold nine
    /// times in ten holds in eight. Set on development seeds of the simulator's herds (0.5: 95 % and twice as wide).
    /// </summary>
    private const double Believed = 0.7;

    /// <summary>The estimate; null when too little is known of the days before.</summary>
    /// <param name="days">Her days, oldest first; the last holds the alert.</param>
    /// <param name="now">The alert's instant.</param>
    /// <param name="normal">Her baseline, balances.</param>
    /// <param name="design">The change raised, balances.</param>
    /// <param name="noise">The herd's noise.</param>
    /// <param name="own">Hers.</param>
    public static OnsetEstimate? Of(List<DayMean> days, double now, Vector3 normal, Vector3 design, HerdNoise noise, in CowNoise own)
    {
        var n = days.Count;
        if (n < LeastDays)
            return null;
        var inverse = (own.Level * (noise.Passage + noise.Day)).Inverse();
        var direction = (1 / inverse.Quadratic(design)) * (inverse * design);
        var (passage, day, wander) = (own.Level * noise.Passage.Quadratic(direction), own.Level * noise.Day.Quadratic(direction), noise.Wander.Quadratic(direction));
        var (at, seen, variance) = (new double[n], new double[n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            at[i] = Math.Min(days[i].Day + 0.5, now);
            seen[i] = direction.Dot(days[i].Mean - normal);
            variance[i] = (passage / days[i].Count) + day;
        }

        var grid = new Grid(at, seen, variance, wander, Math.Max(now - Back, at[0]), now);
        for (var i = 0; i < n; i++)
        {
            var apart = seen[i] - grid.Likeliest(at[i]);
            variance[i] *= (own.Dof + (apart * apart / variance[i])) / (own.Dof + 1);
        }

        return new Grid(at, seen, variance, wander, Math.Max(now - Back, at[0]), now).Posterior();
    }

    private static double Rise(double since, double days) => Math.Clamp(since / days, 0, 1);

    /// <summary>Posterior weights over beginnings and rises.</summary>
    private sealed class Grid
    {
        private readonly double _first;
        private readonly double[] _weights;
        private readonly double _begun;
        private readonly double _rise;
        private readonly double _size;
        private readonly double _level;

        public Grid(double[] at, double[] seen, double[] variance, double wander, double first, double now)
        {
            _first = first;
            var n = at.Length;
            var root = Root(at, variance, wander);
            var y = Whitened(root, seen, 0);
            _weights = new double[(int)((now - first) / Step) + 1];
            var logs = new double[_weights.Length * _rises.Length];
            var (best, f) = (double.NegativeInfinity, new double[n]);
            for (var k = 0; k < logs.Length; k++)
            {
                var (begun, rise) = (first + (Step * (k / _rises.Length)), _rises[k % _rises.Length]);
                // Before its beginning a course is nothing, whitened or not.
                var from = 0;
                for (var i = 0; i < n; i++)
                {
                    f[i] = Rise(at[i] - begun, rise);
                    from = f[i] > 0 ? from : i + 1;
                }

                var w = Whitened(root, f, from);
                var (information, score) = (0.0, 0.0);
                for (var i = from; i < n; i++)
                    (information, score) = (information + (w[i] * w[i]), score + (w[i] * y[i]));
                information += 1 / (SizeSpread * SizeSpread);
                logs[k] = score <= 0 ? double.NegativeInfinity : (0.5 * score * score / information) - (0.5 * Math.Log(information));
                if (logs[k] <= best)
                    continue;
                (best, _begun, _rise, _size) = (logs[k], begun, rise, score / information);
            }

            for (var k = 0; k < logs.Length; k++)
                _weights[k / _rises.Length] += double.IsNegativeInfinity(best) ? 1 : Math.Exp(Believed * (logs[k] - best));
            // The level before, as the likeliest course leaves it.
            var (sum, weight) = (0.0, 1 / (LevelSpread * LevelSpread));
            for (var i = 0; i < n; i++)
            {
                sum += (seen[i] - (_size * Rise(at[i] - _begun, _rise))) / (variance[i] + wander);
                weight += 1 / (variance[i] + wander);
            }

            _level = sum / weight;
        }

        public double Likeliest(double at) => _level + (_size * Rise(at - _begun, _rise));

        public OnsetEstimate Posterior() => new(Quantile(0.5), Quantile(0.05), Quantile(0.95));

        private double Quantile(double part)
        {
            var (left, sum) = (part * _weights.Sum(), 0.0);
            for (var i = 0; i < _weights.Length; i++)
            {
                if (sum + _weights[i] >= left)
                    return _first + (Step * (i + ((left - sum) / _weights[i]) - 0.5));
                sum += _weights[i];
            }

            return _first + (Step * _weights.Length);
        }

        /// <summary>Cholesky's root of the days' covariance: noise, wandering and the level's uncertainty.</summary>
        private static double[,] Root(double[] at, double[] variance, double wander)
        {
            var n = at.Length;
            var root = new double[n, n];
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    var sum = (LevelSpread * LevelSpread) + (wander * Math.Exp(-(at[i] - at[j]) / HerdNoise.WanderDays)) + (i == j ? variance[i] : 0);
                    for (var k = 0; k < j; k++)
                        sum -= root[i, k] * root[j, k];
                    root[i, j] = i == j ? Math.Sqrt(sum) : sum / root[j, j];
                }
            }

            return root;
        }

        /// <summary>The values made independent; all before <paramref name="from"/> are 0.</summary>
        private static double[] Whitened(double[,] root, double[] values, int from)
        {
            var white = new double[values.Length];
            for (var i = from; i < white.Length; i++)
            {
                var sum = values[i];
                for (var k = from; k < i; k++)
                    sum -= root[i, k] * white[k];
                white[i] = sum / root[i, i];
            }

            return white;
        }
    }
}
