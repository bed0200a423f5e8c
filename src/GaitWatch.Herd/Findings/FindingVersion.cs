namespace GaitWatch.Herd;

/// <summary>One wording of a finding.</summary>
/// <param name="Finding">How it read.</param>
/// <param name="EnteredAt">From when.</param>
/// <param name="IsCorrection">Whether it corrected an earlier one.</param>
public sealed record FindingVersion(Finding Finding, DateTimeOffset EnteredAt, bool IsCorrection)
{
    /// <summary>Whether from then on the finding counted no more.</summary>
    public bool IsWithdrawal { get; init; }
}
