namespace GaitWatch.Gait;

/// <summary>One of a cow's four legs, named from the cow's own left and right.</summary>
/// <remarks>The order is the order of the wire contract (<c>lf rf lh rh</c>) and of every <see cref="PerLeg{T}"/>.</remarks>
public enum Leg
{
    /// <summary>Left fore, <c>lf</c> on the wire.</summary>
    Lf,

    /// <summary>Right fore, <c>rf</c> on the wire.</summary>
    Rf,

    /// <summary>Left hind, <c>lh</c> on the wire.</summary>
    Lh,

    /// <summary>Right hind, <c>rh</c> on the wire.</summary>
    Rh,
}
