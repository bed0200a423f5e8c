using System.Collections.Immutable;
using System.Globalization;

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

    // A line is thinned to points that it would miss by more than this, a quarter of a pixel of a phone: no dip is lost.
    private const double Unseen = 0.25;

    // A line is not drawn over days on which she did not cross.
    private const int LongestGapDays = 3;

    internal ValueAxis Evidence { get; } = new(0, MostEvidence, EvidenceBottom, EvidenceTop);

    /// <summary>Times with a block or wrap on, as far as they are shown: what, and from where to where.</summary>
    internal IEnumerable<(string What, double From, double To)> Worn => Series.Worn
        .Where(span => Days.Calendar.DayOf(span.To) >= Days.First && Days.Calendar.DayOf(span.From) <= Days.Last)
        .Select(span => (span.What, Math.Max(Days.At(span.From), Days.Left), Math.Min(Days.At(span.To), Days.Right)));

    internal IEnumerable<ChartMark> Marks => Series.Marks.Where(mark => Days.Holds(mark.At));

    /// <summary>The words beside the marks, the newest first in finding room.</summary>
    internal IEnumerable<(ChartMarkKind Kind, ChartLabel Label)> MarkLabels()
    {
        var places = new LabelPlaces(Left, Right);
        foreach (var mark in Marks.OrderByDescending(mark => mark.At))
        {
            if (places.Place(ChartTexts.Mark(mark.Kind), Days.At(mark.At), HeightsOf(mark.Kind)) is { } label)
                yield return (mark.Kind, label);
        }
    }

    /// <summary>The words over the times with a block or wrap on.</summary>
    internal IEnumerable<(string What, ChartLabel Label)> WornLabels()
    {
        var places = new LabelPlaces(Left, Right);
        foreach (var (what, from, _) in Worn.OrderByDescending(worn => worn.From))
        {
            if (places.Place(RecoveryTexts.Worn(what), from, WornAt - 5) is { } label)
                yield return (what, label);
        }
    }

    // Where a mark's head is, there its word is wanted; the others are free of heads.
    private static double[] HeightsOf(ChartMarkKind kind) => kind switch
    {
        ChartMarkKind.Onset => [SharesBottom - 12, SharesBottom - 26],
        ChartMarkKind.Raised or ChartMarkKind.Recovered => [SharesTop - 8, SharesTop + 21, SharesTop + 34],
        ChartMarkKind.Found => [SharesTop + 34, SharesTop + 47, SharesTop + 21],
        _ => [SharesTop + 21, SharesTop + 34, SharesTop + 47],
    };

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

    /// <summary>The lines behind it: across at each share that is named, down at each day.</summary>
    internal string Grid() => string.Concat(Shares.Ticks().Select(tick => Across(Shares.At(tick))).Concat(Days.Ticks().Select(day => Down(Days.Begin(day)))));

    internal string Band()
    {
        var path = new SvgPath();
        foreach (var run in Runs(Series.Days.Where(day => day is { Normal: not null, Spread: not null })))
        {
            // A day alone is given its own width, or it would have none.
            var points = run.Count == 1 ? [(run[0], -0.5), (run[0], 0.5)] : run.Select(day => (Day: day, Shift: 0.0)).ToArray();
            Draw(path, [.. Thinned.Line([.. points.Select(point => Point(point, +BandSpreads))], Unseen), .. Thinned.Line([.. points.Reverse().Select(point => Point(point, -BandSpreads))], Unseen)]);
            path.Close();
        }

        return path.ToString();
    }

    internal string Normal() => Line(Series.Days.Where(day => day.Normal is not null), day => day.Normal!.Value);

    internal string Means() => Line(Series.Days, day => day.Share);

    /// <summary>A dot a day, where there is a point a day; of a longer time, whose dots would be a thick line, only where a point stands alone.</summary>
    internal string Dots()
    {
        var path = new SvgPath();
        foreach (var day in DaysAPoint == 1 ? Series.Days : Runs(Series.Days).Where(run => run.Count == 1).SelectMany(run => run))
            path.Dot(Days.Middle(day.Day), Shares.At(day.Share));
        return path.ToString();
    }

    internal string Bars() => Series.Days.Where(day => day.Evidence > 0.02)
        .Aggregate(new SvgPath(), (path, day) => path.Bar(Days.Middle(day.Day), EvidenceBottom, Evidence.At(day.Evidence))).ToString();

    internal string BarWidth => SvgPath.Number(Math.Clamp(0.7 * PointWidth, 0.7, 9));

    internal string DotWidth => SvgPath.Number(Math.Clamp(0.9 * PointWidth, 2.2, 6));

    private int DaysAPoint => CowSpan.DaysAPoint(Days.First, Days.Last);

    private double PointWidth => DaysAPoint * Days.DayWidth;

    /// <summary>
    /// What a reader of values needs of each day, packed: which day of the axis, its height, share and limits of normal in tenths of a per
    /// cent (limits left out while they are being learnt), evidence in tenths. The script puts them in words by the patterns beside them.
    /// </summary>
    internal string Readings()
    {
        var text = new System.Text.StringBuilder();
        foreach (var day in Series.Days)
        {
            if (text.Length > 0)
                text.Append('|');
            text.Append(CultureInfo.InvariantCulture, $"{day.Day.DayNumber - Days.First.DayNumber} {SvgPath.Number(Shares.At(day.Share))} {Tenths(100 * day.Share)} {Tenths(day.Evidence)}");
            if (day is { Normal: { } normal, Spread: { } spread })
                text.Append(CultureInfo.InvariantCulture, $" {Tenths(100 * (normal - (BandSpreads * spread)))} {Tenths(100 * (normal + (BandSpreads * spread)))}");
        }

        return text.ToString();
    }

    private static string Tenths(double value) => Math.Round(10 * value, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture);

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
            Draw(path, Thinned.Line([.. run.Select(day => (Days.Middle(day.Day), Shares.At(value(day))))], Unseen));
        return path.ToString();
    }

    private static void Draw(SvgPath path, IReadOnlyList<(double X, double Y)> points)
    {
        for (var i = 0; i < points.Count; i++)
            _ = i == 0 ? path.Move(points[i].X, points[i].Y) : path.Line(points[i].X, points[i].Y);
    }

    private (double X, double Y) Point((LegDay Day, double Shift) point, double spreads) => (
        Days.Middle(point.Day.Day) + (point.Shift * Days.DayWidth), Shares.At(point.Day.Normal!.Value + (spreads * point.Day.Spread!.Value)));

    private IEnumerable<List<LegDay>> Runs(IEnumerable<LegDay> days)
    {
        var run = new List<LegDay>();
        foreach (var day in days)
        {
            if (run.Count > 0 && day.Day.DayNumber - run[^1].Day.DayNumber > Math.Max(LongestGapDays, 2 * DaysAPoint))
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
