namespace GaitWatch.Herd;

/// <summary>
/// Stage of digital dermatitis. Sources: Doepfer D. et al. 1997, Vet Rec 140:620; Berry S.L. et al. 2012, Vet J 193:654; ICAR
/// Claw Health Atlas, Appendix 1.
/// </summary>
public enum MStage
{
    /// <summary>Healthy skin.</summary>
    M0,

    /// <summary>A small red spot, under 2 cm. Active.</summary>
    M1,

    /// <summary>An open, raw, painful spot of 2 cm or more. Active.</summary>
    M2,

    /// <summary>Healing under a scab.</summary>
    M3,

    /// <summary>Thickened skin that stays: it can break out again.</summary>
    M4,

    /// <summary>Thickened skin with a small red spot in it. Active. Wire: <c>M4.1</c>.</summary>
    M41,
}
