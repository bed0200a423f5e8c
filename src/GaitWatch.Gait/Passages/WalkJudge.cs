using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Says what speaks against a crossing being one cow walking over at her own pace.</summary>
internal static class WalkJudge
{
    /// <summary>Longest stance of a walk, seconds (contract: <c>stopped</c>).</summary>
    private const double LongestStanceSeconds = 3;

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

    /// <summary>All reasons that hold, the decisive one first.</summary>
    public static ImmutableArray<QualityReason> Judge(CrossingFeet feet, LegLoads loads, double? weightKg, double? speed, GaitOptions options)
    {
        var reasons = new SortedSet<QualityReason>();
        var left = Visit.Of(feet.Left);
        var right = Visit.Of(feet.Right);
        var length = feet.Plates.Left.LengthMetres;

        if ((weightKg ?? RoughWeight(feet)) < NoCowPart * options.LightestCowKg)
            reasons.Add(QualityReason.NotACow);
        var longest = 0.0;
        foreach (var foot in feet.InOrder)
            longest = Math.Max(longest, (foot.Lift - foot.Contact) * feet.Step);
        if (longest > LongestStanceSeconds)
            reasons.Add(QualityReason.Stopped);
        JudgeWay(left, right, length, longest, reasons);

        if (speed > FastestMetresPerSecond || Duty(feet.InOrder, feet.Step) < LeastDuty)
            reasons.Add(QualityReason.TooFast);
        if (loads.SumKg is null)
            reasons.Add(QualityReason.Incomplete);
        if (!feet.IsOrdered || feet.InOrder.Any(foot => !foot.IsResolved))
            reasons.Add(QualityReason.FootfallsUnresolved);
        if (weightKg < options.LightestCowKg || weightKg > options.HeaviestCowKg)
            reasons.Add(QualityReason.WeightImplausible);
        return [.. reasons];
    }

    private static void JudgeWay(List<Visit> left, List<Visit> right, double length, double longestStance, SortedSet<QualityReason> reasons)
    {
        var back = Way(left, length).Concat(Way(right, length)).ToArray();
        var goesBack = back.Length > 0;
        var leftOdd = EndsOdd(left, length);
        var rightOdd = EndsOdd(right, length);
        if (goesBack && back.All(afterHind => afterHind) && longestStance < LongestStanceSeconds && !leftOdd && !rightOdd)
            reasons.Add(QualityReason.TwoCows);
        else if ((goesBack && (leftOdd || rightOdd)) || (leftOdd && rightOdd))
            reasons.Add(QualityReason.Turned);
        else if (goesBack || left.Concat(right).Any(visit => visit.Feet > 2))
            reasons.Add(QualityReason.BackedUp);
    }

    /// <summary>For each step back on a plate: whether it was made from a spot that both feet had used, so that another cow made it.</summary>
    private static IEnumerable<bool> Way(List<Visit> visits, double length)
    {
        for (var k = 0; k + 1 < visits.Count; k++)
        {
            if (visits[k + 1].X < visits[k].X - Visit.BackwardMetres)
                yield return visits[k].Feet % 2 == 0 || IsNearEdge(visits[k].X, length);
        }
    }

    /// <summary>Whether the last spot inside the plate was used by one foot only: no hind foot followed the fore foot there.</summary>
    private static bool EndsOdd(List<Visit> visits, double length) =>
        visits.Count > 0 && visits[^1].Feet % 2 == 1 && !IsNearEdge(visits[^1].X, length);

    private static bool IsNearEdge(double x, double length) => x < 0.22 || x > length - 0.22;

    private static double RoughWeight(CrossingFeet feet)
    {
        var highest = 0.0;
        foreach (var foot in feet.InOrder)
            highest = Math.Max(highest, foot.PeakKg / HighestFootPart);
        var total = 0.0;
        for (var i = 0; i < feet.Plates.Left.Count; i++)
            total = Math.Max(total, feet.Plates.Left.ForceKg[i] + feet.Plates.Right.ForceKg[i]);
        return Math.Max(highest, total / HighestTotalPart);
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
