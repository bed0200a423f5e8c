using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Facts about legs: their order, names on the wire, and neighbours.</summary>
public static class Legs
{
    /// <summary>All four, in the order of the wire contract.</summary>
    public static ImmutableArray<Leg> All { get; } = [Leg.Lf, Leg.Rf, Leg.Lh, Leg.Rh];

    /// <summary>The leg's name on the wire: <c>lf</c>, <c>rf</c>, <c>lh</c> or <c>rh</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the four legs.</exception>
    public static string WireName(this Leg leg) => leg switch
    {
        Leg.Lf => "lf",
        Leg.Rf => "rf",
        Leg.Lh => "lh",
        Leg.Rh => "rh",
        _ => throw new ArgumentOutOfRangeException(nameof(leg), leg, "A leg is one of Lf, Rf, Lh, Rh."),
    };

    /// <summary>The leg in words for a person: "left fore", "right hind".</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the four legs.</exception>
    public static string InWords(this Leg leg) => leg switch
    {
        Leg.Lf => "left fore",
        Leg.Rf => "right fore",
        Leg.Lh => "left hind",
        Leg.Rh => "right hind",
        _ => throw new ArgumentOutOfRangeException(nameof(leg), leg, "A leg is one of Lf, Rf, Lh, Rh."),
    };

    /// <summary>Reads a wire name; false when the text is none of <c>lf rf lh rh</c>.</summary>
    public static bool TryParseWireName(string? text, out Leg leg)
    {
        foreach (var candidate in All)
        {
            if (candidate.WireName() == text)
            {
                leg = candidate;
                return true;
            }
        }

        leg = default;
        return false;
    }

    /// <summary>Whether the leg is one of the two in front.</summary>
    public static bool IsFore(this Leg leg) => leg is Leg.Lf or Leg.Rf;

    /// <summary>Whether the leg is one of the two on the cow's left.</summary>
    public static bool IsLeft(this Leg leg) => leg is Leg.Lf or Leg.Lh;

    /// <summary>The other leg of the same pair: left fore for right fore, and so on.</summary>
    public static Leg Opposite(this Leg leg) => leg switch
    {
        Leg.Lf => Leg.Rf,
        Leg.Rf => Leg.Lf,
        Leg.Lh => Leg.Rh,
        _ => Leg.Lh,
    };
}
