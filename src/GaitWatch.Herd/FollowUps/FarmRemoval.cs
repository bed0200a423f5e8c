namespace GaitWatch.Herd;

/// <summary>The farm itself took something off a foot, and said so by doing a follow-up.</summary>
/// <param name="Finding">The finding that had put it on.</param>
/// <param name="At">When it came off.</param>
/// <param name="What"><see cref="FindingAction.WrapOff"/> or <see cref="FindingAction.BlockOff"/>.</param>
public sealed record FarmRemoval(Finding Finding, DateTimeOffset At, FindingAction What);
