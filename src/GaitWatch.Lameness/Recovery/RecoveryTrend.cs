using MathNet.Numerics.Distributions;

namespace GaitWatch.Lameness;

/// <summary>Whether a treated leg is shown to stand still or to get worse. Every answer rests on an interval, none on a point.</summary>
internal static class RecoveryTrend
{
    // Days whose mean is held against an earlier one.
    private const int Recent = 3;

    // Length of an earlier stretch that a relapse is held against, days.
    private const int Stretch = 7;

    // One-sided. The question is asked every day, so it is asked strictly; chosen by us.
    private const double WorseAlpha = 0.005;

    /// <summary>Whether the last days carry less than the days before treatment, or than an earlier stretch since it.</summary>
    /// <param name="before">Drops of the last days before treatment, per cent.</param>
    /// <param name="since">Drops of the days since, oldest first, settling days left out.</param>
    /// <param name="sd">Standard deviation of a daily mean, per cent.</param>
    /// <param name="band">Half width of the normal band, per cent.</param>
    public static bool IsWorse(IReadOnlyList<double> before, IReadOnlyList<double> since, double sd, double band)
    {
        if (since.Count < Recent)
            return false;
        // Her own spread since, from one day to the next: neither a slow course nor one step in it widens that by much. A spread
        // told too small from the days before would find relapses in noise.
        sd = Math.Max(sd, FromDayToDay(since));
        var now = since.TakeLast(Recent).Average();
        var error = sd / Math.Sqrt(Recent);
        if (now - Normal.InvCDF(0, 1, 1 - WorseAlpha) * error <= band)
            return false;
        if (before.Count > 0 && now - before.Average() > Normal.InvCDF(0, 1, 1 - WorseAlpha) * Both(sd, Recent, before.Count))
            return true;

        // The best of many stretches is low by luck too: each is asked at its part of alpha.
        var earlier = since.SkipLast(Recent).ToArray();
        var stretches = earlier.Length - Stretch + 1;
        if (stretches < 1)
            return false;
        var best = Enumerable.Range(0, stretches).Min(from => earlier.Skip(from).Take(Stretch).Average());
        return now - best > Normal.InvCDF(0, 1, 1 - WorseAlpha / stretches) * Both(sd, Recent, Stretch);
    }

    /// <summary>
    /// Whether the leg is shown to improve too slowly: even the fastest improvement that the last days allow would not bring it
    /// into the band in time.
    /// </summary>
    /// <param name="days">Days since treatment, settling days left out, oldest first.</param>
    /// <param name="drops">Drops of those days, per cent.</param>
    /// <param name="sd">Standard deviation of a daily mean, per cent.</param>
    /// <param name="band">Half width of the normal band, per cent.</param>
    /// <param name="longestWayDays">The time it has.</param>
    public static bool IsTooSlow(IReadOnlyList<double> days, IReadOnlyList<double> drops, double sd, double band, int longestWayDays)
    {
        // Fewer days leave a slope open, whatever it is.
        if (days.Count < 8)
            return false;
        var (meanDay, meanDrop) = (days.Average(), drops.Average());
        var spread = days.Sum(day => (day - meanDay) * (day - meanDay));
        if (spread <= 0)
            return false;
        var slope = days.Zip(drops, (day, drop) => (day - meanDay) * (drop - meanDrop)).Sum() / spread;
        var residual = Math.Sqrt(days.Zip(drops, (day, drop) => Math.Pow(drop - meanDrop - slope * (day - meanDay), 2)).Sum() / (days.Count - 2));
        var quantile = StudentT.InvCDF(0, 1, days.Count - 2, 0.975);
        var scale = Math.Max(sd, residual);
        var last = days[^1] - meanDay;
        var now = meanDrop + slope * last;
        var nowLower = now - quantile * scale * Math.Sqrt(1.0 / days.Count + last * last / spread);
        var fastest = slope - quantile * scale / Math.Sqrt(spread);
        return nowLower > band && fastest > -(now - band) / longestWayDays;
    }

    // Half the mean square of successive differences (von Neumann J. 1941, Ann Math Stat 12:367-395).
    private static double FromDayToDay(IReadOnlyList<double> drops) =>
        Math.Sqrt(drops.Skip(1).Zip(drops, (next, day) => (next - day) * (next - day)).Sum() / (2.0 * (drops.Count - 1)));

    /// <summary>Standard error of the difference of two means of daily values.</summary>
    internal static double Both(double sd, int first, int second) => sd * Math.Sqrt(1.0 / first + 1.0 / second);
}
