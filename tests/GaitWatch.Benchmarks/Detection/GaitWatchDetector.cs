using GaitWatch.Lameness;

namespace GaitWatch.Benchmarks;

/// <summary>GaitWatch itself on a herd's history.</summary>
internal static class GaitWatchDetector
{
    /// <summary>What it raised, and how many crossings of sound cows met an open alert.</summary>
    public static (List<Flag> Flags, long SoundCrossingsFlagged) Run(HerdHistory history, List<HerdInput> inputs, double budget)
    {
        var fold = new HerdFold(new LamenessOptions { FalseAlertsPer100CowsPerWeek = budget });
        var flags = new List<Flag>();
        var troubles = history.Troubles.ToLookup(t => t.Cow);
        var flagged = 0L;
        foreach (var input in inputs)
        {
            var step = fold.Fold(input);
            if (step.Assessment is { Baseline: BaselineState.Frozen } told && history.DayOf(told.At) is var day && day >= HerdHistory.LearningDays
                && !troubles[history.PlaceOf(told.Cow)].Any(t => t.IsOn(day)))
            {
                flagged++;
            }

            foreach (var change in step.Changes)
            {
                if (change.Kind is not (AlertChangeKind.Raised or AlertChangeKind.Worsened))
                    continue;
                var alert = change.Alert;
                flags.Add(new Flag(history.PlaceOf(alert.Cow), alert.Pattern, alert.Leg, history.DayOf(change.At))
                {
                    OnsetDay = history.DayOf(alert.OnsetAt),
                    OnsetInterval = (Day(alert.OnsetEarliestAt), Day(alert.OnsetLatestAt)),
                    DropPercent = alert.LoadDropPercent,
                    LegProbability = alert.LegProbability,
                    IsWorsening = change.Kind == AlertChangeKind.Worsened,
                });
            }
        }

        return (flags, flagged);

        double Day(DateTimeOffset? at) => at is { } instant ? history.DayOf(instant) : double.NaN;
    }
}
