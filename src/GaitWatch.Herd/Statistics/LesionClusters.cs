using System.Collections.Immutable;
using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>Looks for clusters of lesions by pen and kind.</summary>
public static class LesionClusters
{
    /// <summary>
    /// The clusters of a time, the least likely first. What is to be expected of a pen is the herd's own rate of that kind in the
    /// other pens, or over all when there is but one, times her share of the cows; each window's count is held against it by the
    /// scan statistic, and the p values are multiplied by the number of pens and kinds looked at.
    /// </summary>
    /// <param name="findings">Findings, in any order.</param>
    /// <param name="register">Which cow is in which pen; cows without a pen are passed over.</param>
    /// <param name="from">The first day.</param>
    /// <param name="to">The day after the last.</param>
    /// <param name="calendar">The farm's days.</param>
    /// <param name="options">How clusters are looked for.</param>
    public static ImmutableArray<LesionCluster> Of(
        IEnumerable<Finding> findings, HerdRegister register, DateOnly from, DateOnly to, FarmCalendar calendar, LesionClusterOptions options)
    {
        var days = to.DayNumber - from.DayNumber;
        var cows = register.Cows.Where(cow => !FollowUpPlan.HasLeft(cow, to.AddDays(-1), register))
            .Select(cow => register.At(cow, calendar.StartOf(to))?.Pen).OfType<string>()
            .GroupBy(pen => pen, StringComparer.Ordinal).ToDictionary(pen => pen.Key, pen => pen.Count(), StringComparer.Ordinal);
        if (days < options.WindowDays || cows.Count == 0)
            return [];
        var cases = Cases(findings, register, calendar, options).Where(found => found.Day >= from && found.Day < to && cows.ContainsKey(found.Pen)).ToArray();
        var looked = cases.Select(found => (found.Pen, found.Group)).Distinct().ToArray();
        // Every pen is looked at for every kind the herd has, also where it has none.
        var asked = cows.Count * looked.Select(which => which.Group).Distinct().Count();
        var clusters = looked.Select(which => Densest(which.Pen, which.Group, cases, cows, days, options))
            .Select(cluster => cluster with { PValue = Math.Min(cluster.PValue * asked, 1) });
        return
        [
            .. clusters.Where(cluster => cluster.PValue < options.Alpha && cluster.Count >= options.Fewest)
                .OrderBy(cluster => cluster.PValue).ThenBy(cluster => cluster.Pen, NaturalOrder.Comparer).ThenBy(cluster => cluster.Group),
        ];
    }

    // New cases: the same trouble looked at again, or on two claws, is one.
    private static IEnumerable<(string Pen, LesionGroup Group, DateOnly Day)> Cases(
        IEnumerable<Finding> findings, HerdRegister register, FarmCalendar calendar, LesionClusterOptions options)
    {
        var ofKind = findings.Where(finding => finding.Lesion.Group() is not null).GroupBy(finding => (finding.Cow, Group: finding.Lesion.Group()!.Value));
        foreach (var kind in ofKind)
        {
            DateOnly? last = null;
            foreach (var finding in kind.Order(Finding.ByTime))
            {
                var day = calendar.DayOf(finding.At);
                if ((last is not { } before || day.DayNumber - before.DayNumber > options.SameCaseDays) && register.At(kind.Key.Cow, finding.At)?.Pen is { } pen)
                    yield return (pen, kind.Key.Group, day);
                last = day;
            }
        }
    }

    private static LesionCluster Densest(
        string pen, LesionGroup group, (string Pen, LesionGroup Group, DateOnly Day)[] cases, Dictionary<string, int> cows, int days, LesionClusterOptions options)
    {
        var here = cases.Where(found => found.Pen == pen && found.Group == group).Select(found => found.Day).Order().ToArray();
        DateOnly[] most = [];
        for (var i = 0; i < here.Length; i++)
        {
            var window = here.Skip(i).TakeWhile(day => day.DayNumber - here[i].DayNumber < options.WindowDays).ToArray();
            if (window.Length > most.Length)
                most = window;
        }

        var perWindow = ExpectedInTime(pen, group, cases, cows) * options.WindowDays / days;
        var (first, last) = (most[0], most[^1]);
        var length = last.DayNumber - first.DayNumber + 1;
        var expected = perWindow * length / options.WindowDays;
        return new LesionCluster(
            pen, group, first, last, most.Length, expected, PoissonScan.PValue(most.Length, perWindow, (double)days / options.WindowDays),
            Sentence(pen, group, most.Length, length, expected));
    }

    // By the other pens' rate, so that a cluster does not excuse itself. Half a case is added to what may be none: a pen cannot be
    // judged against a rate of zero.
    private static double ExpectedInTime(string pen, LesionGroup group, (string Pen, LesionGroup Group, DateOnly Day)[] cases, Dictionary<string, int> cows)
    {
        var all = cows.Values.Sum();
        var elsewhere = all - cows[pen];
        return elsewhere > 0
            ? (cases.Count(found => found.Group == group && found.Pen != pen) + 0.5) * cows[pen] / elsewhere
            : cases.Count(found => found.Group == group) + 0.5;
    }

    private static string Sentence(string pen, LesionGroup group, int count, int days, double expected) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Number(count)} {group.InWords(count)} from pen {pen} in {(days == 1 ? "1 day" : $"{days} days")}, expected {(expected < 0.1 ? "less than 0.1" : $"{expected:0.0}")}: look at {group.LookAt()}.");

    private static string Number(int count) => count switch
    {
        1 => "One",
        2 => "Two",
        3 => "Three",
        4 => "Four",
        5 => "Five",
        6 => "Six",
        7 => "Seven",
        8 => "Eight",
        9 => "Nine",
        10 => "Ten",
        11 => "Eleven",
        12 => "Twelve",
        _ => count.ToString(CultureInfo.InvariantCulture),
    };
}
