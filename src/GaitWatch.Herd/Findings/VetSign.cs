namespace GaitWatch.Herd;

/// <summary>
/// A sign that asks for the veterinarian the same day. Common practice, no source; local rules and the farm's veterinarian
/// decide. Names on the wire and words: <see cref="VetSigns"/>.
/// </summary>
public enum VetSign
{
    /// <summary>She puts no weight on the leg.</summary>
    NoWeightOnLeg,

    /// <summary>Swelling above the claw.</summary>
    SwellingAboveClaw,

    /// <summary>Swelling between the claws with fever or a foul smell.</summary>
    SwellingBetweenClaws,

    /// <summary>Pus, a deep smell, or bone, tendon or joint suspected.</summary>
    DeepInfection,

    /// <summary>Both claws of the foot are sore: none is sound for a block.</summary>
    BothClawsSore,

    /// <summary>Bleeding that does not stop.</summary>
    BleedingDoesNotStop,

    /// <summary>Clearly lame, and nothing in the foot: the trouble is higher up the leg.</summary>
    LameNothingInFoot,

    /// <summary>Not better when the block was looked at.</summary>
    NotBetterAtBlockCheck,

    /// <summary>Down, feverish or off feed.</summary>
    DownFeverishOffFeed,

    /// <summary>Several cows lame with blisters, drooling or fever: foot-and-mouth disease must be thought of, and is notifiable.</summary>
    BlistersInHerd,
}
