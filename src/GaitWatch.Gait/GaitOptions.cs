namespace GaitWatch.Gait;

/// <summary>Settings of the analysis that a farm may change.</summary>
public sealed record GaitOptions
{
    /// <summary>A body weight below this is no cow's, kg. Default 250 (contract).</summary>
    public double LightestCowKg { get; init; } = 250;

    /// <summary>A body weight above this is not believed, kg. Default 1,100 (contract).</summary>
    public double HeaviestCowKg { get; init; } = 1100;

    /// <summary>How long before first contact a tag may have been read to name the cow. Default 10 s (contract).</summary>
    public TimeSpan TagWindow { get; init; } = TimeSpan.FromSeconds(10);
}
