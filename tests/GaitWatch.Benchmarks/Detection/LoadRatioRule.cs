using GaitWatch.Gait;

namespace GaitWatch.Benchmarks;

/// <summary>
/// A fixed threshold for the whole herd on the load of a leg over that of the leg opposite, as studies of leg load do it, on the mean of the newest crossings.
/// </summary>
internal static class LoadRatioRule
{
    private const int Newest = 6;

    /// <summary>The flags of a threshold: ratio below exp(-threshold).</summary>
    public static List<Flag> Run(HerdHistory history, double threshold)
    {
        var book = new FlagBook();
        var cows = new Dictionary<int, (double[] Fore, double[] Hind, int Count)>();
        foreach (var crossing in history.Crossings)
        {
            if (!cows.TryGetValue(crossing.Cow, out var cow))
                cow = (new double[Newest], new double[Newest], 0);
            cow.Fore[cow.Count % Newest] = Math.Log(crossing.Shares.Lf / crossing.Shares.Rf);
            cow.Hind[cow.Count % Newest] = Math.Log(crossing.Shares.Lh / crossing.Shares.Rh);
            cow.Count++;
            cows[crossing.Cow] = cow;
            if (cow.Count < Newest)
                continue;
            Weigh(cow.Fore.Average(), Leg.Lf, crossing);
            Weigh(cow.Hind.Average(), Leg.Lh, crossing);
        }

        return book.Flags;

        void Weigh(double logRatio, Leg left, in Crossing crossing)
        {
            if (Math.Abs(logRatio) > threshold)
                book.Speak(crossing.Cow, logRatio < 0 ? left : left.Opposite(), crossing.Day);
        }
    }
}
