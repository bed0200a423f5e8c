using GaitWatch.Gait;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.AlertLives;

public sealed class AlertLifeTests
{
    private static readonly SimulatedHerd _lame = Histories.WithOneLameCow(days: 110);

    private static AlertChange FirstRaised(List<AlertChange> changes, string cow = "1") =>
        changes.First(c => c.Kind == AlertChangeKind.Raised && c.Alert.Cow == cow && c.At >= Histories.At(50));

    [Fact]
    public void One_trouble_is_one_alert_and_says_what_to_do()
    {
        var (changes, _, fold) = Histories.Fold(_lame.Passages);
        var raised = FirstRaised(changes);
        Assert.Equal(Leg.Rh, raised.Alert.Leg);
        Assert.InRange(raised.At, Histories.At(50), Histories.At(54));
        Assert.InRange(raised.Alert.OnsetAt, Histories.At(49), raised.At);
        var p = raised.Alert.LegProbability;
        Assert.Equal(1, p.Lf + p.Rf + p.Lh + p.Rh, 1e-9);
        Assert.True(p.Rh > 0.8);
        Assert.Contains("right hind", raised.Alert.Explanation, StringComparison.Ordinal);
        Assert.Contains("%", raised.Alert.Explanation, StringComparison.Ordinal);
        Assert.Matches("^[A-Za-z0-9_-]+$", raised.Alert.Id);
        Assert.Single(changes, c => c.Kind == AlertChangeKind.Raised && c.Alert.Cow == "1" && c.At >= Histories.At(50));
        var open = Assert.Single(fold.OpenAlerts, a => a.Cow == "1");
        Assert.Equal(raised.Alert.Id, open.Id);
        Assert.Equal(Urgency.Today, open.Urgency);
        Assert.InRange(20, open.LoadDropLowerPercent, open.LoadDropUpperPercent);
    }

    [Fact]
    public void Changes_are_told_sparingly()
    {
        var (changes, _, _) = Histories.Fold(_lame.Passages);
        Assert.InRange(changes.Count(c => c.Alert.Cow == "1" && c.At >= Histories.At(50)), 1, 12);
    }

    [Fact]
    public void It_closes_when_her_load_is_back_and_the_opposite_leg_is_not_flagged()
    {
        var herd = Histories.WithOneLameCow(days: 150, healingDay: 65);
        var (changes, _, fold) = Histories.Fold(herd.Passages);
        var raised = FirstRaised(changes);
        var closed = Assert.Single(changes, c => c.Kind == AlertChangeKind.Closed && c.Alert.Id == raised.Alert.Id);
        Assert.Equal(AlertCloseReason.LoadNormal, closed.Alert.CloseReason);
        Assert.InRange(closed.At, Histories.At(72), Histories.At(120));
        Assert.DoesNotContain(changes, c => c.Alert.Cow == "1" && c.Alert.Leg == Leg.Lh && c.At >= Histories.At(50));
        Assert.DoesNotContain(fold.OpenAlerts, a => a.Cow == "1");
    }

    [Fact]
    public void Silence_never_clears_a_flag()
    {
        var silent = _lame.Passages.Where(p => p.Cow != "1" || p.At < Histories.At(56));
        var (changes, _, fold) = Histories.Fold(silent);
        var raised = FirstRaised(changes);
        Assert.Contains(fold.OpenAlerts, a => a.Id == raised.Alert.Id);
    }

    [Fact]
    public void A_true_alert_can_follow_a_false_one_that_was_closed_by_hand()
    {
        // Sound on the day that a flag is closed, truly lame on another leg from the next.
        var spec = new HerdSpec
        {
            Cows = 30, Days = 90, Seed = 4, EpisodesPer100CowYears = 0, SwappedTags = 0,
            Given =
            [
                new Episode("1", AlertPattern.OneLeg, Leg.Rh, 50, 1, 0.12, 0.75, 54),
                new Episode("1", AlertPattern.OneLeg, Leg.Lh, 61, 1, 0.25, 0.75, 1000),
            ],
        };
        var herd = new SimulatedHerd(spec);
        var first = FirstRaised(Histories.Fold(herd.Passages).Changes);
        var inputs = Histories.Ordered(
            herd.Passages,
            new AlertClosedByHand("1", Histories.At(60), first.Alert.Pattern, first.Alert.Leg, AlertCloseReason.LiftedNothingFound, "", ""));
        var (changes, _, _) = Histories.Fold(inputs);
        var closed = Assert.Single(changes, c => c.Kind == AlertChangeKind.Closed && c.Alert.Id == first.Alert.Id);
        Assert.Equal(AlertCloseReason.LiftedNothingFound, closed.Alert.CloseReason);
        var second = changes.First(c => c.Kind == AlertChangeKind.Raised && c.Alert.Cow == "1" && c.At > closed.At);
        Assert.Equal(Leg.Lh, second.Alert.Leg);
        Assert.InRange(second.At, Histories.At(61), Histories.At(64));
    }

