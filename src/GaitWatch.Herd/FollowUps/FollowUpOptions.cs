using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>How long after a finding each thing is due. Counted in the farm's days.</summary>
public sealed record FollowUpOptions
{
    /// <summary>A wrap comes off. Common practice, no source: at 3 days, overdue at 5.</summary>
    public FollowUpWindow WrapOff { get; init; } = new(3, 5);

    /// <summary>A block is looked at. Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486: re-examined at 5-11 days.</summary>
    public FollowUpWindow BlockCheck { get; init; } = new(5, 11);

    /// <summary>A block comes off. Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486: at 25-31 days.</summary>
    public FollowUpWindow BlockOff { get; init; } = new(25, 31);

    /// <summary>Soft new horn is looked at, or at the next visit when that comes before. Common practice, no source: after 21 days.</summary>
    public FollowUpWindow SoftHorn { get; init; } = new(21, 28);

    /// <summary>The outcome is judged. Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486: at 35 days; overdue a week later is ours.</summary>
    public FollowUpWindow Outcome { get; init; } = new(35, 42);

    /// <summary>A block that may press on a sore claw is looked at. Common practice, no source: within 3 days.</summary>
    public FollowUpWindow UnsafeBlock { get; init; } = new(1, 3);

    /// <summary>A flag for today that was closed by eye is looked at again. Common practice, no source: in 3 days.</summary>
    public FollowUpWindow SecondLook { get; init; } = new(3, 5);

    /// <summary>
    /// So many days after a finding nothing of it is asked any more: the block is off by itself, the foot has been in hand or the cow has
    /// left. Chosen by us: a year. The finding itself is kept for good.
    /// </summary>
    public int AskedForDays { get; init; } = 365;

    /// <summary>How near a visit must be for an alert to wait for it, days. Default 7 (contract).</summary>
    public int NextVisitWithinDays { get; init; } = 7;

    /// <summary>Everything wrong with the settings: name and sentence, empty when nothing is.</summary>
    public ImmutableArray<(string Field, string Fault)> Faults()
    {
        var faults = ImmutableArray.CreateBuilder<(string, string)>();
        foreach (var (name, window) in new[]
        {
            (nameof(WrapOff), WrapOff), (nameof(BlockCheck), BlockCheck), (nameof(BlockOff), BlockOff), (nameof(SoftHorn), SoftHorn),
            (nameof(Outcome), Outcome), (nameof(UnsafeBlock), UnsafeBlock), (nameof(SecondLook), SecondLook),
        })
        {
            if (window.FromDay < 0 || window.ToDay < window.FromDay || window.ToDay > 365)
                faults.Add((name, $"{name} is day {window.FromDay} to {window.ToDay}: from day 0 on, the second not before the first, within a year."));
        }

        if (NextVisitWithinDays is < 0 or > 365)
            faults.Add((nameof(NextVisitWithinDays), $"{nameof(NextVisitWithinDays)} is {NextVisitWithinDays}: 0 to 365 days."));
        return faults.ToImmutable();
    }
}
