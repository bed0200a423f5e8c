namespace GaitWatch.Gait;

/// <summary>Names of <see cref="QualityReason"/> on the wire.</summary>
public static class QualityReasons
{
    /// <summary>The reason's name on the wire, such as <c>gap-in-frames</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no reason.</exception>
    public static string WireName(this QualityReason reason) => reason switch
    {
        QualityReason.NotACow => "not-a-cow",
        QualityReason.TwoCows => "two-cows",
        QualityReason.GapInFrames => "gap-in-frames",
        QualityReason.Turned => "turned",
        QualityReason.BackedUp => "backed-up",
        QualityReason.Stopped => "stopped",
        QualityReason.TooFast => "too-fast",
        QualityReason.Incomplete => "incomplete",
        QualityReason.FootfallsUnresolved => "footfalls-unresolved",
        QualityReason.WeightImplausible => "weight-implausible",
        QualityReason.TwoTags => "two-tags",
        QualityReason.NoTag => "no-tag",
        QualityReason.WrongCowSuspected => "wrong-cow-suspected",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason of the contract."),
    };

    /// <summary>Reads a wire name; false when it is no reason of the contract.</summary>
    public static bool TryParseWireName(string? text, out QualityReason reason)
    {
        foreach (var candidate in Enum.GetValues<QualityReason>())
        {
            if (candidate.WireName() == text)
            {
                reason = candidate;
                return true;
            }
        }

        reason = default;
        return false;
    }
}
