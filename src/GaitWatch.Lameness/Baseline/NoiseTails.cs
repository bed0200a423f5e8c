namespace GaitWatch.Lameness;

/// <summary>
/// How heavy the tails of the herd's surprises are: the degrees of freedom, of a few candidates, under which the squared distances seen are
/// the likeliest, each candidate with the scale that suits it.
/// </summary>
internal sealed class NoiseTails
{
    /// <summary>Surprises that count, about: a month of a large herd, a year of a small one.</summary>
    private const double Memory = 20000;

    /// <summary>A herd of which nothing is known is taken to have 6: heavier than normal, as gait is.</summary>
    private const int FirstGuess = 3;

    private static readonly double[] _candidates = [3, 4, 5, 6, 8, 11, 16, 30, 100];
    private readonly double[] _scale = new double[_candidates.Length];
    private readonly double[] _logLikelihood = new double[_candidates.Length];
    private double _count;
    private int _likeliest = FirstGuess;
    private static readonly double[] _constant = [.. _candidates.Select(v =>
        MathNet.Numerics.SpecialFunctions.GammaLn((v + 3) / 2) - MathNet.Numerics.SpecialFunctions.GammaLn(v / 2) - (1.5 * Math.Log(v)))];

    public NoiseTails()
    {
        Array.Fill(_scale, 1);
        for (var i = 0; i < _logLikelihood.Length; i++)
            _logLikelihood[i] = -5 * Math.Abs(i - FirstGuess);
    }

    /// <summary>The likeliest degrees of freedom.</summary>
    public double Dof => _candidates[_likeliest];

    /// <summary>Scale of the squared distances under the likeliest, 1 when the covariances in use are right.</summary>
    public double Scale => _scale[_likeliest];

    /// <summary>Takes in the squared Mahalanobis distance of one surprise, by the covariances in use.</summary>
    public void Add(double distance)
    {
        _count = Math.Min(_count + 1, Memory);
        var learning = 1 / (_count + 300);
        for (var i = 0; i < _scale.Length; i++)
        {
            var dof = _candidates[i];
            var d = distance / _scale[i];
            _logLikelihood[i] = ((1 - (1 / Memory)) * _logLikelihood[i])
                + _constant[i] - (1.5 * Math.Log(_scale[i])) - ((dof + 3) / 2 * Math.Log(1 + (d / dof)));
            _scale[i] *= 1 + (learning * (((dof + 3) / (dof + d) * d / 3) - 1));
        }
    }

    /// <summary>Chooses anew.</summary>
    public void Choose()
    {
        var best = 0;
        for (var i = 1; i < _logLikelihood.Length; i++)
        {
            if (_logLikelihood[i] > _logLikelihood[best])
                best = i;
        }

        _likeliest = best;
    }

    /// <summary>Tells that the covariances in use have been multiplied by a factor.</summary>
    public void Rescaled(double factor)
    {
        for (var i = 0; i < _scale.Length; i++)
            _scale[i] /= factor;
    }

    public void Save(BinaryWriter writer)
    {
        foreach (var s in _scale)
            writer.Write(s);
        foreach (var l in _logLikelihood)
            writer.Write(l);
        writer.Write(_count);
        writer.Write(_likeliest);
    }

    public static NoiseTails Load(BinaryReader reader)
    {
        var tails = new NoiseTails();
        for (var i = 0; i < tails._scale.Length; i++)
            tails._scale[i] = reader.ReadDouble();
        for (var i = 0; i < tails._logLikelihood.Length; i++)
            tails._logLikelihood[i] = reader.ReadDouble();
        tails._count = reader.ReadDouble();
        tails._likeliest = reader.ReadInt32();
        return tails;
    }
}
