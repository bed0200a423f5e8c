using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Measures one crossing: signals, feet, loads, judgement.</summary>
internal static class CrossingMeasurement
{
    /// <summary>What is wrong when the figures mean nothing.</summary>
    private static readonly ImmutableArray<QualityReason> s_noWalk =
        [QualityReason.NotACow, QualityReason.TwoCows, QualityReason.GapInFrames, QualityReason.Turned, QualityReason.BackedUp];

    /// <summary>A crossing of which samples are missing: nothing is measured.</summary>
    public static Crossing Broken(LoadedSpan span) =>
        new() { FirstContact = span.From, LastLift = span.To, Reasons = [QualityReason.GapInFrames] };

    /// <summary>Measures a load that is recorded whole.</summary>
    public static Crossing Of(TwinPlate platform, GaitOptions options, RecordedLoad load)
    {
        var feet = CrossingFeet.Find(PlatePair.Of(platform, load));
        FootDoubts.Mark(feet);
        // Feet that were not worked out have no times to tell a stride from.
        var clock = feet.Travel is null ? null : StrideClock.Fit(feet.InOrder, feet.Step);
        if (clock is not null)
            FootDoubts.Mark(feet, clock);
        var loads = LegLoads.Of(feet, clock);
        var speed = WalkingSpeed.Of(feet.InOrder, feet.Step);
        var bodyWeight = BodyWeight.Of(feet, loads, clock, speed);
        var reasons = WalkJudge.Judge(feet, loads, bodyWeight, speed, options);
        var isWalk = !reasons.Any(s_noWalk.Contains);
        var stretch = load.Stretch;
        ImmutableArray<Footfall> footfalls = [.. feet.InOrder.Where(foot => foot.Leg is not null).Select(foot => Footfall(feet.Plates, stretch, foot))];
        return new Crossing
        {
            FirstContact = feet.InOrder.Count > 0 ? stretch.TimeAt(feet.Plates.InRecording(feet.InOrder[0].Contact)) : stretch.TimeAt(load.Load.Start),
            LastLift = feet.InOrder.Count > 0 ? stretch.TimeAt(feet.Plates.InRecording(feet.InOrder.Max(foot => foot.Lift))) : stretch.TimeAt(load.Load.End),
            Reasons = reasons,
            WeightKg = isWalk ? bodyWeight?.Kg : null,
            StrideSeconds = isWalk ? MeanStride(feet.InOrder) : null,
            SpeedMetresPerSecond = isWalk ? speed : null,
            Legs = isWalk ? loads.Legs : default,
            Footfalls = footfalls,
            LeftEnds = Ends(PlateSide.Left),
            RightEnds = Ends(PlateSide.Right),
        };

        PlateEnds? Ends(PlateSide side) => reasons.IsEmpty ? PlateEnds.Of(platform, side, feet.InOrder, feet.Step) : null;
    }

    private static double? MeanStride(IReadOnlyList<FootOnPlate> feet)
    {
        double sum = 0;
        var count = 0;
        foreach (var foot in feet)
        {
            if (foot.StrideSeconds is not { } stride)
                continue;
            sum += stride;
            count++;
        }

        return count == 0 ? null : sum / count;
    }

    private static Footfall Footfall(PlatePair plates, Stretch stretch, FootOnPlate foot) => new(
        foot.Leg!.Value,
        stretch.TimeAt(plates.InRecording(foot.Contact)),
        stretch.TimeAt(plates.InRecording(foot.Lift)),
        foot.Line.Middle,
        foot.IsWhole,
        plates.Left.Hz,
        [.. foot.Force.Select(kg => (float)Math.Max(0, kg))]);
}
