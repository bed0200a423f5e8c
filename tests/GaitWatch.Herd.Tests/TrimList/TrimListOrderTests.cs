using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class TrimListOrderTests
{
    [Fact]
    public void Today_first_whatever_the_pen_then_pen_by_pen_by_drop_then_what_is_due_then_routine()
    {
        var list = TrimListOrder.Of(
        [
            Entry("1", "10", TrimListReason.Routine), Entry("2", "2", TrimListReason.Routine), Entry("3", "2", TrimListReason.BlockCheck),
            Entry("4", "2", TrimListReason.Alert, 8, Urgency.NextVisit), Entry("5", "2", TrimListReason.NotRecovering, 12),
            Entry("6", "10", TrimListReason.Alert, 9, Urgency.NextVisit), Entry("7", "10", TrimListReason.Alert, 15, Urgency.Today),
            Entry("8", "2", TrimListReason.Alert, 22, Urgency.Today), Entry("9", null, TrimListReason.WrapOff),
        ]);
        Assert.Equal(["8", "7", "5", "4", "3", "2", "6", "1", "9"], list.Select(entry => entry.Cow));
    }

    [Fact]
    public void A_cow_with_two_reasons_comes_once_at_the_more_pressing()
    {
        var list = TrimListOrder.Of([Entry("417", "2", TrimListReason.Routine), Entry("417", "2", TrimListReason.Alert, 15, Urgency.Today)]);
        Assert.Equal(TrimListReason.Alert, Assert.Single(list).Reason);
    }

    [Theory]
    [InlineData(Leg.Lh, AlertPattern.OneLeg, "Lift both hind feet.")]
    [InlineData(Leg.Rf, AlertPattern.OneLeg, "Lift both fore feet, then both hind.")]
    [InlineData(Leg.Rh, AlertPattern.BothHind, "Lift both hind feet; she may not limp.")]
    [InlineData(null, null, null)]
    public void The_note_says_which_feet_to_lift(Leg? leg, AlertPattern? pattern, string? note) =>
        Assert.Equal(note, TrimListOrder.NoteFor(leg, pattern));

    [Theory]
    [InlineData("2", "10")]
    [InlineData("87", "417")]
    [InlineData("barn 2", "barn 10")]
    [InlineData("007", "8")]
    [InlineData("a", "b")]
    [InlineData("a", "a1")]
    public void Numbers_in_names_order_as_numbers(string less, string more)
    {
        Assert.True(NaturalOrder.Comparer.Compare(less, more) < 0);
        Assert.True(NaturalOrder.Comparer.Compare(more, less) > 0);
        Assert.Equal(0, NaturalOrder.Comparer.Compare(less, less));
    }

    [Theory]
    [InlineData(Urgency.NextVisit, 7, Urgency.NextVisit)]
    [InlineData(Urgency.NextVisit, 8, Urgency.Today)]
    [InlineData(Urgency.NextVisit, null, Urgency.Today)]
    [InlineData(Urgency.Watch, null, Urgency.Watch)]
    [InlineData(Urgency.Today, 1, Urgency.Today)]
    public void What_could_wait_for_a_visit_cannot_when_none_is_near(Urgency byLoad, int? daysToVisit, Urgency expected)
    {
        var today = new DateOnly(2026, 3, 2);
        Assert.Equal(expected, VisitUrgency.Of(byLoad, today, daysToVisit is { } days ? today.AddDays(days) : null, withinDays: 7));
    }

    private static TrimListEntry Entry(string cow, string? pen, TrimListReason reason, double? drop = null, Urgency? urgency = null) =>
        new() { Cow = cow, Pen = pen, Reason = reason, LoadDropPercent = drop, Urgency = urgency };
}
