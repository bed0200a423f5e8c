using MathNet.Numerics.LinearAlgebra;

namespace GaitWatch.Gait;

/// <summary>The normal matrix of a least-squares fit, inverted so that no signal, however wild, stops the analysis.</summary>
internal static class NormalMatrix
{
    /// <summary>
    /// Part of each parameter's own information added to it. Rounding alone can leave a matrix that hardly tells two parameters apart
    /// without a Cholesky factor; its errors stay below some 1e-14 of the diagonal, so this much restores it and moves no fit that is worth anything.
    /// </summary>
    private const double Ridge = 1e-11;

    /// <summary>The covariance of the parameters, the inverse of the normal matrix.</summary>
    /// <param name="normal">Symmetric, positive definite but for rounding; every diagonal element positive.</param>
    /// <returns>Null when an element is not finite: the times or places that made it told nothing.</returns>
    public static Matrix<double>? Covariance(Matrix<double> normal)
    {
        var size = normal.RowCount;
        var scale = Vector<double>.Build.Dense(size, k => 1 / Math.Sqrt(normal[k, k]));
        var scaled = Matrix<double>.Build.Dense(size, size, (a, b) => normal[a, b] * scale[a] * scale[b]);
        if (!scaled.ForAll(double.IsFinite))
            return null;
        for (var k = 0; k < size; k++)
            scaled[k, k] += Ridge;
        var covariance = scaled.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(size));
        return Matrix<double>.Build.Dense(size, size, (a, b) => covariance[a, b] * scale[a] * scale[b]);
    }
}
