using GaitWatch.Gait;

namespace GaitWatch.Lameness.Tests.Simulated;

/// <summary>Ways to look at a history from another side, and to fold it.</summary>
internal static class Histories
{
    /// <summary>A small herd whose cow 1 loses a fifth of her right hind leg's load from day 50 on.</summary>
    public static SimulatedHerd WithOneLameCow(int cows = 30, int days = 70, int seed = 4, double drop = 0.2, double healingDay = 1000, Leg leg = Leg.Rh)
    {
        var spec = new HerdSpec
        {
            Cows = cows, Days = days, Seed = seed, EpisodesPer100CowYears = 0, SwappedTags = 0,
            Given = [new Episode("1", AlertPattern.OneLeg, leg, 50, 2, drop, 0.75, healingDay)],
        };
        return new SimulatedHerd(spec);
    }

    public static PassageInput Map(PassageInput input, Func<PerLeg<LegLoad>, PerLeg<LegLoad>> legs, double weight = 1) =>
        input with { Passage = input.Passage with { Legs = legs(input.Passage.Legs), WeightKg = weight * input.Passage.WeightKg } };

    /// <summary>Every change, in order, and every assessment.</summary>
    public static (List<AlertChange> Changes, List<PassageAssessment> Assessments, HerdFold Fold) Fold(
        IEnumerable<HerdInput> inputs, LamenessOptions? options = null)
    {
        var fold = new HerdFold(options ?? new LamenessOptions());
        var (changes, assessments) = (new List<AlertChange>(), new List<PassageAssessment>());
        foreach (var input in inputs)
        {
            var step = fold.Fold(input);
            changes.AddRange(step.Changes);
            if (step.Assessment is { } assessment)
                assessments.Add(assessment);
        }

        return (changes, assessments, fold);
    }

    /// <summary>Inputs and events in the order of a history.</summary>
    public static List<HerdInput> Ordered(IEnumerable<HerdInput> passages, params CowEvent[] events) =>
        [.. passages.Concat(events.Select((e, i) => new CowEventInput(e, $"event-{i}"))).Order(HerdInput.Order)];

    public static DateTimeOffset At(double day) => SimulatedHerd.Start.AddDays(day);
}
