namespace GaitWatch.Simulator;

/// <summary>A footfall as planned, placed in the animal's stride phase: strides done, a real number.</summary>
/// <param name="Foot">Which foot.</param>
/// <param name="ContactPhase">Phase at which it comes down.</param>
/// <param name="LiftPhase">Phase at which it leaves.</param>
/// <param name="X">Where its middle stands, m.</param>
/// <param name="MeanKg">Mean force over the stance, kg.</param>
/// <param name="Shape">The force's course.</param>
/// <param name="StrideSeconds">The one stride centred on this stance; null where that means nothing.</param>
internal sealed record Step(Foot Foot, double ContactPhase, double LiftPhase, double X, double MeanKg, ForceShape Shape, double? StrideSeconds)
{
    /// <summary>True when it comes down on the left plate: her left feet, unless she faces the entry.</summary>
    public bool IsOnLeftPlate { get; init; } = Foot.IsLeft();

    /// <summary>False for a foot set down beside the platform.</summary>
    public bool MeetsPlatform { get; init; } = true;

    /// <summary>How far the centre of pressure travels from heel to toe over the stance, m.</summary>
    public double TravelMetres { get; init; } = 0.05;

    /// <summary>Half the length of the foot on the ground, m: a cow's claws are about 13 cm long (common practice, no source).</summary>
    public double HalfLengthMetres { get; init; } = 0.065;
}

/// <summary>One animal's way over the platform.</summary>
/// <param name="WeightKg">Weight, kg.</param>
/// <param name="StandingShares">How it shares its weight while it stands still.</param>
/// <param name="Steps">Its footfalls.</param>
/// <param name="Phase">Its stride phase at each tick; it may stand still and run backwards.</param>
/// <param name="Rest">At each tick, 0 while it walks to 1 while it stands still; null when it only walks.</param>
/// <param name="Presence">At each tick, the part of its weight that it carries on these steps: below 1 while it shuffles round from one set of steps to another; null for 1 throughout.</param>
internal sealed record Animal(
    double WeightKg, PerFoot<double> StandingShares, IReadOnlyList<Step> Steps, double[] Phase, double[]? Rest = null, double[]? Presence = null);
