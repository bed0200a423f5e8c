namespace GaitWatch.Simulator;

/// <summary>One stay of a foot on the ground, with its force at every tick.</summary>
internal sealed record Tread
{
    /// <summary>0 for the first animal, 1 for the one behind.</summary>
    public int Animal { get; init; }

    public required Foot Foot { get; init; }

    /// <summary>True when it is set down on the left side of the kerb.</summary>
    public required bool IsOnLeft { get; init; }

    /// <summary>Where its middle stands, m from the entry edge.</summary>
    public required double X { get; init; }

    /// <summary>When it comes down and leaves, s.</summary>
    public required double ContactSeconds { get; init; }

    public required double LiftSeconds { get; init; }

    /// <summary>Half its length on the ground, m.</summary>
    public double HalfLengthMetres { get; init; } = 0.065;

    public HeelToToe Roll { get; init; }

    /// <summary>Force, kg, at a time and stance fraction.</summary>
    public required Func<double, double, double> Kg { get; init; }

    /// <summary>Stance fraction at a time; null where it rises evenly from contact to lift.</summary>
    public Func<double, double>? Fraction { get; init; }

    /// <summary>The one stride centred on this stance, s; null where that means nothing.</summary>
    public double? StrideSeconds { get; init; }

    public bool Touches(double plateLength) => X + HalfLengthMetres > 0 && X - HalfLengthMetres < plateLength;

    public bool IsWhole(double plateLength) => X - HalfLengthMetres >= 0 && X + HalfLengthMetres <= plateLength;

    public double FractionAt(double seconds) =>
        Math.Clamp(Fraction?.Invoke(seconds) ?? ((seconds - ContactSeconds) / (LiftSeconds - ContactSeconds)), 0, 1);
}
