namespace GaitWatch.Herd;

/// <summary>Names of <see cref="TrimListReason"/> on the wire.</summary>
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
}
