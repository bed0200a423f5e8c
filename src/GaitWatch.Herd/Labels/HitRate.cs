namespace GaitWatch.Herd;

/// <summary>How often flags were true, of those whose foot was lifted.</summary>
/// <param name="Right">What makes a cow lame, on the named leg.</param>
/// <param name="Minor">A minor lesion on the named leg.</param>
/// <param name="OtherLeg">What makes a cow lame, on another leg.</param>
/// <param name="NothingFound">Nothing.</param>
public sealed record HitRate(int Right, int Minor, int OtherLeg, int NothingFound)
{
    /// <summary>How many feet were lifted.</summary>
    public int Lifted => Right + Minor + OtherLeg + NothingFound;

    /// <summary>Right flags of all lifted; its interval is Wilson's.</summary>
    public Proportion Hits => new(Right, Lifted);

    /// <summary>The counts of some labels.</summary>
    public static HitRate Of(IEnumerable<AlertLabel> labels)
    {
        var counts = labels.CountBy(label => label.Kind).ToDictionary();
        int Count(LabelKind kind) => counts.GetValueOrDefault(kind);
        return new HitRate(Count(LabelKind.Right), Count(LabelKind.Minor), Count(LabelKind.OtherLeg), Count(LabelKind.NothingFound));
    }
}
