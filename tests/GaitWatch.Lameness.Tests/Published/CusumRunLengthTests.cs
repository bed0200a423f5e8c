using MathNet.Numerics.Distributions;

namespace GaitWatch.Lameness.Tests.Published;

/// <summary>
/// Against the R package spc 0.6.7 (Knoth S.), functions xcusum.arl and xcusum.crit: one-sided CUSUM, standard normal, zero state. Method: Brook D., Evans D.A. 1972,
/// Biometrika 59:539-549. Tolerance: half a per cent.
/// </summary>
public sealed class CusumRunLengthTests
{
    private const int Cells = 120;

    [Theory]
    [InlineData(0.25, 5, 0, 141.69)]
    [InlineData(0.5, 4, 0, 335.37)]
    [InlineData(0.5, 5, 0, 930.89)]
    [InlineData(0.75, 4, 0, 2004.24)]
    [InlineData(1, 3, 0, 1962.80)]
    [InlineData(0.5, 4, 1, 8.383)]
    [InlineData(0.5, 5, 1, 10.376)]
    [InlineData(1, 3, 2, 3.749)]
    public void Average_run_length(double reference, double limit, double shift, double expected)
    {
        var actual = RunLength.Average(x => Normal.CDF(shift - reference, 1, x), limit, Cells);
        Assert.InRange(actual, expected * 0.995, expected * 1.005);
    }

    [Theory]
    [InlineData(500, 4.389)]
    [InlineData(2000, 5.757)]
    [InlineData(10000, 7.361)]
    public void Decision_limit(double averageRunLength, double expected)
    {
        var (low, high) = (1.0, 12.0);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            if (RunLength.Average(x => Normal.CDF(-0.5, 1, x), middle, Cells) < averageRunLength)
                low = middle;
            else
                high = middle;
        }

        Assert.InRange(low, expected * 0.995, expected * 1.005);
    }

    /// <summary>The chain against plain simulation, for steps with the tails that a herd has.</summary>
    [Theory]
    [InlineData(1.0, 5, 3.0)]
    [InlineData(3.0, 5, 4.0)]
    [InlineData(6.0, 4, 4.0)]
    public void Chain_agrees_with_simulation(double size, int dof, double limit)
    {
        var tail = new LikelihoodRatioTail(dof);
        var chain = RunLength.Average(x => tail.Cdf(size, x), limit, 80);
        var random = new Random(7);
        var (steps, alarms) = (0L, 0);
        var cusum = new Cusum();
        while (alarms < 4000)
        {
            var scale = Math.Sqrt(dof / Enumerable.Range(0, dof).Sum(_ => Math.Pow(Gauss(random), 2)));
            var v = new Vector3(scale * Gauss(random), scale * Gauss(random), scale * Gauss(random));
            cusum.Add(v, v.Dot(v), new Vector3(size, 0, 0), Matrix3.Diagonal(1, 1, 1), dof, default, steps);
            steps++;
            if (cusum.Value <= limit)
                continue;
            alarms++;
            cusum = default;
        }

        // 4,000 alarms: 1.6 % standard error; three of them.
        Assert.InRange(steps / (double)alarms, chain * 0.952, chain * 1.048);
    }

    /// <summary>The table that limits are solved from is the chain, give or take its interpolation.</summary>
    [Theory]
    [InlineData(0.8, 6.3)]
    [InlineData(2.2, 7.7)]
    [InlineData(3.4, 8.1)]
    [InlineData(7.9, 5.2)]
    public void Table_agrees_with_the_chain(double size, double limit)
    {
        var tails = Array.IndexOf(CowNoise.Tails, 5.0);
        var tail = new LikelihoodRatioTail(5);
        var chain = 1 / RunLength.Average(x => tail.Cdf(size, x), limit, 160);
        Assert.InRange(FalseAlarmTable.For(tails).Rate(FalseAlarmTable.PlaceOfSize(size), FalseAlarmTable.Place(limit)), chain * 0.93, chain * 1.07);
    }

    /// <summary>
    /// NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.3, the worked example: mean 325, reference value 0.3175, twenty values (data and sums from memory, to two decimals). With
    /// tails as good as normal the log likelihood ratio of a shift of 0.635 in unit variance is 0.635 times the tabulated upper sum.
    /// </summary>
    [Fact]
    public void The_handbooks_worked_example()
    {
        const double shift = 2 * 0.3175;
        double[] values =
        [
            324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
            324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350,
        ];
        double[] upper = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04];
        var cusum = new Cusum();
        for (var i = 0; i < values.Length; i++)
        {
            var x = values[i] - 325;
            cusum.Add(new Vector3(x, 0, 0), x * x, new Vector3(shift, 0, 0), Matrix3.Diagonal(1, 1, 1), 1e9, default, i);
            Assert.Equal(upper[i], cusum.Value / shift, 0.011);
        }
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
