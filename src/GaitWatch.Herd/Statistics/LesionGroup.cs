namespace GaitWatch.Herd;

/// <summary>Lesions that one cause brings, so that a cluster of them points somewhere.</summary>
public enum LesionGroup
{
    /// <summary>White line lesions.</summary>
    WhiteLine,

    /// <summary>Ulcers and haemorrhages of the sole.</summary>
    Sole,

    /// <summary>Thin soles and toe lesions.</summary>
    ThinSole,

    /// <summary>Digital dermatitis.</summary>
    DigitalDermatitis,

    /// <summary>Other lesions of the skin, and heel horn erosion.</summary>
    Skin,

    /// <summary>Stones and other bodies.</summary>
    ForeignBody,
}
