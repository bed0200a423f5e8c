namespace GaitWatch.Simulator;

/// <summary>Something that happens in a herd of the second source.</summary>
/// <param name="At">When.</param>
/// <param name="Cow">Her number.</param>
public abstract record SecondHerdEvent(DateTimeOffset At, string Cow);

/// <summary>A crossing whose loads the platform summed up.</summary>
/// <param name="At">When she has crossed.</param>
/// <param name="Cow">Who crossed.</param>
/// <param name="TagOf">Whose tag was read; null when none was.</param>
/// <param name="LoadKg">Load of each leg as the platform read it, kg.</param>
/// <param name="SoundShares">What the platform would have read of her shares were she sound and did she walk as she does on average.</param>
public sealed record SecondHerdCrossing(DateTimeOffset At, string Cow, string? TagOf, PerFoot<double> LoadKg, PerFoot<double> SoundShares)
    : SecondHerdEvent(At, Cow);

/// <summary>A foot that the trimmer or the farm treated.</summary>
/// <param name="At">When.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Foot">The foot.</param>
/// <param name="Block">Whether the sound claw got a block.</param>
public sealed record SecondHerdTreatment(DateTimeOffset At, string Cow, Foot Foot, bool Block) : SecondHerdEvent(At, Cow);

/// <summary>A milestone that the farm's register knows.</summary>
/// <param name="At">When.</param>
/// <param name="Cow">Her number.</param>
/// <param name="What">Which.</param>
public sealed record SecondHerdMilestone(DateTimeOffset At, string Cow, Milestone What) : SecondHerdEvent(At, Cow);

/// <summary>What the register knows of a cow.</summary>
public enum Milestone
{
    /// <summary>She is dried off and no longer crosses.</summary>
    DriedOff,

    /// <summary>She has calved and crosses again.</summary>
    Calved,

    /// <summary>She has left the herd.</summary>
    Left,
}
