namespace GaitWatch.Simulator;

/// <summary>A foot, or the leg above it, in the order in which everything of the simulator lists them.</summary>
public enum Foot
{
    /// <summary>Left fore.</summary>
    Lf,

    /// <summary>Right fore.</summary>
    Rf,

    /// <summary>Left hind.</summary>
    Lh,

    /// <summary>Right hind.</summary>
    Rh,
}

/// <summary>Which foot stands where.</summary>
public static class Feet
{
    /// <summary>All four, in order.</summary>
    public static IReadOnlyList<Foot> All { get; } = [Foot.Lf, Foot.Rf, Foot.Lh, Foot.Rh];

    /// <summary>True for the two on her left, which meet only the left plate.</summary>
    public static bool IsLeft(this Foot foot) => foot is Foot.Lf or Foot.Lh;

    /// <summary>True for the two in front.</summary>
    public static bool IsFore(this Foot foot) => foot is Foot.Lf or Foot.Rf;

    /// <summary>The foot of the same pair on the other side.</summary>
    public static Foot Opposite(this Foot foot) => foot switch
    {
        Foot.Lf => Foot.Rf,
        Foot.Rf => Foot.Lf,
        Foot.Lh => Foot.Rh,
        _ => Foot.Lh,
    };

    /// <summary>The word of the messages: <c>lf</c>, <c>rf</c>, <c>lh</c>, <c>rh</c>.</summary>
    public static string Word(this Foot foot) => foot switch
    {
        Foot.Lf => "lf",
        Foot.Rf => "rf",
        Foot.Lh => "lh",
        _ => "rh",
    };
}
