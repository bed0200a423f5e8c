namespace GaitWatch.Herd;

/// <summary>Names of <see cref="VisitHalf"/> on the wire.</summary>
public static class VisitNames
{
    /// <summary>The half on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no half.</exception>
    public static string WireName(this VisitHalf half) => half switch
    {
        VisitHalf.Am => "am",
        VisitHalf.Pm => "pm",
        _ => throw new ArgumentOutOfRangeException(nameof(half), half, "Not a half of the contract."),
    };
}
