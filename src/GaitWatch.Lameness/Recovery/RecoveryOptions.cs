namespace GaitWatch.Lameness;

/// <summary>Settings of the follow-up of a treated foot.</summary>
public sealed record RecoveryOptions
{
    /// <summary>The farm's time zone: sets where a day ends.</summary>
    public TimeZoneInfo TimeZone { get; init; } = TimeZoneInfo.Utc;

    /// <summary>The normal band is never wider than this around no drop, per cent.</summary>
    public double WidestBandPercent { get; init; } = 5;

    /// <summary>The normal band is this many standard deviations of her sound daily means, unless that is wider than the widest.</summary>
    public double BandInDailySds { get; init; } = 2;

    /// <summary>Days after pain relief on which her walk is not taken as her own. Common practice, no source.</summary>
    public int PainReliefDays { get; init; } = 7;

    /// <summary>Days after a treatment, and after a block or wrap was put on, taken off or lost, on which her walk is changed by that alone. Common practice, no source.</summary>
    public int SettlingDays { get; init; } = 3;

    /// <summary>Chance of calling a foot recovered, over the whole follow-up, while its load lies outside the band.</summary>
    public double RecoveredAlpha { get; init; } = 0.05;

    /// <summary>Days counted for one look at whether she has recovered.</summary>
    public int DaysPerLook { get; init; } = 7;

    /// <summary>How many looks a follow-up has; each spends an equal part of <see cref="RecoveredAlpha"/>.</summary>
    public int Looks { get; init; } = 10;

    /// <summary>Days after treatment before a foot can be called stalled.</summary>
    public int StalledAfterDays { get; init; } = 14;

    /// <summary>How many of the last days tell whether a foot still improves.</summary>
    public int TrendDays { get; init; } = 21;

    /// <summary>A foot that at its pace would need longer than this to reach the band is stalled, days.</summary>
    public int LongestWayDays { get; init; } = 28;

    /// <summary>How far before onset the days may lie from which the spread of daily means is told.</summary>
    public int SoundDaysBefore { get; init; } = 60;

    /// <summary>Fewest sound days before onset from which the spread of daily means is told.</summary>
    public int FewestSoundDays { get; init; } = 10;

    /// <summary>A foot is followed so many days after treatment; what comes later is another story. Chosen by us: three times the days to judgement, and two weeks.</summary>
    public int FollowedDays { get; init; } = 120;

    /// <summary>Days after treatment on which a foot is judged: Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486.</summary>
    public int JudgedAfterDays { get; init; } = 35;

    /// <summary>A look counts as the one at judgement when it is no more days before or after it. Chosen by us.</summary>
    public int JudgedWithinDays { get; init; } = 7;

    /// <summary>Fewest days around judgement from whose mean drop anything is told. Chosen by us.</summary>
    public int FewestJudgedDays { get; init; } = 3;
}
