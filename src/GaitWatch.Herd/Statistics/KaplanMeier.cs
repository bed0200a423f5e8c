using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace GaitWatch.Herd;

/// <summary>
/// How long it takes until something happens, when some were not watched to the end: the product-limit estimate. Source: Kaplan
/// E.L., Meier P. 1958, J Am Stat Assoc 53:457-481; variance: Greenwood 1926; interval on the scale of the logarithm; interval
/// of the median: Brookmeyer R., Crowley J. 1982, Biometrics 38:29-41.
/// </summary>
public sealed record KaplanMeier
{
    private KaplanMeier(int count, ImmutableArray<WaitingStep> steps)
    {
        Count = count;
        Steps = steps;
    }

    /// <summary>How many were watched.</summary>
    public int Count { get; }

    /// <summary>How many it happened to.</summary>
    public int Events => Steps.Sum(step => step.Events);

    /// <summary>The steps, in order of time.</summary>
    public ImmutableArray<WaitingStep> Steps { get; }

    /// <summary>Days until it has happened to half of them; null while it has not.</summary>
    public double? MedianDays => Reaches(step => step.Waiting);

    /// <summary>95 % interval of the median, days; an end is null where the data do not bound it.</summary>
    public (double? Lower, double? Upper) MedianInterval => (Reaches(step => step.Lower), Reaches(step => step.Upper));

    /// <summary>The curve of some waiting times, in any order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A time is below 0 or no number.</exception>
    public static KaplanMeier Of(IEnumerable<WaitingTime> times)
    {
        var all = times.ToArray();
        foreach (var time in all)
        {
            if (!(time.Days >= 0) || double.IsInfinity(time.Days))
                throw new ArgumentOutOfRangeException(nameof(times), time.Days, "A waiting time is at least 0 days, and finite.");
        }

        var z = Normal.InvCDF(0, 1, 0.975);
        var steps = ImmutableArray.CreateBuilder<WaitingStep>();
        double waiting = 1, greenwood = 0;
        // Whose watching ended on the day of an event was still at risk of it.
        foreach (var day in all.Where(time => time.Happened).GroupBy(time => time.Days).OrderBy(group => group.Key))
        {
            var atRisk = all.Count(time => time.Days >= day.Key);
            var events = day.Count();
            waiting *= 1 - (double)events / atRisk;
            greenwood += (double)events / ((double)atRisk * (atRisk - events));
            steps.Add(atRisk == events
                ? new WaitingStep(day.Key, atRisk, events, 0, null, null)
                : new WaitingStep(
                    day.Key, atRisk, events, waiting,
                    waiting * Math.Exp(-z * Math.Sqrt(greenwood)), Math.Min(waiting * Math.Exp(z * Math.Sqrt(greenwood)), 1)));
        }

        return new KaplanMeier(all.Length, steps.ToImmutable());
    }

    /// <summary>The fraction it has not happened to at a time.</summary>
    /// <param name="days">Days.</param>
    public double WaitingAt(double days) => Steps.LastOrDefault(step => step.Days <= days, new WaitingStep(0, Count, 0, 1, 1, 1)).Waiting;

    // The first step at which a curve is at or under one half. A curve that stands at one half exactly until the next step
    // gives the middle of the two, as is usual. What is not bounded any more ends no interval.
    private double? Reaches(Func<WaitingStep, double?> curve)
    {
        for (var i = 0; i < Steps.Length; i++)
        {
            if (curve(Steps[i]) is not { } value || value > 0.5 + 1e-12)
                continue;
            return Math.Abs(value - 0.5) <= 1e-12 && i + 1 < Steps.Length ? (Steps[i].Days + Steps[i + 1].Days) / 2 : Steps[i].Days;
        }

        return null;
    }
}
