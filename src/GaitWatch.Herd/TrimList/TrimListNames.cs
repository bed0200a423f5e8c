namespace GaitWatch.Herd;

/// <summary>Names of <see cref="TrimListReason"/> and <see cref="TrimListHand"/> on the wire.</summary>
public static class TrimListNames
{
    /// <summary>The reason on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no reason.</exception>
    public static string WireName(this TrimListReason reason) => reason switch
    {
        TrimListReason.NotRecovering => "not-recovering",
        TrimListReason.Alert => "alert",
        TrimListReason.Recheck => "recheck",
        TrimListReason.BlockCheck => "block-check",
        TrimListReason.BlockOff => "block-off",
        TrimListReason.WrapOff => "wrap-off",
        TrimListReason.Routine => "routine",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason of the contract."),
    };

    /// <summary>The decision on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no decision.</exception>
    public static string WireName(this TrimListHand hand) => hand switch
    {
        TrimListHand.Pinned => "pinned",
        TrimListHand.Removed => "removed",
        TrimListHand.AsRule => "as-rule",
        _ => throw new ArgumentOutOfRangeException(nameof(hand), hand, "Not a decision about a list."),
    };
}
