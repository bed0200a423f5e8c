namespace GaitWatch.Benchmarks;

/// <summary>Finds the limit at which a rule gives a wanted rate of false flags on the very herds it is judged on.</summary>
internal static class Tuning
{
    private const int Halvings = 11;

    /// <summary>The score at that limit.</summary>
    /// <param name="histories">The herds.</param>
    /// <param name="run">A rule: the flags on a herd of a limit; fewer the higher it is.</param>
    /// <param name="low">A limit that gives too many.</param>
    /// <param name="high">A limit that gives too few.</param>
    /// <param name="falsePer100CowWeeks">The rate wanted.</param>
    public static DetectionScore At(
        IReadOnlyList<HerdHistory> histories, Func<int, double, List<Flag>> run, double low, double high, double falsePer100CowWeeks)
    {
        DetectionScore? best = null;
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            var score = new DetectionScore(histories, AllOf(histories.Count, h => run(h, middle)));
            if (best is null || Math.Abs(score.FalsePer100CowWeeks - falsePer100CowWeeks) < Math.Abs(best.FalsePer100CowWeeks - falsePer100CowWeeks))
                best = score;
            if (score.FalsePer100CowWeeks > falsePer100CowWeeks)
                low = middle;
            else
                high = middle;
        }

        return best!;
    }

    /// <summary>Runs herds two at a time.</summary>
    public static T[] AllOf<T>(int count, Func<int, T> run)
    {
        var results = new T[count];
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i => results[i] = run(i));
        return results;
    }
}
