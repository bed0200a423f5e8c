using MathNet.Numerics.LinearAlgebra.Double;

namespace GaitWatch.Lameness;

/// <summary>Average run length of a one-sided CUSUM of independent increments, by Brook and Evans' Markov chain.</summary>
/// <remarks>Brook D., Evans D.A. 1972, Biometrika 59:539-549. The interval from 0 to the limit is cut into equal cells, the lowest half as wide.</remarks>
internal static class RunLength
{
    /// <summary>Mean number of increments until the sum, started at 0 and never below 0, exceeds the limit.</summary>
    /// <param name="cdf">Distribution function of one increment.</param>
    /// <param name="limit">The decision limit, above 0.</param>
    /// <param name="cells">How many cells; the error falls with their square.</param>
    public static double Average(Func<double, double> cdf, double limit, int cells)
    {
        var width = 2 * limit / ((2 * cells) - 1);
        var at = new double[2 * cells];
        for (var i = 0; i < at.Length; i++)
            at[i] = cdf((i - cells + 0.5) * width);
        return Average(at, cells);
    }

    /// <summary>The same from the distribution function at (i - cells + 1/2) cell widths, i from 0 to 2 cells - 1.</summary>
    public static double Average(ReadOnlySpan<double> cdfAtEdges, int cells)
    {
        var system = new DenseMatrix(cells, cells);
        for (var from = 0; from < cells; from++)
        {
            system[from, 0] = -cdfAtEdges[cells - from];
            for (var to = 1; to < cells; to++)
                system[from, to] = -(cdfAtEdges[to - from + cells] - cdfAtEdges[to - from + cells - 1]);
            system[from, from] += 1;
        }

        return system.LU().Solve(DenseVector.Create(cells, 1.0))[0];
    }
}
