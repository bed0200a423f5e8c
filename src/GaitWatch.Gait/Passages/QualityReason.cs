namespace GaitWatch.Gait;

/// <summary>Why a passage is not used. A reason's number is its rank: of several, the lowest decides and is listed first.</summary>
public enum QualityReason
{
    /// <summary>Too light, too few feet, or feet too close together for a cow: a calf, a dog, a person.</summary>
    NotACow,

    /// <summary>More feet, or feet further apart, than one cow has: nose to tail.</summary>
    TwoCows,

    /// <summary>Samples are missing while a plate was loaded.</summary>
    GapInFrames,

    /// <summary>She turned on the platform: feet leave where they came in.</summary>
    Turned,

    /// <summary>A foot was set down behind its last place.</summary>
    BackedUp,

    /// <summary>A foot stood for more than 3 seconds.</summary>
    Stopped,

    /// <summary>Over 2.0 m/s, or feet on the ground for less than half of the stride.</summary>
    TooFast,

    /// <summary>Not all four legs gave a whole footfall.</summary>
    Incomplete,

    /// <summary>The load could not be split between the feet.</summary>
    FootfallsUnresolved,

    /// <summary>Body weight outside what a cow has, or too far from her own recent weight.</summary>
    WeightImplausible,

    /// <summary>Two tags were waiting at first contact.</summary>
    TwoTags,

    /// <summary>No tag was read for this crossing.</summary>
    NoTag,

    /// <summary>Weight or load distribution do not fit the cow whose tag was read.</summary>
    WrongCowSuspected,
}
