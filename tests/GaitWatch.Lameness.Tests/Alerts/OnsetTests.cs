using GaitWatch.Gait;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.AlertLives;

public sealed class OnsetTests
{
    private static readonly Vector3 _design = new(0.02, 0, -0.08);

    /// <summary>
    /// Days without scatter that rise from day 30.5 on: the estimate is that day, whatever the rise, within the grid's quarter of a day or, where the first day of a slow rise
    /// hardly shows, within a day; and it lies inside its interval.
    /// </summary>
    [Theory]
    [InlineData(1, 0.5)]
    [InlineData(4, 0.5)]
    [InlineData(14, 1)]
    public void The_beginning_of_a_change_is_found_in_her_days(double rise, double tolerance)
    {
        var days = Days(day => Math.Clamp((day - 30.5) / rise, 0, 1));
        var found = Estimate(days, 38.9)!.Value;
        Assert.InRange(found.Day, 30.5 - tolerance, 30.5 + tolerance);
        Assert.InRange(found.Day, found.Earliest, found.Latest);
    }

    /// <summary>One day that stands out alone is not the beginning of what came a week later.</summary>
    [Fact]
    public void A_single_odd_day_is_not_taken_for_the_beginning()
    {
        var days = Days(day => day is > 22 and < 23 ? 1.5 : Math.Clamp((day - 32) / 2, 0, 1));
        Assert.InRange(Estimate(days, 38.9)!.Value.Day, 30.5, 33.5);
    }

    [Fact]
    public void A_few_days_tell_nothing() => Assert.Null(Estimate(Days(_ => 1)[^4..], 38.9));

    /// <summary>A slow trouble's evidence leaves zero only days after it began; what is told lies nearer.</summary>
    [Fact]
    public void A_slow_trouble_is_dated_back_to_its_beginning()
    {
        var spec = new HerdSpec
        {
            Cows = 40, Days = 75, Seed = 9, EpisodesPer100CowYears = 0, SwappedTags = 0,
            Given = [.. Enumerable.Range(1, 12).Select(cow => new Episode($"{cow}", AlertPattern.OneLeg, Leg.Rh, 50, 12, 0.25, 0.75, 1000))],
        };
        var raised = Histories.Fold(new SimulatedHerd(spec).Passages).Changes
            .Where(c => c.Kind == AlertChangeKind.Raised && c.Alert.Leg == Leg.Rh && c.At > Histories.At(50) && int.Parse(c.Alert.Cow, System.Globalization.CultureInfo.InvariantCulture) <= 12)
            .Select(c => c.Alert).ToList();
        Assert.True(raised.Count >= 11);
        var apart = raised.Select(a => Math.Abs((a.OnsetAt - Histories.At(50)).TotalDays)).Order().ToList();
        Assert.True(apart[apart.Count / 2] < 1.8, $"median {apart[apart.Count / 2]:0.0} days");
        Assert.All(raised, a => Assert.InRange(a.OnsetAt, a.OnsetEarliestAt!.Value, a.OnsetLatestAt!.Value));
        Assert.True(raised.Count(a => a.OnsetEarliestAt <= Histories.At(50) && a.OnsetLatestAt >= Histories.At(50)) >= 8);
        Assert.Contains(raised, a => a.Explanation.Contains("(likely ", StringComparison.Ordinal));
    }

    private static List<DayMean> Days(Func<double, double> size) =>
        [.. Enumerable.Range(0, 39).Select(day => new DayMean(day, size(day + 0.5) * _design, 3))];

    private static OnsetEstimate? Estimate(List<DayMean> days, double now) =>
        OnsetEstimate.Of(days, now, Vector3.Zero, _design, new HerdNoise(), CowNoise.Unknown([0, 0, 0, 0, 0]));
}
