using System.Collections.Immutable;

namespace GaitWatch.Web;

/// <summary>Where everything of a leg's chart lies: worked out here, drawn by its component.</summary>
/// <param name="Series">The leg and its days.</param>
/// <param name="Days">The days along it.</param>
/// <param name="Shares">Shares up it.</param>
public sealed record LegChart(LegSeries Series, DayAxis Days, ValueAxis Shares)
{
    internal const double Width = 400;
    internal const double Height = 254;
    private const double Left = 42;
    private const double Right = 394;
    private const double SharesTop = 20;
    private const double SharesBottom = 142;
    private const double EvidenceTop = 182;
    private const double EvidenceBottom = 224;
    internal const double WornAt = 158;
    private const double MostEvidence = 1.5;
    private const double BandSpreads = 2;

    // A line is not drawn over days on which she did not cross.
    private const int LongestGapDays = 3;

    internal ValueAxis Evidence { get; } = new(0, MostEvidence, EvidenceBottom, EvidenceTop);

    /// <summary>Times with a block or wrap on, as far as they are shown: what, and from where to where.</summary>
    internal IEnumerable<(string What, double From, double To)> Worn => Series.Worn
        .Where(span => Days.Calendar.DayOf(span.To) >= Days.First && Days.Calendar.DayOf(span.From) <= Days.Last)
        .Select(span => (span.What, Math.Max(Days.At(span.From), Days.Left), Math.Min(Days.At(span.To), Days.Right)));

    internal IEnumerable<ChartMark> Marks => Series.Marks.Where(mark => Days.Holds(mark.At));

    /// <summary>The charts of the four legs, drawn to one scale.</summary>
    public static ImmutableArray<LegChart> Of(ImmutableArray<LegSeries> legs, DateOnly first, DateOnly last, Herd.FarmCalendar calendar)
    {
        var days = new DayAxis(first, last, Left, Right, calendar);
        var axes = ValueAxis.Alike(legs.Select(leg => leg.Days.SelectMany(Extremes).ToArray()), SharesBottom, SharesTop);
        return [.. legs.Zip(axes, (leg, axis) => new LegChart(leg, days, axis))];
    }

    /// <summary>A line across the chart.</summary>
    internal string Across(double y) => new SvgPath().Move(Days.Left, y).Line(Days.Right, y).ToString();

    /// <summary>A line from the top of the shares to the bottom of the evidence.</summary>
    internal static string Down(double x) => new SvgPath().Move(x, SharesTop).Line(x, EvidenceBottom).ToString();

    internal string Band()
    {
        var path = new SvgPath();
        foreach (var run in Runs(Series.Days.Where(day => day is { Normal: not null, Spread: not null })))
        {
            // A day alone is given its own width, or it would have none.
            var points = run.Count == 1 ? [(run[0], -0.5), (run[0], 0.5)] : run.Select(day => (Day: day, Shift: 0.0)).ToArray();
            for (var i = 0; i < points.Length; i++)
                Point(path, points[i], +BandSpreads, i == 0);
            for (var i = points.Length - 1; i >= 0; i--)
                Point(path, points[i], -BandSpreads, false);
            path.Close();
        }

        return path.ToString();
    }

    internal string Normal() => Line(Series.Days.Where(day => day.Normal is not null), day => day.Normal!.Value);

    internal string Means() => Line(Series.Days, day => day.Share);

    internal string Dots() => Series.Days.Aggregate(new SvgPath(), (path, day) => path.Dot(Days.Middle(day.Day), Shares.At(day.Share))).ToString();

    internal string Bars() => Series.Days.Where(day => day.Evidence > 0.02)
        .Aggregate(new SvgPath(), (path, day) => path.Bar(Days.Middle(day.Day), EvidenceBottom, Evidence.At(day.Evidence))).ToString();

    internal string BarWidth => SvgPath.Number(Math.Clamp(0.7 * Days.DayWidth, 0.7, 9));

    internal string DotWidth => SvgPath.Number(Math.Clamp(0.9 * Days.DayWidth, 2.2, 6));

    /// <summary>What a reader of values needs: place and words of each day, packed.</summary>
    internal string Readings() => string.Join('|', Series.Days.Select(day =>
        $"{SvgPath.Number(Days.Middle(day.Day))} {SvgPath.Number(Shares.At(day.Share))} {Words(day)}"));

    /// <summary>The newest day in words.</summary>
    internal string Newest() => Series.Days is [.., var last] ? Words(last) : CowTexts.NoData;

    internal string Title => LegTexts.Title(Series.Leg);

    internal string Description() => Series.Days is [var first, .., var last]
        ? ChartTexts.Description(Series.Leg, FarmTimes.Date(first.Day), FarmTimes.Date(last.Day), Words(last))
        : $"{Title}: {Newest()}";

    private static string Words(LegDay day) => ChartTexts.Day(day, BandSpreads);

    private string Line(IEnumerable<LegDay> days, Func<LegDay, double> value)
    {
        var path = new SvgPath();
        foreach (var run in Runs(days))
        {
            for (var i = 0; i < run.Count; i++)
            {
                var (x, y) = (Days.Middle(run[i].Day), Shares.At(value(run[i])));
                _ = i == 0 ? path.Move(x, y) : path.Line(x, y);
            }
        }

        return path.ToString();
    }

    private void Point(SvgPath path, (LegDay Day, double Shift) point, double spreads, bool first)
    {
        var x = Days.Middle(point.Day.Day) + (point.Shift * Days.DayWidth);
        var y = Shares.At(point.Day.Normal!.Value + (spreads * point.Day.Spread!.Value));
        _ = first ? path.Move(x, y) : path.Line(x, y);
    }

    private IEnumerable<List<LegDay>> Runs(IEnumerable<LegDay> days)
    {
        var gapOfPoints = 2 * CowSpan.DaysAPoint(Days.First, Days.Last);
        var run = new List<LegDay>();
        foreach (var day in days)
        {
            if (run.Count > 0 && day.Day.DayNumber - run[^1].Day.DayNumber > Math.Max(LongestGapDays, gapOfPoints))
            {
                yield return run;
                run = [];
            }

            run.Add(day);
        }

        if (run.Count > 0)
            yield return run;
    }

    private static IEnumerable<double> Extremes(LegDay day)
    {
        yield return day.Share;
        if (day is { Normal: { } normal, Spread: { } spread })
        {
            yield return normal - (BandSpreads * spread);
            yield return normal + (BandSpreads * spread);
        }
    }
}
