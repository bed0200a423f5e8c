namespace GaitWatch.Herd;

/// <summary>Something in a finding that can happen and should not be left so. The finding is kept; the warning is told at once.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Field">The field that shows it.</param>
/// <param name="Sentence">What is seen and what to do.</param>
public sealed record FindingWarning(FindingWarningKind Kind, string Field, string Sentence)
{
    /// <summary>The kind on the wire.</summary>
    public string WireName => Kind switch
    {
        FindingWarningKind.UnsafeBlock => "unsafe-block",
        FindingWarningKind.CallVeterinarian => "call-veterinarian",
        _ => "no-withdrawal-date",
    };
}
