namespace GaitWatch.Herd;

/// <summary>Names and words of follow-ups.</summary>
public static class FollowUpNames
{
    /// <summary>The task on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no task.</exception>
    public static string WireName(this FollowUpTask task) => task switch
    {
        FollowUpTask.WrapOff => "wrap-off",
        FollowUpTask.BlockCheck => "block-check",
        FollowUpTask.BlockOff => "block-off",
        FollowUpTask.Recheck => "recheck",
        _ => throw new ArgumentOutOfRangeException(nameof(task), task, "Not a task of the contract."),
    };

    /// <summary>What is to be done and why, as one sentence.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no cause.</exception>
    public static string InWords(this FollowUpCause cause) => cause switch
    {
        FollowUpCause.Wrap => "Take the wrap off: left on it does harm.",
        FollowUpCause.Block => "Look at the block: is it on, is it level, does she walk better? No better: call the veterinarian.",
        FollowUpCause.BlockWorn => "Take the block off.",
        FollowUpCause.SoftHorn => "Look at the new horn: trim what has hardened, free what is undermined.",
        FollowUpCause.Outcome => "See whether the treated foot has healed.",
        FollowUpCause.UnsafeBlock => "Look at the block: it may press on a sore claw.",
        FollowUpCause.SecondLook => "Look at her again and lift the foot: she was flagged for today and seen walking, her foot was not lifted.",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "Not a cause of a follow-up."),
    };
}
