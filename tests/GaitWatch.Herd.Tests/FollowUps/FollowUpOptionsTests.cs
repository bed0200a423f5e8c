namespace GaitWatch.Herd.Tests;

public sealed class FollowUpOptionsTests
{
    [Fact]
    public void The_defaults_are_in_order()
    {
        Assert.Empty(new FollowUpOptions().Faults());
        Assert.Empty(new RoutineTrimOptions().Faults());
    }

    [Fact]
    public void Everything_wrong_is_told_at_once()
    {
        Assert.Equal(
            ["WrapOff is day 5 to 3: from day 0 on, the second not before the first, within a year.", "NextVisitWithinDays is -1: 0 to 365 days."],
            new FollowUpOptions { WrapOff = new FollowUpWindow(5, 3), NextVisitWithinDays = -1 }.Faults().Select(fault => fault.Fault));
        Assert.Equal(
            [
                "AfterDryOffDays is -1: 0 to 1000 days.", "ToDaysInMilk is 50: not before FromDaysInMilk (60).",
                "HeiferFromDaysBeforeCalving is 10: at least HeiferToDaysBeforeCalving (28), for it lies farther from calving.",
            ],
            new RoutineTrimOptions { AfterDryOffDays = -1, ToDaysInMilk = 50, HeiferFromDaysBeforeCalving = 10 }.Faults().Select(fault => fault.Fault));
    }
}
