using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>How often flags were true, of those whose foot was lifted.</summary>
public sealed record HitRateView
{
    /// <summary>The first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The day after the last.</summary>
    public required DateOnly To { get; init; }

    /// <summary>Every flag raised in that time that asked for action.</summary>
    public required FlagTallyView Overall { get; init; }

    /// <summary>By the farm's month in which it was raised, oldest first, every month of the time.</summary>
    public required IReadOnlyList<MonthTallyView> ByMonth { get; init; }

    /// <summary>By urgency, the most urgent first; those only watched stand here alone.</summary>
    public required IReadOnlyList<UrgencyTallyView> ByUrgency { get; init; }

    /// <summary>How many were closed by hand for each reason, the most frequent first.</summary>
    public required IReadOnlyList<DismissalCountView> DismissedBecause { get; init; }

    /// <summary>Those closed by hand, the latest first.</summary>
    public required IReadOnlyList<DismissalView> Dismissed { get; init; }

    /// <summary>How a report looks on the wire.</summary>
    public static HitRateView Of(HitRateReport report, Period period) => new()
    {
        From = period.From,
        To = period.To,
        Overall = FlagTallyView.Of(report.Overall),
        ByMonth = [.. report.ByMonth.Select(row => new MonthTallyView(row.Month, FlagTallyView.Of(row.Flags)))],
        ByUrgency = [.. report.ByUrgency.Select(row => new UrgencyTallyView(row.Urgency.WireName(), FlagTallyView.Of(row.Flags)))],
        DismissedBecause =
        [
            .. report.Dismissed.CountBy(flag => flag.Reason.WireName()).Select(reason => new DismissalCountView(reason.Key, reason.Value))
                .OrderByDescending(reason => reason.Count).ThenBy(reason => reason.Reason, StringComparer.Ordinal),
        ],
        Dismissed =
        [
            .. report.Dismissed.Select(flag => new DismissalView(
                flag.Alert.Id, flag.Alert.Cow, GaitWatch.Gait.Legs.WireName(flag.Alert.Leg), flag.Alert.Urgency.WireName(), flag.Alert.ClosedAt!.Value, flag.Reason.WireName(), flag.Note, flag.By)),
        ],
    };
}

/// <summary>Flags raised, and what lifting said of those that were lifted.</summary>
/// <param name="Raised">How many were raised.</param>
/// <param name="Lifted">Of how many the foot was lifted.</param>
/// <param name="Right">What makes a cow lame, on the named leg.</param>
/// <param name="Minor">A minor lesion there.</param>
/// <param name="OtherLeg">What makes a cow lame, on another leg.</param>
/// <param name="NothingFound">Nothing.</param>
/// <param name="Hits">Right ones of those lifted.</param>
/// <param name="IsEnough">Whether so many were lifted that the fraction says something.</param>
public sealed record FlagTallyView(int Raised, int Lifted, int Right, int Minor, int OtherLeg, int NothingFound, ProportionView Hits, bool IsEnough)
{
    /// <summary>How a tally looks on the wire.</summary>
    public static FlagTallyView Of(FlagTally tally) => new(
        tally.Raised, tally.Rate.Lifted, tally.Rate.Right, tally.Rate.Minor, tally.Rate.OtherLeg, tally.Rate.NothingFound,
        ProportionView.OfCount(tally.Rate.Hits), tally.IsEnough);
}

/// <summary>Flags of a month.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Flags">The flags.</param>
public sealed record MonthTallyView(DateOnly Month, FlagTallyView Flags);

/// <summary>Flags of an urgency.</summary>
/// <param name="Urgency"><c>today</c>, <c>next-visit</c> or <c>watch</c>, the worst it came to.</param>
/// <param name="Flags">The flags.</param>
public sealed record UrgencyTallyView(string Urgency, FlagTallyView Flags);

/// <summary>How many flags were closed by hand for a reason.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="Count">How many.</param>
public sealed record DismissalCountView(string Reason, int Count);

/// <summary>A flag closed by hand.</summary>
/// <param name="AlertId">The alert.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Leg">The leg it named.</param>
/// <param name="Urgency">How urgent it was.</param>
/// <param name="ClosedAt">When it was closed.</param>
/// <param name="Reason">Why.</param>
/// <param name="Note">What was said with it; may be empty.</param>
/// <param name="By">Who closed it; may be empty.</param>
public sealed record DismissalView(string AlertId, string Cow, string Leg, string Urgency, DateTimeOffset ClosedAt, string Reason, string Note, string By);
