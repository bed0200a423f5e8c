using GaitWatch.Gait;

namespace GaitWatch.Lameness.Tests.Reference;

/// <summary>Against scipy 1.10 and numpy (reference.csv, made by make_reference.py).</summary>
public sealed class ScipyTests
{
    /// <summary>scipy.spatial.distance.mahalanobis, to 1e-9.</summary>
    [Fact]
    public void Squared_distance_of_a_surprise()
    {
        foreach (var row in ReferenceRows.Of("distance"))
        {
            var (v, s) = (row.Vector(), row.Matrix());
            Assert.Equal(row.Dequeue(), s.Inverse().Quadratic(v), 1e-9);
        }
    }

    /// <summary>scipy.stats.multivariate_t: the step of a CUSUM is the log ratio of two densities.</summary>
    [Fact]
    public void Step_of_the_cusum_is_the_log_likelihood_ratio()
    {
        foreach (var row in ReferenceRows.Of("ratio"))
        {
            var (v, change, scale) = (row.Vector(), row.Vector(), row.Matrix());
            var dof = row.Dequeue();
            var inverse = scale.Inverse();
            // Started high, so that a step down is seen whole.
            var cusum = new Cusum { Value = 100 };
            cusum.Add(v, inverse.Quadratic(v), change, inverse, dof, default, 0);
            Assert.Equal(row.Dequeue(), cusum.Value - 100, 1e-9);
        }
    }

    /// <summary>Four million draws of numpy: standard error below 0.00025.</summary>
    [Fact]
    public void Distribution_of_the_step()
    {
        foreach (var row in ReferenceRows.Of("tail"))
        {
            var (size, dof, value) = (row.Dequeue(), row.Dequeue(), row.Dequeue());
            Assert.Equal(row.Dequeue(), new LikelihoodRatioTail(dof).Cdf(size, value), 0.0015);
        }
    }

    /// <summary>numpy: all passages conditioned at once, where the filter takes them one by one.</summary>
    [Fact]
    public void Baseline_equals_conditioning_on_all_passages_at_once()
    {
        foreach (var row in ReferenceRows.Of("filter"))
        {
            var herdMean = row.Vector();
            var (herd, wander, day, noise, drift) = (row.Matrix(), row.Matrix(), row.Matrix(), row.Matrix(), row.Matrix());
            var (kept, roamKept) = (row.Dequeue(), row.Dequeue());
            var filter = BaselineFilter.Unknown(herdMean, herd, wander, day);
            var at = 0.0;
            for (var i = 0; i < 7; i++)
            {
                var then = row.Dequeue();
                filter.Drift((then - at) * drift);
                filter.Roam(Math.Pow(roamKept, then - at), wander);
                if (then > at)
                    filter.NewDay(Math.Pow(kept, then - at), day);
                at = then;
                var surprise = row.Vector() - filter.Expected;
                filter.Learn(surprise, filter.Gains(filter.ExpectedCov + noise));
            }

            ReferenceRows.AssertClose(row.Vector(), filter.Mean, 1e-12);
            var cov = row.Matrix();
            Assert.Equal(cov.Xx, filter.MeanCov.Xx, 1e-12);
            Assert.Equal(cov.Xy, filter.MeanCov.Xy, 1e-12);
            Assert.Equal(cov.Yz, filter.MeanCov.Yz, 1e-12);
            Assert.Equal(cov.Zz, filter.MeanCov.Zz, 1e-12);
        }
    }

    /// <summary>numpy: centred log-ratio on an orthonormal basis (Egozcue J.J. et al. 2003, Math Geol 35:279-300).</summary>
    [Fact]
    public void Balances_are_the_isometric_log_ratio()
    {
        foreach (var row in ReferenceRows.Of("balances"))
        {
            var balances = GaitWatch.Lameness.Balances.FromShares(new PerLeg<double>(row.Dequeue(), row.Dequeue(), row.Dequeue(), row.Dequeue()));
            ReferenceRows.AssertClose(row.Vector(), balances.ToVector(), 1e-12);
        }
    }

    /// <summary>numpy: the shares themselves.</summary>
    [Fact]
    public void Drop_is_of_the_share()
    {
        foreach (var row in ReferenceRows.Of("drop"))
        {
            var (before, now, leg) = (row.Vector(), row.Vector(), (Leg)(int)row.Dequeue());
            Assert.Equal(row.Dequeue(), LoadDrop.Between(before, now, Matrix3.Zero, leg).Percent, 1e-9);
        }
    }

    /// <summary>scipy.optimize.brentq on the score equation of Huber's location (Huber P.J. 1964, Ann Math Stat 35:73-101), without and with the weight of none having moved.</summary>
    [Fact]
    public void Mean_of_a_session_is_hubers_location()
    {
        foreach (var row in ReferenceRows.Of("huber"))
        {
            var held = row.Dequeue();
            var values = Enumerable.Range(0, 10).Select(_ => row.Dequeue()).ToArray();
            var variances = Enumerable.Range(0, 10).Select(_ => row.Dequeue()).ToArray();
            var usual = variances.Average();
            var precisions = variances.Select(v => 1 / Math.Sqrt(Math.Max(v, usual))).ToArray();
            var (mean, _) = held == 0 ? SessionMean.Of(values, precisions, 0) : SessionMean.Shrunk(values, precisions, 1 / held, usual, 0);
            Assert.Equal(row.Dequeue(), mean, 1e-8);
        }
    }
}
