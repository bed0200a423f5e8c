namespace GaitWatch.Lameness;

/// <summary>Why an alert was closed.</summary>
public enum AlertCloseReason
{
    /// <summary>By hand: the foot was lifted and nothing found. Wire: <c>lifted-nothing-found</c>.</summary>
    LiftedNothingFound,

    /// <summary>By hand: she was seen walking sound. Wire: <c>seen-walking-sound</c>.</summary>
    SeenWalkingSound,

    /// <summary>By hand: the farm treated her. Wire: <c>treated-by-farm</c>.</summary>
    TreatedByFarm,

    /// <summary>By hand: it was another cow. Wire: <c>wrong-cow</c>.</summary>
    WrongCow,

    /// <summary>By hand or by the register: she left the herd. Wire: <c>left-herd</c>.</summary>
    LeftHerd,

    /// <summary>By hand: something else, said in the note. Wire: <c>other</c>.</summary>
    Other,

    /// <summary>By GaitWatch: her load is shown to be back to normal. Wire: <c>load-normal</c>.</summary>
    LoadNormal,
}
