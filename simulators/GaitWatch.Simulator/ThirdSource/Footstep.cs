namespace GaitWatch.Simulator;

/// <summary>One stay of a foot on the ground.</summary>
/// <param name="Foot">Which foot.</param>
/// <param name="ContactSeconds">When it comes down, s.</param>
/// <param name="LiftSeconds">When it leaves, s.</param>
/// <param name="X">Where its middle stands, m from the entry edge.</param>
/// <param name="StrideSeconds">The one stride centred on this stance, s.</param>
/// <param name="Curve">How it carries over its stance.</param>
/// <param name="ScaleKg">Its force where the curve is 1, kg.</param>
internal sealed record Footstep(Foot Foot, double ContactSeconds, double LiftSeconds, double X, double StrideSeconds, KnotCurve Curve, double ScaleKg)
{
    /// <summary>The centre of pressure ahead of the sole's middle over the stance, m.</summary>
    public required KnotCurve Roll { get; init; }

    public required double HalfSoleMetres { get; init; }

    /// <summary>Puts the foot on the plates, whose first tick is at <paramref name="start"/> seconds.</summary>
    public FootfallTruth Onto(SpringFrame frame, double start, double plateLength)
    {
        double impulse = 0, peak = 0;
        var lasts = LiftSeconds - ContactSeconds;
        for (var tick = (int)Math.Ceiling((ContactSeconds - start) / frame.TickSeconds); tick < frame.Ticks; tick++)
        {
            var fraction = ((tick * frame.TickSeconds) + start - ContactSeconds) / lasts;
            if (fraction >= 1)
                break;
            var (part, x) = Footprint.On(X, HalfSoleMetres, Roll.At(fraction), plateLength);
            var kg = part * ScaleKg * Curve.At(fraction);
            frame.Press(Foot.IsLeft(), tick, kg, x);
            impulse += kg * frame.TickSeconds;
            peak = Math.Max(peak, kg);
        }

        var isWhole = X >= HalfSoleMetres && X <= plateLength - HalfSoleMetres;
        return new(0, Foot, ContactSeconds - start, LiftSeconds - start, X, isWhole, impulse, peak, StrideSeconds);
    }
}
