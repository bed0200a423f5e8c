namespace GaitWatch.Gait;

/// <summary>The two plates of a twin plate, as the cow walks: her left feet meet only the left plate.</summary>
public enum PlateSide
{
    /// <summary>The plate under her left feet.</summary>
    Left,

    /// <summary>The plate under her right feet.</summary>
    Right,
}
