namespace GaitWatch.Herd;

/// <summary>A finding was entered. <see cref="FarmWrite.At"/> is the finding's instant.</summary>
/// <param name="Finding">What was found and done.</param>
/// <param name="EnteredAt">When it was entered.</param>
public sealed record FindingWrite(Finding Finding, DateTimeOffset EnteredAt) : FarmWrite(Finding.At);

/// <summary>A finding was corrected; the earlier version is kept.</summary>
/// <param name="Finding">How it reads now; its id names what is corrected.</param>
/// <param name="EnteredAt">When the correction was entered: of several the latest holds.</param>
public sealed record FindingCorrectionWrite(Finding Finding, DateTimeOffset EnteredAt) : FarmWrite(Finding.At);

/// <summary>A finding was taken back: it was entered by mistake, and nothing of it was found or done. Its wordings are kept.</summary>
/// <param name="Finding">How it read when it was taken back; its id names what is taken back.</param>
/// <param name="EnteredAt">When it was taken back: of corrections and withdrawals the latest holds.</param>
public sealed record FindingWithdrawalWrite(Finding Finding, DateTimeOffset EnteredAt) : FarmWrite(Finding.At);
