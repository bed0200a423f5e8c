using System.Globalization;

namespace GaitWatch.Benchmarks;

/// <summary>What was near each false flag: where to look first when the budget is overspent. Near is not because of.</summary>
internal static class FalseFlagCauses
{
    /// <summary>Counts by what was near.</summary>
    public static string Of(DetectionScore score)
    {
        var firstDays = score.False.Select(f => f.History).Distinct()
            .ToDictionary(h => h, h => h.Crossings.GroupBy(c => c.Cow).ToDictionary(g => g.Key, g => g.Min(c => c.Day)));
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var (history, flag) in score.False)
        {
            var cause = Cause(history, flag, firstDays[history][flag.Cow]);
            counts[cause] = counts.GetValueOrDefault(cause) + 1;
        }

        return string.Join(", ", counts.OrderByDescending(c => c.Value).Select(c => string.Create(CultureInfo.InvariantCulture, $"{c.Value} {c.Key}")));
    }

    private static string Cause(HerdHistory history, Flag flag, double firstDay)
    {
        var herd = history.Spec;
        if (history.Crossings.Exists(c => c.Cow == flag.Cow && !c.IsHers && c.Day > flag.Day - 2 && c.Day <= flag.Day))
            return "another cow's tag within two days";
        if (herd.PlatformFaults.Any(p => flag.Day >= p.FirstDay && flag.Day < p.FirstDay + p.Days + 1))
            return "platform fault";
        if (history.Troubles.Exists(t => t.Cow == flag.Cow && flag.Day >= t.OnsetDay && flag.Day < t.HealedDay))
            return "lame on another leg";
        if (history.Troubles.Exists(t => t.Cow == flag.Cow && flag.Day >= t.HealedDay && flag.Day < t.HealedDay + 40))
            return "healed within 40 days";
        if (flag.Day - firstDay < 30)
            return "new in the herd (30 days)";
        if (history.IsNearCalving(flag.Cow, flag.Day))
            return "60 days before to 30 after calving, or just dried off";
        if (history.IsNearTrim(flag.Cow, flag.Day))
            return "within 14 days of a trim or treatment";
        return "nothing";
    }
}
