using GaitWatch.Gait;

namespace GaitWatch.Web;

/// <summary>Words about passages.</summary>
internal static class PassageTexts
{
    /// <summary>Why a passage was not used.</summary>
    public static string Reason(QualityReason reason) => reason switch
    {
        QualityReason.NotACow => "not a cow: too light or too few feet",
        QualityReason.TwoCows => "two cows nose to tail",
        QualityReason.GapInFrames => "part of the measurement is missing",
        QualityReason.Turned => "turned on the platform",
        QualityReason.BackedUp => "stepped back",
        QualityReason.Stopped => "stood still for over 3\u00A0s",
        QualityReason.TooFast => "too fast",
        QualityReason.Incomplete => "not all four feet measured",
        QualityReason.FootfallsUnresolved => "feet too close to tell apart",
        QualityReason.WeightImplausible => "weight does not fit her",
        QualityReason.TwoTags => "two tags read",
        QualityReason.NoTag => "no tag read",
        QualityReason.WrongCowSuspected => "may be another cow",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason of the contract."),
    };

    public static string Reasons(IEnumerable<string> wireNames) =>
        string.Join("; ", wireNames.Select(name => QualityReasons.TryParseWireName(name, out var reason) ? Reason(reason) : name));

    public const string Used = "used";
}
