using GaitWatch.Gait;

namespace GaitWatch.Benchmarks;

/// <summary>
/// The plain rule per cow: for each leg the mean of her newest three days against mean and spread of the thirty days before, in standard errors by the scatter of
/// her daily means.
/// </summary>
internal static class RollingScoreRule
{
    private const int New = 3;
    private const int Old = 30;
    private const int Needed = 12;

    /// <summary>The flags of a threshold on the score.</summary>
    public static List<Flag> Run(HerdHistory history, double threshold)
    {
        var book = new FlagBook();
        var days = history.Spec.Days + 1;
        foreach (var cow in history.Crossings.GroupBy(c => c.Cow))
        {
            var (sums, counts) = (new double[4, days], new int[days]);
            foreach (var crossing in cow)
            {
                var day = (int)crossing.Day;
                counts[day]++;
                for (var leg = 0; leg < 4; leg++)
                    sums[leg, day] += crossing.Shares[(Leg)leg];
                for (var leg = 0; leg < 4; leg++)
                {
                    if (Score(sums, counts, leg, day) < -threshold)
                        book.Speak(cow.Key, (Leg)leg, crossing.Day);
                }
            }
        }

        book.Flags.Sort((a, b) => a.Day.CompareTo(b.Day));
        return book.Flags;
    }

    private static double Score(double[,] sums, int[] counts, int leg, int day)
    {
        var (now, nowDays) = (0.0, 0);
        for (var d = Math.Max(0, day - New + 1); d <= day; d++)
        {
            if (counts[d] == 0)
                continue;
            now += sums[leg, d] / counts[d];
            nowDays++;
        }

        var (mean, squares, n) = (0.0, 0.0, 0);
        for (var d = Math.Max(0, day - New - Old + 1); d <= day - New; d++)
        {
            if (counts[d] == 0)
                continue;
            var value = sums[leg, d] / counts[d];
            n++;
            var apart = value - mean;
            mean += apart / n;
            squares += apart * (value - mean);
        }

        return n < Needed || nowDays == 0 ? 0 : ((now / nowDays) - mean) / Math.Sqrt(squares / (n - 1) * ((1.0 / nowDays) + (1.0 / n)));
    }
}
