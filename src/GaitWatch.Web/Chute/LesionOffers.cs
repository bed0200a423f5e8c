using System.Collections.Immutable;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>
/// The lesions in the order in which the chute offers them, each once, with the zone it usually lies in. Zones: the international
/// claw map; which come first, and where a lesion usually lies: common practice, no source.
/// </summary>
internal static class LesionOffers
{
    public static ImmutableArray<LesionOffer> All { get; } =
    [
        new(Lesion.SoleUlcer, LesionGroupName.Often, 4),
        new(Lesion.WhiteLineAbscess, LesionGroupName.Often, 3),
        new(Lesion.WhiteLineFissure, LesionGroupName.Often, 3),
        new(Lesion.DigitalDermatitis, LesionGroupName.Often, 10),
        new(Lesion.InterdigitalPhlegmon, LesionGroupName.Often, 0),
        new(Lesion.InterdigitalHyperplasia, LesionGroupName.Often, 0),
        new(Lesion.HeelHornErosion, LesionGroupName.Often, 6),
        new(Lesion.ForeignBody, LesionGroupName.Often, null),

        new(Lesion.CircumscribedSoleHaemorrhage, LesionGroupName.Sole, 4),
        new(Lesion.DiffuseSoleHaemorrhage, LesionGroupName.Sole, null),
        new(Lesion.SoleHaemorrhage, LesionGroupName.Sole, null),
        new(Lesion.DoubleSole, LesionGroupName.Sole, null),
        new(Lesion.ThinSole, LesionGroupName.Sole, 5),
        new(Lesion.BulbUlcer, LesionGroupName.Sole, 6),
        new(Lesion.ToeUlcer, LesionGroupName.Sole, 5),
        new(Lesion.ToeNecrosis, LesionGroupName.Sole, 1),
        new(Lesion.Ulcer, LesionGroupName.Sole, null),
        new(Lesion.WhiteLineDisease, LesionGroupName.Sole, null),

        new(Lesion.InterdigitalDermatitis, LesionGroupName.Skin, 0),
        new(Lesion.CoronetOrBulbSwelling, LesionGroupName.Skin, null),

        new(Lesion.VerticalHornFissure, LesionGroupName.Wall, null),
        new(Lesion.HorizontalHornFissure, LesionGroupName.Wall, null),
        new(Lesion.AxialHornFissure, LesionGroupName.Wall, null),
        new(Lesion.HornFissure, LesionGroupName.Wall, null),
        new(Lesion.AsymmetricClaws, LesionGroupName.Wall, null),
        new(Lesion.CorkscrewClaw, LesionGroupName.Wall, null),
        new(Lesion.ConcaveDorsalWall, LesionGroupName.Wall, null),
        new(Lesion.ScissorClaws, LesionGroupName.Wall, null),
        new(Lesion.Other, LesionGroupName.Wall, null),
    ];
}
