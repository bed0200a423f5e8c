namespace GaitWatch.Gait;

/// <summary>How a foot came or went, as the plate sees it.</summary>
internal enum FootEvent
{
    /// <summary>It was alone on the plate then.</summary>
    Alone,

    /// <summary>Another foot stood elsewhere on the plate meanwhile; load and moment tell the two apart.</summary>
    Transfer,

    /// <summary>Another foot stood on the same spot; load and moment cannot tell the two apart.</summary>
    Swap,
}

/// <summary>A foot's stay on one plate while it is worked out. Times are samples of the plate's signal, broken ones included.</summary>
internal sealed class FootOnPlate
{
    /// <summary>The plate it stands on.</summary>
    public required PlateSide Side { get; init; }

    /// <summary>When it came down.</summary>
    public double Contact { get; set; }

    /// <summary>When it left.</summary>
    public double Lift { get; set; }

    /// <summary>How it came down.</summary>
    public FootEvent ContactEvent { get; set; }

    /// <summary>How it left.</summary>
    public FootEvent LiftEvent { get; set; }

    /// <summary>Where it stands, in the mean over its single support, metres from the entry edge.</summary>
    public double PlaceX { get; set; }

    /// <summary>Where its centre of pressure is over the stance.</summary>
    public PressureLine Line { get; set; }

    /// <summary>Fore or hind; null while unknown.</summary>
    public bool? IsFore { get; set; }

    /// <summary>The leg, once fore or hind is known.</summary>
    public Leg? Leg => IsFore is not { } fore ? null
        : fore ? (Side == PlateSide.Left ? Gait.Leg.Lf : Gait.Leg.Rf) : (Side == PlateSide.Left ? Gait.Leg.Lh : Gait.Leg.Rh);

    /// <summary>Whether it stood partly beyond an edge of the plate.</summary>
    public bool IsOnEdge { get; set; }

    /// <summary>Whether it presses on the plate from beyond an edge without ever being alone there: its place is known, its times are not.</summary>
    public bool IsHidden { get; init; }

    /// <summary>Whether its load could be told from another's.</summary>
    public bool IsResolved { get; set; } = true;

    /// <summary>Whether its figures may be used.</summary>
    public bool IsWhole => IsResolved && !IsOnEdge;

    /// <summary>Sample of the first value of <see cref="Force"/>.</summary>
    public int ForceStart { get; set; }

    /// <summary>Its force over time, kg.</summary>
    public double[] Force { get; set; } = [];

    /// <summary>Force over time, kg s.</summary>
    public double ImpulseKgSeconds { get; set; }

    /// <summary>Largest force, kg.</summary>
    public double PeakKg { get; set; }

    /// <summary>Its number in the fit of the places.</summary>
    public int Number { get; set; }

    /// <summary>Duration of the stride centred on this stance, seconds; null when it cannot be told.</summary>
    public double? StrideSeconds { get; set; }

    /// <summary>Middle of the stance.</summary>
    public double Middle => 0.5 * (Contact + Lift);

    /// <summary>How far through the stance a sample is, 0 to 1, held at its ends.</summary>
    public double PhaseAt(double sample) => Lift > Contact ? Math.Clamp((sample - Contact) / (Lift - Contact), 0, 1) : 0.5;

    /// <summary>Where its centre of pressure is at a sample.</summary>
    public double XAt(double sample) => Line.At(PhaseAt(sample));
}

/// <summary>The way of a foot's centre of pressure, heel to toe, over the stance.</summary>
/// <param name="Middle">Mean place over the stance, metres from the entry edge.</param>
/// <param name="Slope">Metres travelled over the whole stance by the straight part.</param>
/// <param name="Bend">Metres of the quadratic part.</param>
/// <param name="Twist">Metres of the cubic part.</param>
/// <param name="Fourth">Metres of the part of fourth degree.</param>
/// <param name="Fifth">Metres of the part of fifth degree.</param>
internal readonly record struct PressureLine(double Middle, double Slope, double Bend, double Twist, double Fourth = 0, double Fifth = 0)
{
    /// <summary>The straight part at a stance phase.</summary>
    public static double Straight(double phase) => phase - 0.5;

    /// <summary>The quadratic part, of mean zero.</summary>
    public static double Bent(double phase) => ((phase - 0.5) * (phase - 0.5)) - (1.0 / 12);

    /// <summary>The cubic part, orthogonal to the straight one.</summary>
    public static double Twisted(double phase)
    {
        var p = phase - 0.5;
        return p * ((p * p) - 0.15);
    }

    /// <summary>The part of fourth degree, orthogonal to those of lower degree; 1 at both ends (Legendre).</summary>
    public static double OfFourth(double phase)
    {
        var square = 4 * (phase - 0.5) * (phase - 0.5);
        return ((((35 * square) - 30) * square) + 3) / 8;
    }

    /// <summary>The part of fifth degree, orthogonal to those of lower degree; 1 at the end (Legendre).</summary>
    public static double OfFifth(double phase)
    {
        var x = 2 * (phase - 0.5);
        var square = x * x;
        return x * ((((63 * square) - 70) * square) + 15) / 8;
    }

    /// <summary>The place at a stance phase, metres from the entry edge.</summary>
    public double At(double phase) => Middle + (Slope * Straight(phase)) + (Bend * Bent(phase)) + (Twist * Twisted(phase)) + (Fourth * OfFourth(phase)) + (Fifth * OfFifth(phase));
}
