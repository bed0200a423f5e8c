using GaitWatch.Gait;

namespace GaitWatch.Lameness.Tests.AlertLives;

/// <summary>A trouble by itself: a flag raised on a normal that was hardly known, on a cow that has carried two per cent less than that ever since.</summary>
public sealed class TroubleTests
{
    private const int CrossingsADay = 2;
    private static readonly DateTimeOffset s_raised = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);
    private static readonly PerLeg<double> s_normal = new(0.27, 0.27, 0.23, 0.23);

    [Fact]
    public void An_examined_flag_on_a_normal_hardly_known_closes_once_the_normal_will_not_be_known_better()
    {
        var closed = DayClosed(drop: 0.02, examinedOnDay: 20);
        Assert.InRange(closed!.Value, 60, 66);
    }

    [Fact]
    public void It_stays_until_somebody_has_looked() => Assert.Null(DayClosed(drop: 0.02, examinedOnDay: null));

    [Fact]
    public void And_as_long_as_she_carries_less() => Assert.Null(DayClosed(drop: 0.05, examinedOnDay: 20));

    /// <summary>Days after it was raised on which it closed, of 200; null when it did not.</summary>
    private static int? DayClosed(double drop, int? examinedOnDay)
    {
        var normal = Balances.FromShares(s_normal).ToVector();
        var now = Balances.FromShares(s_normal with { Rh = s_normal.Rh * (1 - drop) }).ToVector();
        var design = now - normal;
        var trouble = new Trouble(Raised(), normal, 0.03 * 0.03 * Matrix3.Diagonal(1, 1, 1), design);
        // A level known no better than the normal proves nothing by itself.
        var filter = new BaselineFilter { Mean = now, MeanCov = 0.03 * 0.03 * Matrix3.Diagonal(1, 1, 1) };
        for (var crossing = 1; crossing < 200 * CrossingsADay; crossing++)
        {
            var at = s_raised.AddDays((double)crossing / CrossingsADay);
            if (crossing == examinedOnDay * CrossingsADay)
                trouble.Examine(filter, at, TimeZoneInfo.Utc);
            trouble.Take(now, 0.02 * 0.02 * Matrix3.Diagonal(1, 1, 1), at);
            if (trouble.Look(filter, at, isLifted: false, TimeZoneInfo.Utc) is { Kind: AlertChangeKind.Closed })
                return crossing / CrossingsADay;
        }

        return null;
    }

    private static Alert Raised() => new()
    {
        Id = "x", Cow = "1", Pattern = AlertPattern.OneLeg, Leg = Leg.Rh, LegProbability = new PerLeg<double>(0, 0, 0, 1), RaisedAt = s_raised, OnsetAt = s_raised.AddDays(-5),
        LoadDropPercent = 9, LoadDropLowerPercent = 4, LoadDropUpperPercent = 14, Urgency = Urgency.NextVisit, State = AlertState.Open, Explanation = "",
    };
}
