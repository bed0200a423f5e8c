using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Web.Tests;

/// <summary>Where things lie on a chart.</summary>
public sealed class ChartTests
{
    private static readonly FarmCalendar Calendar = new(FarmHost.Zone);

    [Fact]
    public void A_day_has_the_same_width_though_the_clocks_change()
    {
        // 29 March 2026 has 23 hours in Amsterdam: 02:00 becomes 03:00 (EU summer time, directive 2000/84/EC: last Sunday of March).
        var axis = new DayAxis(new DateOnly(2026, 3, 28), new DateOnly(2026, 3, 30), 0, 300, Calendar);
        Assert.Equal(100, axis.At(new DateTimeOffset(2026, 3, 28, 23, 0, 0, TimeSpan.Zero)), 6);
        Assert.Equal(200, axis.At(new DateTimeOffset(2026, 3, 29, 22, 0, 0, TimeSpan.Zero)), 6);
        Assert.Equal(150, axis.Middle(new DateOnly(2026, 3, 29)));
        Assert.Equal(100 + (100 * 11.5 / 23), axis.At(new DateTimeOffset(2026, 3, 29, 10, 30, 0, TimeSpan.Zero)), 6);
        Assert.True(axis.Holds(new DateTimeOffset(2026, 3, 30, 21, 59, 59, TimeSpan.Zero)));
        Assert.False(axis.Holds(new DateTimeOffset(2026, 3, 30, 22, 0, 0, TimeSpan.Zero)));
    }

    [Theory]
    [InlineData(14)]
    [InlineData(60)]
    [InlineData(180)]
    [InlineData(365)]
    public void Every_span_names_three_to_seven_days(int days)
    {
        for (var last = new DateOnly(2026, 1, 1); last.Year == 2026; last = last.AddDays(1))
            Assert.InRange(new DayAxis(last.AddDays(1 - days), last, 0, 100, Calendar).Ticks().Count(), 3, 7);
    }

    [Fact]
    public void Values_are_named_at_round_places_and_those_beyond_lie_on_the_edge()
    {
        var axis = new ValueAxis(0.215, 0.285, 100, 0);
        Assert.Equal([0.22, 0.24, 0.26, 0.28], axis.Ticks().Select(tick => Math.Round(tick, 6)));
        Assert.Equal(50, axis.At(0.25), 6);
        Assert.Equal(0, axis.At(0.4));
        Assert.Equal(100, axis.At(0.1));
    }

    [Fact]
    public void All_legs_are_drawn_to_one_scale()
    {
        var axes = ValueAxis.Alike([[0.27, 0.28], [0.20, 0.25], []], 100, 0);
        Assert.All(axes, axis => Assert.Equal(1.1 * 0.05, axis.High - axis.Low, 9));
        Assert.Equal(0.275, (axes[0].High + axes[0].Low) / 2, 9);
    }

    [Fact]
    public void A_line_is_not_drawn_over_days_on_which_she_did_not_cross()
    {
        LegDay Day(int day) => new(new DateOnly(2026, 6, day), 2, 0.25, 0.25, 0.005, 0);
        var series = new LegSeries(Leg.Lf, [Day(1), Day(2), Day(9), Day(10)], [], []);
        var chart = LegChart.Of([series], new DateOnly(2026, 6, 1), new DateOnly(2026, 6, 10), Calendar)[0];
        Assert.Equal(2, chart.Means().Split('M').Length - 1);
        Assert.Equal(2, chart.Band().Split('Z').Length - 1);
        Assert.Equal(4, chart.Dots().Split("h0").Length - 1);
    }

    [Fact]
    public void A_thinned_line_misses_no_point_by_more_than_it_may()
    {
        const double Tolerance = 0.25;
        Gen.Double[0, 120].Array[1, 400].Sample(heights =>
        {
            // Some lines are rough, some are nearly straight with a dip: both kinds must hold.
            var points = heights.Select((height, x) => ((double)x, heights.Length % 2 == 0 ? height : x == 7 ? 100 : height / 600)).ToArray();
            var kept = Thinned.Line(points, Tolerance);
            Assert.Equal(points[0], kept[0]);
            Assert.Equal(points[^1], kept[^1]);
            Assert.Subset(points.ToHashSet(), kept.ToHashSet());
            foreach (var (x, y) in points)
            {
                var right = kept.ToList().FindIndex(point => point.X >= x);
                var left = Math.Max(0, right - 1);
                var drawn = right == left ? kept[right].Y : kept[left].Y + ((kept[right].Y - kept[left].Y) * (x - kept[left].X) / (kept[right].X - kept[left].X));
                Assert.InRange(y, drawn - Tolerance - 1e-9, drawn + Tolerance + 1e-9);
            }
        });
        Assert.Equal(3, Thinned.Line([.. Enumerable.Range(0, 300).Select(x => ((double)x, Math.Abs(x - 150.0)))], Tolerance).Count);
    }

    [Fact]
    public void A_year_is_a_line_and_a_day_alone_is_still_a_dot()
    {
        var first = new DateOnly(2026, 1, 1);
        var days = Enumerable.Range(0, 364).Where(day => day is < 100 or > 110 and < 200 or 210 or > 220);
        var series = new LegSeries(Leg.Lf, [.. days.Select(day => new LegDay(first.AddDays(day), 2, day == 50 ? 0.15 : 0.25, null, null, 0))], [], []);
        var chart = LegChart.Of([series], first, first.AddDays(364), Calendar)[0];
        Assert.Equal(1, chart.Dots().Split("h0").Length - 1);
        // The dip of one day is in the line.
        Assert.Contains(SvgPath.Number(chart.Shares.At(0.15)), chart.Means(), StringComparison.Ordinal);
        Assert.InRange(chart.Means().Split('L').Length, 4, 20);
    }
}
