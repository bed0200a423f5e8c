using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>A passage that the platform's own device has summed up: one load a leg, and no raw samples.</summary>
/// <param name="DeviceId">The device's id of it, unique on the platform.</param>
/// <param name="Eid">The tag it read; null when none.</param>
/// <param name="StartedAt">First contact.</param>
/// <param name="EndedAt">Last lift.</param>
/// <param name="LoadKg">The share of body weight each leg carries, averaged over a stride, kg.</param>
public sealed record DevicePassage(string DeviceId, Eid? Eid, DateTimeOffset StartedAt, DateTimeOffset EndedAt, PerLeg<double> LoadKg)
{
    /// <summary>
    /// The passage this makes: shares from the four loads, weight as their sum, no error of the shares as none is known.
    /// A load of zero means that a leg was not measured and makes it <see cref="QualityReason.Incomplete"/>.
    /// </summary>
    /// <param name="platform">The platform's id.</param>
    /// <param name="options">Weight limits.</param>
    public Passage ToPassage(string platform, GaitOptions options)
    {
        var reasons = ImmutableArray.CreateBuilder<QualityReason>();
        var sum = LoadKg.Lf + LoadKg.Rf + LoadKg.Lh + LoadKg.Rh;
        var whole = LoadKg is { Lf: > 0, Rf: > 0, Lh: > 0, Rh: > 0 };
        if (!whole)
            reasons.Add(QualityReason.Incomplete);
        else if (sum < options.LightestCowKg || sum > options.HeaviestCowKg)
            reasons.Add(QualityReason.WeightImplausible);
        if (Eid is null)
            reasons.Add(QualityReason.NoTag);
        return new Passage
        {
            Id = $"{platform}.{DeviceId}",
            Platform = platform,
            Eid = Eid,
            StartedAt = StartedAt,
            EndedAt = EndedAt,
            Reasons = reasons.ToImmutable(),
            WeightKg = whole ? sum : null,
            Legs = LoadKg.Select(load => new LegLoad(load > 0 ? load : null, whole ? load / sum : null, null, null, null, load > 0 ? 1 : 0)),
        };
    }
}
