using System.Runtime.CompilerServices;

namespace GaitWatch.Lameness;

/// <summary>
/// How noisy one cow is and how heavy her tails are, shrunk to the herd's while she is young. Cows differ in both: one limit for an even-tempered cow
/// and one that stumbles twice a week would give the second most of the false flags.
/// </summary>
/// <remarks>
/// For each candidate weight of tails the scale that suits it, by stochastic expectation-maximisation (Lange K.L. et al. 1989, J Am Stat Assoc 84:881-896), and the
/// likelihood of her surprises; each candidate counts by what it is worth, the herd's cows being the prior, so that one surprise more does not turn her level and tails from one to the next. Limits are tabulated, and taken by the likeliest.
/// </remarks>
internal struct CowNoise
{
    /// <summary>Candidates, degrees of freedom.</summary>
    public static readonly double[] Tails = [3.5, 5, 8, 16, 100];

    /// <summary>Passages that the herd's level counts for, and how many of hers count at most.</summary>
    private const double LevelPrior = 25;
    private const double LevelMemory = 150;

    /// <summary>Passages that her tails are judged by, at most: far more are needed than for a level.</summary>
    private const double TailsMemory = 400;

    private Numbers _level;
    private Numbers _logLikelihood;
    private double _count;
    private double _levelInUse;
    private double _dofInUse;
    private long _likeliest;

    [InlineArray(5)]
    private struct Numbers
    {
        private double _first;
    }

    /// <summary>A cow of whom only the herd is known.</summary>
    public static CowNoise Unknown(ReadOnlySpan<double> prior)
    {
        var noise = new CowNoise();
        for (var i = 0; i < Tails.Length; i++)
            noise._level[i] = 1;
        noise.Choose(prior);
        return noise;
    }

    private static readonly double[] _constant = [.. Tails.Select(v =>
        MathNet.Numerics.SpecialFunctions.GammaLn((v + 3) / 2) - MathNet.Numerics.SpecialFunctions.GammaLn(v / 2) - (1.5 * Math.Log(v)))];

    /// <summary>Place of her likeliest weight of tails among <see cref="Tails"/>.</summary>
    public readonly int TailsIndex => (int)_likeliest;

    /// <summary>Her degrees of freedom.</summary>
    public readonly double Dof => _dofInUse;

    /// <summary>Her noise over the herd's, variances.</summary>
    public readonly double Level => _levelInUse;

    /// <summary>Takes in the squared Mahalanobis distance of a surprise, by the level in use.</summary>
    /// <param name="distance">The squared distance.</param>
    /// <param name="prior">Logarithm of how common each candidate is in the herd.</param>
    public void Add(double distance, ReadOnlySpan<double> prior)
    {
        _count = Math.Min(_count + 1, LevelMemory);
        var learning = 1 / (LevelPrior + _count);
        var inUse = Level;
        for (var i = 0; i < Tails.Length; i++)
        {
            var dof = Tails[i];
            var d = distance * inUse / _level[i];
            _logLikelihood[i] = ((1 - (1 / TailsMemory)) * _logLikelihood[i])
                + _constant[i] - (1.5 * Math.Log(_level[i])) - ((dof + 3) / 2 * Math.Log(1 + (d / dof)));
            _level[i] = Math.Clamp(_level[i] * (1 + (learning * (((dof + 3) / (dof + d) * d / 3) - 1))), 0.15, 10);
        }

        Choose(prior);
    }

    private void Choose(ReadOnlySpan<double> prior)
    {
        var best = 0;
        for (var i = 1; i < Tails.Length; i++)
        {
            if (_logLikelihood[i] + prior[i] > _logLikelihood[best] + prior[best])
                best = i;
        }

        _likeliest = best;
        var (all, level, perDof) = (0.0, 0.0, 0.0);
        for (var i = 0; i < Tails.Length; i++)
        {
            var weight = Math.Exp(_logLikelihood[i] + prior[i] - _logLikelihood[best] - prior[best]);
            all += weight;
            level += weight * _level[i];
            perDof += weight / Tails[i];
        }

        (_levelInUse, _dofInUse) = (level / all, all / perDof);
    }
}
