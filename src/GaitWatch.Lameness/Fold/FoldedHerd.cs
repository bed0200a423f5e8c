namespace GaitWatch.Lameness;

/// <summary>A herd as far as its history is folded.</summary>
/// <param name="Model">What all cows share.</param>
/// <param name="Cows">The cows by number.</param>
/// <param name="Platforms">What moves everybody, by platform.</param>
internal sealed record FoldedHerd(HerdModel Model, Dictionary<string, CowWatch> Cows, SortedDictionary<string, PlatformMovement> Platforms)
{
    /// <summary>A herd of which nothing is known.</summary>
    public FoldedHerd(HerdModel model)
        : this(model, new Dictionary<string, CowWatch>(StringComparer.Ordinal), new SortedDictionary<string, PlatformMovement>(StringComparer.Ordinal))
    {
    }

    /// <summary>The cows in one and the same order, however they came.</summary>
    public IEnumerable<CowWatch> Ordered => Cows.Values.OrderBy(cow => cow.Name, StringComparer.Ordinal);

    /// <summary>A cow's watch, begun when she is new.</summary>
    public CowWatch CowOf(string name)
    {
        if (!Cows.TryGetValue(name, out var cow))
            Cows.Add(name, cow = new CowWatch(name, Model));
        return cow;
    }

    /// <summary>A platform's movement, begun when it is new.</summary>
    public PlatformMovement PlatformOf(string name)
    {
        if (!Platforms.TryGetValue(name, out var platform))
            Platforms.Add(name, platform = new PlatformMovement(Platforms.Count == 0));
        return platform;
    }
}
