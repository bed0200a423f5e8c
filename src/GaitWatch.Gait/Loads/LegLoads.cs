namespace GaitWatch.Gait;

/// <summary>What each leg carried, and how sure that is.</summary>
/// <param name="Legs">The figures of each leg.</param>
/// <param name="SumKg">Sum of the four loads, kg; null unless all four are known.</param>
/// <param name="SumError">One standard error of it, kg.</param>
internal sealed record LegLoads(PerLeg<LegLoad> Legs, double? SumKg, double SumError)
{
    /// <summary>Means over the whole footfalls of each leg.</summary>
    /// <param name="feet">All feet, their forces known.</param>
    /// <param name="clock">Her stride times; null when unknown.</param>
    /// <param name="impulses">Covariance of their impulses, kg2 s2.</param>
    /// <param name="step">Seconds a sample.</param>
    public static LegLoads Of(IReadOnlyList<FootOnPlate> feet, StrideClock? clock, double[,] impulses, double step)
    {
        var loads = new double[4];
        var perImpulse = new double[feet.Count];
        var slope = new double[4];
        var change = new double[4];
        var peaks = new double[4];
        var stances = new double[4];
        var counts = new int[4];
        for (var f = 0; f < feet.Count; f++)
        {
            var foot = feet[f];
            if (foot.Leg is not { } leg || !foot.IsWhole || clock is null)
                continue;
            var (contact, lift) = (foot.Contact * step, foot.Lift * step);
            var stride = clock.StrideOf(contact, lift);
            foot.StrideSeconds = stride;
            var k = (int)leg;
            var load = foot.ImpulseKgSeconds / stride;
            var sensitivity = clock.Sensitivity(contact, lift);
            counts[k]++;
            loads[k] += load;
            slope[k] -= load * sensitivity.Slope;
            change[k] -= load * sensitivity.Change;
            perImpulse[f] = 1 / stride;
            peaks[k] += foot.PeakKg;
            stances[k] += (foot.Lift - foot.Contact) * step;
        }

        var all = true;
        for (var k = 0; k < 4; k++)
        {
            all &= counts[k] > 0;
            var n = Math.Max(1, counts[k]);
            loads[k] /= n;
            slope[k] /= n;
            change[k] /= n;
            peaks[k] /= n;
            stances[k] /= n;
        }

        var sum = loads[0] + loads[1] + loads[2] + loads[3];
        all &= sum > 0;
        var covariance = clock?.Covariance ?? default;
        double[] unit = [1, 1, 1, 1];
        return new LegLoads(
            PerLeg.From(leg =>
            {
                var k = (int)leg;
                if (counts[k] == 0)
                    return LegLoad.Unknown;
                var share = Math.Clamp(loads[k] / sum, 0, 1);
                return new LegLoad(
                    loads[k], all ? share : null, all ? Math.Sqrt(Variance(ShareGradient(k, share))) / sum : null, peaks[k], stances[k], counts[k]);
            }),
            all ? sum : null,
            all ? Math.Sqrt(Variance(unit)) : 0);

        static double[] ShareGradient(int leg, double share)
        {
            double[] gradient = [-share, -share, -share, -share];
            gradient[leg] += 1;
            return gradient;
        }

        double Variance(double[] gradient)
        {
            double bySlope = 0, byChange = 0;
            for (var k = 0; k < 4; k++)
            {
                bySlope += gradient[k] * slope[k];
                byChange += gradient[k] * change[k];
            }

            var byImpulses = 0.0;
            for (var a = 0; a < feet.Count; a++)
            {
                for (var b = 0; b < feet.Count; b++)
                    byImpulses += Share(a) * Share(b) * impulses[a, b];
            }

            return Math.Max(0, byImpulses) + (bySlope * bySlope * covariance.SlopeSlope) + (2 * bySlope * byChange * covariance.SlopeChange)
                + (byChange * byChange * covariance.ChangeChange);

            double Share(int foot) => perImpulse[foot] == 0 ? 0 : gradient[(int)feet[foot].Leg!.Value] * perImpulse[foot] / counts[(int)feet[foot].Leg!.Value];
        }
    }
}
