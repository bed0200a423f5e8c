using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Says what speaks against a crossing being one cow walking over at her own pace.</summary>
internal static class WalkJudge
{
    /// <summary>Longest stance of a walk, seconds (contract: <c>stopped</c>).</summary>
    private const double LongestStanceSeconds = 3;

    /// <summary>
    /// A cow stands for a while before she steps back, so that her feet stand longer than any does in a walk (2.2 s a stride, 0.78 of it
    /// on the ground); where no foot does, the foot set down behind the others is the next cow's.
    /// </summary>
    private const double PauseSeconds = 1.8;

    /// <summary>Fastest walk, metres per second (contract: <c>too-fast</c>).</summary>
    private const double FastestMetresPerSecond = 2.0;

    /// <summary>Least part of the stride a foot stands in a walk (contract: <c>too-fast</c>).</summary>
    private const double LeastDuty = 0.5;

    /// <summary>A foot carries at most about 60 % of body weight (Scott 1988), so the highest one bounds the weight from below.</summary>
    private const double HighestFootPart = 0.55;

    /// <summary>All feet together swing about the weight by so much.</summary>
    private const double HighestTotalPart = 1.12;

    /// <summary>Below this part of the lightest cow's weight it is no cow, between them her weight is implausible.</summary>
    private const double NoCowPart = 0.88;

    /// <summary>Less than a hundredth of a footfall's impulse, kg s.</summary>
    private const double GrazeKgSeconds = 1.5;

    /// <summary>
    /// A share less sure than this tells nothing of a leg, not even a severe lameness; walks whose feet are told apart state a fifth of it or less.
    /// </summary>
    private const double LargestShareError = 0.02;

    /// <summary>All reasons that hold, the decisive one first.</summary>
    public static ImmutableArray<QualityReason> Judge(CrossingFeet feet, LegLoads loads, BodyWeight? weight, double? speed, GaitOptions options)
    {
        var weightKg = weight?.Kg;
        var reasons = new SortedSet<QualityReason>();
        if (RoughWeight(feet) < NoCowPart * options.LightestCowKg)
            reasons.Add(QualityReason.NotACow);
        var longest = 0.0;
        foreach (var foot in feet.InOrder)
            longest = Math.Max(longest, (foot.Lift - foot.Contact) * feet.Step);
        if (longest > LongestStanceSeconds)
            reasons.Add(QualityReason.Stopped);
        var steppedBack = WayOver.SteppedBack(feet);
        var leftByEntry = WayOver.LeftByEntry(feet);
        // Without a pause or a step back she may have gone off at the side, and then a leg is missing.
        if (leftByEntry && (steppedBack || longest > PauseSeconds || loads.SumKg is not null))
            reasons.Add(QualityReason.Turned);
        else if (steppedBack)
            reasons.Add(longest < PauseSeconds ? QualityReason.TwoCows : QualityReason.BackedUp);

        if (speed > FastestMetresPerSecond || Duty(feet.InOrder, feet.Step) < LeastDuty)
            reasons.Add(QualityReason.TooFast);
        if (loads.SumKg is null)
            reasons.Add(QualityReason.Incomplete);
        if (!feet.IsOrdered || feet.InOrder.Any(foot => !foot.IsResolved && !IsGraze(foot)) || weight is { IsContradictory: true } || IsUnsure(loads))
            reasons.Add(QualityReason.FootfallsUnresolved);
        if (weightKg < options.LightestCowKg || weightKg > options.HeaviestCowKg)
            reasons.Add(QualityReason.WeightImplausible);
        return [.. reasons];
    }

    private static bool IsUnsure(LegLoads loads) => Legs.All.Any(leg => loads.Legs[leg].ShareError > LargestShareError);

    /// <summary>An edge touched in passing: nothing was carried that another foot could lack.</summary>
    private static bool IsGraze(FootOnPlate foot) => foot.IsOnEdge && foot.ImpulseKgSeconds < GrazeKgSeconds;

    private static double RoughWeight(CrossingFeet feet)
    {
        var total = 0.0;
        for (var i = 0; i < feet.Plates.Left.Count; i++)
            total = Math.Max(total, feet.Plates.Left.ForceKg[i] + feet.Plates.Right.ForceKg[i]);
        total /= HighestTotalPart;
        // Where hardly a foot met the plates, the total says less than one foot.
        if (feet.InOrder.Count > 2)
            return total;
        foreach (var foot in feet.InOrder)
            total = Math.Max(total, foot.PeakKg / HighestFootPart);
        return total;
    }

    private static double? Duty(IReadOnlyList<FootOnPlate> feet, double step)
    {
        double sum = 0;
        var count = 0;
        foreach (var foot in feet)
        {
            if (foot.StrideSeconds is not { } stride)
                continue;
            sum += (foot.Lift - foot.Contact) * step / stride;
            count++;
        }

        return count == 0 ? null : sum / count;
    }
}
