using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>Whose a crossing is, apart from what was measured of it.</summary>
internal static class PassageTag
{
    /// <summary>Nobody's: no tag was read.</summary>
    public static TagVerdict None { get; } = new(null, QualityReason.NoTag);

    /// <summary>What a passage says.</summary>
    public static TagVerdict Of(Passage passage) => new(
        passage.Eid,
        passage.Reasons.Contains(QualityReason.TwoTags) ? QualityReason.TwoTags
        : passage.Reasons.Contains(QualityReason.NoTag) ? QualityReason.NoTag
        : null);

    /// <summary>The passage as another's, or nobody's; what was measured stays.</summary>
    public static Passage Give(Passage passage, TagVerdict tag)
    {
        var bare = passage with { Eid = tag.Eid, Reasons = [.. passage.Reasons.Where(reason => reason is not (QualityReason.TwoTags or QualityReason.NoTag))] };
        return tag.Reason is { } reason ? bare.With(reason) : bare;
    }
}
