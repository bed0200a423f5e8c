namespace GaitWatch.Simulator;

/// <summary>Puts an animal's feet on the plates, tick by tick.</summary>
internal static class Render
{
    /// <summary>Adds the animal's load to the plates and returns each stay of a foot there, times in seconds from tick 0.</summary>
    public static List<FootfallTruth> Onto(PlateLoads loads, Animal animal, double plateLength, int animalNumber = 0)
    {
        var footfalls = new List<FootfallTruth>();
        var standing = animal.Rest is null ? null : StandingShare(animal);
        foreach (var step in animal.Steps)
        {
            var reach = step.HalfLengthMetres;
            if (!step.MeetsPlatform || step.X + reach <= 0 || step.X - reach >= plateLength)
                continue;
            var whole = step.X - reach >= 0 && step.X + reach <= plateLength;
            double contact = double.NaN, impulse = 0, peak = 0;
            for (var tick = 1; tick < loads.Ticks; tick++)
            {
                var u = Fraction(step, animal.Phase[tick]);
                var presence = animal.Presence?[tick] ?? 1;
                var stands = u > 0 && u < 1 && presence > 0;
                if (stands && double.IsNaN(contact))
                    contact = CrossedAt(step, animal.Phase, tick) * loads.TickSeconds;
                if (stands)
                {
                    var kg = step.MeanKg * step.Shape.At(u);
                    if (animal.Rest is { } rest && rest[tick] > 0)
                        kg += rest[tick] * (animal.WeightKg * animal.StandingShares[step.Foot] * Grip(u) / standing![tick] * Sway(step, tick * loads.TickSeconds) - kg);
                    kg *= presence;
                    var centre = step.X + step.TravelMetres * (u * u * (3 - 2 * u) - 0.5);
                    var halfWidth = step.HalfLengthMetres - Math.Abs(centre - step.X);
                    var onPlate = loads.Add(step.IsOnLeftPlate, tick, kg, centre, halfWidth);
                    impulse += onPlate * loads.TickSeconds;
                    peak = Math.Max(peak, onPlate);
                }

                if (!double.IsNaN(contact) && (!stands || tick == loads.Ticks - 1))
                {
                    var lift = (stands ? tick : CrossedAt(step, animal.Phase, tick)) * loads.TickSeconds;
                    footfalls.Add(new(animalNumber, step.Foot, contact, lift, step.X, whole, impulse, peak, step.StrideSeconds));
                    (contact, impulse, peak) = (double.NaN, 0, 0);
                }
            }
        }

        return footfalls;
    }

    /// <summary>A cow at rest sways: about 5 % of her weight, every two to three seconds, from side to side (invented, order of magnitude).</summary>
    private static double Sway(Step step, double seconds) => 1 + (step.Foot.IsLeft() ? 0.05 : -0.05) * Math.Sin(2 * Math.PI * 0.4 * seconds);

    /// <summary>How far a foot that stands has taken up its part: from nothing to all of it over the first, and back over the last, hundredths of its stance.</summary>
    private static double Grip(double u)
    {
        var part = Math.Min(1, Math.Min(u, 1 - u) / 0.06);
        return part * part * (3 - 2 * part);
    }

    private static double Fraction(Step step, double phase) => (phase - step.ContactPhase) / (step.LiftPhase - step.ContactPhase);

    /// <summary>Where between the tick before and this one the foot came down or left, in ticks.</summary>
    private static double CrossedAt(Step step, double[] phase, int tick)
    {
        var (before, after) = (phase[tick - 1], phase[tick]);
        if (Fraction(step, before) is > 0 and < 1 && Fraction(step, after) is > 0 and < 1)
            return tick;
        var edge = (step.ContactPhase - before) * (step.ContactPhase - after) <= 0 ? step.ContactPhase : step.LiftPhase;
        return before == after ? tick : tick - 1 + Math.Clamp((edge - before) / (after - before), 0, 1);
    }

    private static double[] StandingShare(Animal animal)
    {
        var sum = new double[animal.Phase.Length];
        foreach (var step in animal.Steps)
        {
            for (var tick = 0; tick < sum.Length; tick++)
            {
                var u = Fraction(step, animal.Phase[tick]);
                if (u > 0 && u < 1)
                    sum[tick] += animal.StandingShares[step.Foot] * Grip(u);
            }
        }

        return sum;
    }
}
