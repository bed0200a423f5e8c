namespace GaitWatch.Lameness;

/// <summary>Names of recovery's values on the wire.</summary>
public static class RecoveryNames
{
    /// <summary>The status on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no status.</exception>
    public static string WireName(this RecoveryStatus status) => status switch
    {
        RecoveryStatus.TooEarly => "too-early",
        RecoveryStatus.Recovering => "recovering",
        RecoveryStatus.Recovered => "recovered",
        RecoveryStatus.Stalled => "stalled",
        RecoveryStatus.Worse => "worse",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, "Not a status of the contract."),
    };

    /// <summary>The mark on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no mark.</exception>
    public static string WireName(this RecoveryMarkKind mark) => mark switch
    {
        RecoveryMarkKind.Block => "block",
        RecoveryMarkKind.BlockOff => "block-off",
        RecoveryMarkKind.BlockLost => "block-lost",
        RecoveryMarkKind.Wrap => "wrap",
        RecoveryMarkKind.WrapOff => "wrap-off",
        RecoveryMarkKind.PainRelief => "pain-relief",
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "Not a mark of the contract."),
    };
}
