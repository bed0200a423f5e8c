namespace GaitWatch.Herd;

/// <summary>What a lesion is a lesion of; it decides which of a finding's fields can be said at all.</summary>
public enum LesionSite
{
    /// <summary>Horn of the sole, the white line or the heel.</summary>
    SoleHorn,

    /// <summary>Horn of the wall.</summary>
    WallHorn,

    /// <summary>The shape of the whole claw.</summary>
    ClawShape,

    /// <summary>Skin: of the foot, not of one claw.</summary>
    Skin,

    /// <summary>Anything else, and nothing at all.</summary>
    Elsewhere,
}
