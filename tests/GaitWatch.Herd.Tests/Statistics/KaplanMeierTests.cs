using CsCheck;

namespace GaitWatch.Herd.Tests;

/// <summary>
/// The example of R's package survival, data set aml (Miller R.G. 1997, Survival Analysis, citation from memory; 23 patients, weeks), as its published
/// output prints it: <c>survfit(Surv(time, status) ~ x, data = aml)</c>, interval on the log scale.
/// </summary>
public sealed class KaplanMeierTests
{
    private static readonly KaplanMeier Maintained = KaplanMeier.Of(Times("9 13 13+ 18 23 28+ 31 34 45+ 48 161+"));
    private static readonly KaplanMeier Nonmaintained = KaplanMeier.Of(Times("5 5 8 8 12 16+ 23 27 30 33 43 45"));

    [Fact]
    public void Counts_and_medians_are_the_published_ones()
    {
        // x=Maintained 11 7 31 18 NA; x=Nonmaintained 12 11 23 8 NA
        Assert.Equal((11, 7, 31.0, (18.0, null)), (Maintained.Count, Maintained.Events, Maintained.MedianDays, Maintained.MedianInterval));
        Assert.Equal((12, 11, 23.0, (8.0, null)), (Nonmaintained.Count, Nonmaintained.Events, Nonmaintained.MedianDays, Nonmaintained.MedianInterval));
    }

    [Fact]
    public void Steps_and_their_intervals_are_the_published_ones()
    {
        // time n.risk n.event surv upper lower: 9 11 1 0.9090909 1 0.7541338; 13 10 1 0.8181818 1 0.6192490
        var (first, second) = (Maintained.Steps[0], Maintained.Steps[1]);
        Assert.Equal((9.0, 11, 1), (first.Days, first.AtRisk, first.Events));
        Assert.Equal((13.0, 10, 1), (second.Days, second.AtRisk, second.Events));
        Assert.Equal(0.9090909, first.Waiting, 1e-7);
        Assert.Equal(0.7541338, first.Lower!.Value, 1e-7);
        Assert.Equal(1.0, first.Upper);
        Assert.Equal(0.8181818, second.Waiting, 1e-7);
        Assert.Equal(0.6192490, second.Lower!.Value, 1e-7);
        // From 18 weeks on 0.7159091, from 34 on 0.3681818, from 48 on 0.1840909: the same fit's life table.
        Assert.Equal(0.715909090909091, Maintained.WaitingAt(22), 1e-12);
        Assert.Equal(0.368181818181818, Maintained.WaitingAt(40), 1e-12);
        Assert.Equal(0.184090909090909, Maintained.WaitingAt(57), 1e-12);
    }

    [Fact]
    public void Once_nobody_waits_there_is_no_interval()
    {
        Assert.Equal((0.0, null, null), (Nonmaintained.Steps[^1].Waiting, Nonmaintained.Steps[^1].Lower, Nonmaintained.Steps[^1].Upper));
        Assert.Equal(1, Maintained.WaitingAt(3));
    }

    [Fact]
    public void A_curve_that_stands_at_one_half_gives_the_middle() =>
        Assert.Equal(3, KaplanMeier.Of(Times("1 2 4 5")).MedianDays);

    [Fact]
    public void Where_too_few_have_come_so_far_there_is_no_median()
    {
        Assert.Null(KaplanMeier.Of(Times("1 9+ 9+ 9+")).MedianDays);
        Assert.Null(KaplanMeier.Of([]).MedianDays);
    }

    [Fact]
    public void The_order_of_times_changes_nothing() =>
        Gen.Shuffle(Times("9 13 13+ 18 23 28+ 31 34 45+ 48 161+").ToArray()).Sample(shuffled => KaplanMeier.Of(shuffled).Steps.SequenceEqual(Maintained.Steps));

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_no_waiting_time_is_refused(double days) =>
        Assert.StartsWith("A waiting time is at least 0 days", Assert.Throws<ArgumentOutOfRangeException>(() => KaplanMeier.Of([new WaitingTime(days, true)])).Message, StringComparison.Ordinal);

    private static IEnumerable<WaitingTime> Times(string text) => text.Split(' ').Select(time => new WaitingTime(double.Parse(time.TrimEnd('+')), !time.EndsWith('+')));
}
