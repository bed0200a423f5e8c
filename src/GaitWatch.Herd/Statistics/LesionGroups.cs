namespace GaitWatch.Herd;

/// <summary>Which lesion is in which group, and where a cluster of it points. Common practice, no source.</summary>
public static class LesionGroups
{
    /// <summary>The group of a lesion; null when none is known for it.</summary>
    public static LesionGroup? Group(this Lesion lesion) => lesion switch
    {
        Lesion.WhiteLineAbscess or Lesion.WhiteLineDisease or Lesion.WhiteLineFissure => LesionGroup.WhiteLine,
        Lesion.SoleUlcer or Lesion.Ulcer or Lesion.BulbUlcer or Lesion.SoleHaemorrhage or Lesion.CircumscribedSoleHaemorrhage
            or Lesion.DiffuseSoleHaemorrhage or Lesion.DoubleSole => LesionGroup.Sole,
        Lesion.ThinSole or Lesion.ToeUlcer or Lesion.ToeNecrosis => LesionGroup.ThinSole,
        Lesion.DigitalDermatitis => LesionGroup.DigitalDermatitis,
        Lesion.InterdigitalDermatitis or Lesion.InterdigitalHyperplasia or Lesion.InterdigitalPhlegmon or Lesion.HeelHornErosion => LesionGroup.Skin,
        Lesion.ForeignBody => LesionGroup.ForeignBody,
        _ => null,
    };

    /// <summary>The group in words, plural: "white line lesions".</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no group.</exception>
    public static string InWords(this LesionGroup group, int count) => (group, count) switch
    {
        (LesionGroup.WhiteLine, 1) => "white line lesion",
        (LesionGroup.WhiteLine, _) => "white line lesions",
        (LesionGroup.Sole, 1) => "sole lesion",
        (LesionGroup.Sole, _) => "sole lesions",
        (LesionGroup.ThinSole, 1) => "thin sole or toe lesion",
        (LesionGroup.ThinSole, _) => "thin sole and toe lesions",
        (LesionGroup.DigitalDermatitis, 1) => "case of digital dermatitis",
        (LesionGroup.DigitalDermatitis, _) => "cases of digital dermatitis",
        (LesionGroup.Skin, 1) => "skin or heel lesion",
        (LesionGroup.Skin, _) => "skin and heel lesions",
        (LesionGroup.ForeignBody, 1) => "foreign body",
        (LesionGroup.ForeignBody, _) => "foreign bodies",
        _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Not a group of lesions."),
    };

    /// <summary>Where to look.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no group.</exception>
    public static string LookAt(this LesionGroup group) => group switch
    {
        LesionGroup.WhiteLine => "the walkway and the turns",
        LesionGroup.Sole => "lying comfort, standing times and when they were last trimmed",
        LesionGroup.ThinSole => "rough floors, walking distances and how much horn is taken",
        LesionGroup.DigitalDermatitis => "the foot bath, and how clean and dry the feet are",
        LesionGroup.Skin => "how wet and dirty the passages are",
        LesionGroup.ForeignBody => "loose stones on the walkway and where it meets concrete",
        _ => throw new ArgumentOutOfRangeException(nameof(group), group, "Not a group of lesions."),
    };
}
