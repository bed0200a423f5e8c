namespace GaitWatch.Herd;

/// <summary>What kind of thing a warning is about.</summary>
public enum FindingWarningKind
{
    /// <summary>A block may press on a sore claw: to be looked at within days. Wire: <c>unsafe-block</c>.</summary>
    UnsafeBlock,

    /// <summary>A sign asks for the veterinarian. Wire: <c>call-veterinarian</c>.</summary>
    CallVeterinarian,

    /// <summary>A medicine was given and no withdrawal date entered. Wire: <c>no-withdrawal-date</c>.</summary>
    NoWithdrawalDate,
}
