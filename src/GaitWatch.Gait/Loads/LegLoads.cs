namespace GaitWatch.Gait;

/// <summary>What each leg carried, and how sure that is.</summary>
/// <param name="Legs">The figures of each leg.</param>
/// <param name="SumKg">Sum of the four loads, kg; null unless all four are known.</param>
/// <param name="SumError">One standard error of it, kg.</param>
internal sealed record LegLoads(PerLeg<LegLoad> Legs, double? SumKg, double SumError)
{
    /// <summary>Means over the whole footfalls of each leg.</summary>
    /// <param name="crossing">All feet, their forces known.</param>
    /// <param name="clock">Her stride times; null when unknown.</param>
    public static LegLoads Of(CrossingFeet crossing, StrideClock? clock)
    {
        if (clock is null)
            return new LegLoads(PerLeg.From(_ => LegLoad.Unknown), null, 0);
        var (feet, step) = (crossing.InOrder, crossing.Step);
        var impulses = ImpulseErrors.Of(crossing);
        var loads = new double[4];
        var perImpulse = new double[feet.Count];
        // What each leg's load changes by for a change of the clock's parameters.
        var parametersOfClock = clock.Parameters;
        var byClock = new double[4, parametersOfClock];
        Span<double> sensitivity = stackalloc double[parametersOfClock];
        var peaks = new double[4];
        var stances = new double[4];
        var counts = new int[4];
        for (var f = 0; f < feet.Count; f++)
        {
            var foot = feet[f];
            if (foot.Leg is not { } leg || !foot.IsWhole)
                continue;
            var contact = foot.Contact * step;
            var stride = clock.StrideOf(contact);
            foot.StrideSeconds = stride;
            var k = (int)leg;
            var load = foot.ImpulseKgSeconds / stride;
            clock.Sensitivity(contact, sensitivity);
            counts[k]++;
            loads[k] += load;
            for (var p = 0; p < sensitivity.Length; p++)
                byClock[k, p] -= load * sensitivity[p];
            perImpulse[f] = 1 / stride;
            // The stride around this stance ends in four times (contact and lift before and after), mostly off the plates and each as uneven as her steps.
            var uneven = foot.ImpulseKgSeconds * 0.25 * Math.Sqrt(4) * clock.UnevenSeconds / stride;
            impulses[f, f] += uneven * uneven;
            peaks[k] += foot.PeakKg;
            stances[k] += (foot.Lift - foot.Contact) * step;
        }

        var all = true;
        for (var k = 0; k < 4; k++)
        {
            all &= counts[k] > 0;
            var n = Math.Max(1, counts[k]);
            loads[k] /= n;
            for (var p = 0; p < parametersOfClock; p++)
                byClock[k, p] /= n;
            peaks[k] /= n;
            stances[k] /= n;
        }

        var sum = loads[0] + loads[1] + loads[2] + loads[3];
        all &= sum > 0;
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
            Span<double> parameters = stackalloc double[parametersOfClock];
            for (var p = 0; p < parameters.Length; p++)
            {
                parameters[p] = 0;
                for (var k = 0; k < 4; k++)
                    parameters[p] += gradient[k] * byClock[k, p];
            }

            var byStrides = 0.0;
            for (var p = 0; p < parameters.Length; p++)
            {
                for (var q = 0; q < parameters.Length; q++)
                    byStrides += parameters[p] * parameters[q] * clock.Covariance(p, q);
            }

            var byImpulses = 0.0;
            for (var a = 0; a < feet.Count; a++)
            {
                for (var b = 0; b < feet.Count; b++)
                    byImpulses += Share(a) * Share(b) * impulses[a, b];
            }

            return Math.Max(0, byImpulses) + Math.Max(0, byStrides);

            double Share(int foot) => perImpulse[foot] == 0 ? 0 : gradient[(int)feet[foot].Leg!.Value] * perImpulse[foot] / counts[(int)feet[foot].Leg!.Value];
        }
    }
}
