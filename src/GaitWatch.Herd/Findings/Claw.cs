namespace GaitWatch.Herd;

/// <summary>Which claw of a foot. Wire: <c>inner</c>, <c>outer</c>, <c>both</c>.</summary>
public enum Claw
{
    /// <summary>The one nearer the cow's middle.</summary>
    Inner,

    /// <summary>The one farther from it; behind, the one that carries most and is sore most often.</summary>
    Outer,

    /// <summary>Both.</summary>
    Both,
}