    /// <summary>
    /// A cow lame on one hind foot goes lame on the other: what she takes off that one comes onto the first, which looks normal then and is not. When the
    /// second has healed, the first is as sore as before, and her alert must still stand.
    /// </summary>
    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void A_sore_leg_that_carries_more_because_the_other_is_worse_is_not_back_to_normal(int seed)
    {
        var spec = new HerdSpec
        {
            Cows = 30, Days = 150, Seed = seed, EpisodesPer100CowYears = 0, SwappedTags = 0,
            Given =
            [
                new Episode("1", AlertPattern.OneLeg, Leg.Rh, 50, 2, 0.12, 0.75, 1000),
                new Episode("1", AlertPattern.OneLeg, Leg.Lh, 75, 2, 0.25, 0.75, 90),
            ],
        };
        var (changes, _, fold) = Histories.Fold(new SimulatedHerd(spec).Passages);
        Assert.Contains(changes, c => c.Kind == AlertChangeKind.Raised && c.Alert.Cow == "1" && c.Alert.Leg == Leg.Lh && c.At > Histories.At(75));
        Assert.DoesNotContain(changes, c => c.Kind == AlertChangeKind.Closed && c.Alert.Cow == "1" && c.Alert.Leg == Leg.Rh && c.At > Histories.At(50));
        var open = Assert.Single(fold.OpenAlerts, a => a.Cow == "1" && a.Leg == Leg.Rh);
        Assert.InRange(12, open.LoadDropLowerPercent, open.LoadDropUpperPercent);
    }

    [Fact]
    public void A_foot_that_was_looked_at_is_examined_and_stays_until_normal()
    {
        var inputs = Histories.Ordered(_lame.Passages, new FootTreated("1", Histories.At(58), Leg.Rh, BlockOn: true, BlockOff: false));
        var (changes, _, fold) = Histories.Fold(inputs);
        Assert.Contains(changes, c => c.At == Histories.At(58) && c.Alert.State == AlertState.Examined);
        Assert.Equal(AlertState.Examined, Assert.Single(fold.OpenAlerts, a => a.Cow == "1").State);
    }

    [Fact]
    public void A_cow_that_left_has_no_open_alert()
    {
        var inputs = Histories.Ordered(_lame.Passages.Where(p => p.Cow != "1" || p.At < Histories.At(60)), new LeftHerd("1", Histories.At(60)));
        var (changes, _, fold) = Histories.Fold(inputs);
        Assert.Equal(AlertCloseReason.LeftHerd, changes.Single(c => c.Kind == AlertChangeKind.Closed && c.At == Histories.At(60)).Alert.CloseReason);
        Assert.DoesNotContain(fold.OpenAlerts, a => a.Cow == "1");
    }

    [Fact]
    public void The_id_follows_from_cow_pattern_leg_and_instant_alone()
    {
        var at = Histories.At(1);
        var id = AlertId.Of("1", AlertPattern.OneLeg, Leg.Rh, at);
        Assert.Equal(id, AlertId.Of("1", AlertPattern.OneLeg, Leg.Rh, at.ToOffset(TimeSpan.FromHours(2))));
        Assert.NotEqual(id, AlertId.Of("1", AlertPattern.OneLeg, Leg.Lh, at));
        Assert.NotEqual(id, AlertId.Of("1", AlertPattern.BothHind, Leg.Rh, at));
        Assert.NotEqual(id, AlertId.Of("11", AlertPattern.OneLeg, Leg.Rh, at));
        Assert.NotEqual(id, AlertId.Of("1", AlertPattern.OneLeg, Leg.Rh, at.AddMilliseconds(1)));
    }
}
