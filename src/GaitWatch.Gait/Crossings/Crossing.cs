using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>A stretch of load between two empty ones, analysed; whose it was is not yet known.</summary>
public sealed record Crossing
{
    /// <summary>First contact.</summary>
    public required DateTimeOffset FirstContact { get; init; }

    /// <summary>Last lift.</summary>
    public required DateTimeOffset LastLift { get; init; }

    /// <summary>What speaks against using it, the decisive one first; tags are not looked at yet.</summary>
    public ImmutableArray<QualityReason> Reasons { get; init; } = [];

    /// <summary>Best estimate of body weight, kg.</summary>
    public double? WeightKg { get; init; }

    /// <summary>Mean stride time, seconds.</summary>
    public double? StrideSeconds { get; init; }

    /// <summary>Mean speed between first and last footfall, metres per second.</summary>
    public double? SpeedMetresPerSecond { get; init; }

    /// <summary>What each leg did.</summary>
    public PerLeg<LegLoad> Legs { get; init; }

    /// <summary>Every footfall that was found, in order of contact, with its force curve.</summary>
    public ImmutableArray<Footfall> Footfalls { get; init; } = [];

    /// <summary>What it tells of the left plate's ends; null when it was no good walk or no leg stood wholly there twice.</summary>
    public PlateEnds? LeftEnds { get; init; }

    /// <summary>What it tells of the right plate's ends; null when it was no good walk or no leg stood wholly there twice.</summary>
    public PlateEnds? RightEnds { get; init; }

    /// <summary>The passage it makes on a platform, once its tag is told.</summary>
    /// <param name="platform">The platform's id.</param>
    /// <param name="tag">Whose crossing it is.</param>
    public Passage ToPassage(string platform, TagVerdict tag)
    {
        var passage = new Passage
        {
            Id = PassageId.Of(platform, FirstContact),
            Platform = platform,
            Eid = tag.Eid,
            StartedAt = FirstContact,
            EndedAt = LastLift,
            Reasons = Reasons,
            WeightKg = WeightKg,
            StrideSeconds = StrideSeconds,
            SpeedMetresPerSecond = SpeedMetresPerSecond,
            Legs = Legs,
            LeftEnds = LeftEnds,
            RightEnds = RightEnds,
        };
        return tag.Reason is { } reason ? passage.With(reason) : passage;
    }
}
