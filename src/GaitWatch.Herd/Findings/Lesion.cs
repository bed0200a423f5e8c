namespace GaitWatch.Herd;

/// <summary>
/// What was found in a foot. Codes and names: ICAR Claw Health Atlas, 2nd ed. 2020, and its group codes; beside them what the
/// Atlas has no code for. Codes on the wire and words: <see cref="Lesions"/>.
/// </summary>
public enum Lesion
{
    /// <summary>AC: one claw of the foot clearly unlike the other in length, width or height.</summary>
    AsymmetricClaws,

    /// <summary>BU: ulcer of the bulb.</summary>
    BulbUlcer,

    /// <summary>CC: inner or outer wall twisted, the tip rolling up.</summary>
    CorkscrewClaw,

    /// <summary>CD: the front wall is hollow instead of straight.</summary>
    ConcaveDorsalWall,

    /// <summary>DD: infection of the skin above the claws, staged by <see cref="MStage"/>.</summary>
    DigitalDermatitis,

    /// <summary>DS: two or more layers of sole horn with a gap between.</summary>
    DoubleSole,

    /// <summary>HFA: crack along the inner wall.</summary>
    AxialHornFissure,

    /// <summary>HFH: crack across the wall.</summary>
    HorizontalHornFissure,

    /// <summary>HFV: crack down the outer or front wall.</summary>
    VerticalHornFissure,

    /// <summary>HF: a crack in the wall, direction not said.</summary>
    HornFissure,

    /// <summary>HHE: the horn of the heel is pitted or furrowed.</summary>
    HeelHornErosion,

    /// <summary>ID: shallow inflammation of the skin between the claws.</summary>
    InterdigitalDermatitis,

    /// <summary>IH: growth of skin between the claws.</summary>
    InterdigitalHyperplasia,

    /// <summary>IP: painful, evil-smelling swelling of the foot with sudden lameness, often with fever.</summary>
    InterdigitalPhlegmon,

    /// <summary>SC: the tips of the two claws cross.</summary>
    ScissorClaws,

    /// <summary>SH: blood in the horn of sole or white line, extent not said.</summary>
    SoleHaemorrhage,

    /// <summary>SHC: the same with a clear border.</summary>
    CircumscribedSoleHaemorrhage,

    /// <summary>SHD: the same without a clear border.</summary>
    DiffuseSoleHaemorrhage,

    /// <summary>SU: the sole horn is broken through in the usual place.</summary>
    SoleUlcer,

    /// <summary>SW: swelling above the claw, on one side or both.</summary>
    CoronetOrBulbSwelling,

    /// <summary>TN: dead tissue at the toe, with or without bone.</summary>
    ToeNecrosis,

    /// <summary>TS: the sole gives under the thumb.</summary>
    ThinSole,

    /// <summary>TU: ulcer at the toe.</summary>
    ToeUlcer,

    /// <summary>U: an ulcer, place not said.</summary>
    Ulcer,

    /// <summary>WL: disease of the white line, kind not said.</summary>
    WhiteLineDisease,

    /// <summary>WLA: pus under the white line.</summary>
    WhiteLineAbscess,

    /// <summary>WLF: the white line has come apart.</summary>
    WhiteLineFissure,

    /// <summary>A stone, nail, tooth or other body in the claw. Wire: <c>foreign-body</c>.</summary>
    ForeignBody,

    /// <summary>Something that has no code, said in the note. Wire: <c>other</c>.</summary>
    Other,

    /// <summary>The foot was lifted and nothing was found. Wire: <c>none</c>.</summary>
    None,
}
