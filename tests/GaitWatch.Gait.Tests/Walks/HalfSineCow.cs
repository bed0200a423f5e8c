namespace GaitWatch.Gait.Tests;

/// <summary>
/// A plain walk made by hand, apart from the simulator: every foot's force is a half sine, or a power of it, on a place whose pressure
/// travels evenly heel to toe. A half sine of height A over a stance S has the impulse 2 A S / pi.
/// </summary>
internal sealed record HalfSineCow
{
    /// <summary>Weight, kg.</summary>
    public double WeightKg { get; init; } = 640;

    /// <summary>Part of it that each leg carries.</summary>
    public PerLeg<double> Shares { get; init; } = new(0.272, 0.268, 0.236, 0.224);

    /// <summary>Stride time, seconds.</summary>
    public double StrideSeconds { get; init; } = 1.3;

    /// <summary>Stride, metres.</summary>
    public double StrideMetres { get; init; } = 1.45;

    /// <summary>Stance as part of the stride.</summary>
    public double Duty { get; init; } = 0.66;

    /// <summary>From a hind contact to the fore contact of its side, in strides.</summary>
    public double ForeLag { get; init; } = 0.25;

    /// <summary>How far ahead of the fore foot's place the hind foot lands, metres.</summary>
    public double TrackUpMetres { get; init; }

    /// <summary>Power of the half sine: below 1 the curve is flatter and steeper at its ends.</summary>
    public double Power { get; init; } = 1;

    /// <summary>How far the pressure travels, metres.</summary>
    public double TravelMetres { get; init; } = 0.05;

    /// <summary>Place of the first left fore foot, metres from the entry edge.</summary>
    public double FirstX { get; init; } = 0.4;

    /// <summary>When that foot comes down, seconds from the first sample.</summary>
    public double FirstContactSeconds { get; init; } = 1;

    /// <summary>Contact, lift and place of every footfall that stands wholly on a plate; the others stand on the floor.</summary>
    public PerLeg<(double Contact, double Lift, double X)[]> Footfalls(double plateLength) => PerLeg.From(leg =>
    {
        var footfalls = new List<(double, double, double)>();
        for (var n = -4; n < 12; n++)
        {
            var strides = n + (leg.IsLeft() ? 0 : 0.5);
            var contact = FirstContactSeconds + (strides * StrideSeconds);
            var x = FirstX + (strides * StrideMetres);
            if (!leg.IsFore())
            {
                contact += (1 - ForeLag) * StrideSeconds;
                x += TrackUpMetres;
            }

            if (x > 0.1 && x < plateLength - 0.1)
                footfalls.Add((contact, contact + (Duty * StrideSeconds), x));
        }

        return footfalls.ToArray();
    });

    /// <summary>Adds her load to the samples of a platform's cells.</summary>
    public void Walk(TwinPlate platform, double hz, float[][] samples)
    {
        var footfalls = Footfalls(platform.PlateLengthMetres);
        var mean = Enumerable.Range(0, 1000).Average(k => Math.Pow(Math.Sin(Math.PI * (k + 0.5) / 1000), Power));
        foreach (var leg in Legs.All)
        {
            foreach (var (contact, lift, x) in footfalls[leg])
            {
                var peak = Shares[leg] * WeightKg * StrideSeconds / (mean * (lift - contact));
                for (var i = (int)Math.Ceiling(contact * hz); i < lift * hz && i < samples[0].Length; i++)
                {
                    var phase = ((i / hz) - contact) / (lift - contact);
                    Press(platform, leg.IsLeft() ? PlateSide.Left : PlateSide.Right, x + (TravelMetres * (phase - 0.5)), peak * Math.Pow(Math.Sin(Math.PI * phase), Power), samples, i);
                }
            }
        }
    }

    /// <summary>A force on a plate, spread over its two outermost cells by the law of the lever.</summary>
    public static void Press(TwinPlate platform, PlateSide side, double x, double kg, float[][] samples, int i)
    {
        var cells = Enumerable.Range(0, platform.Cells.Length).Where(cell => platform.Cells[cell].Plate == side).OrderBy(cell => platform.Cells[cell].X).ToArray();
        var (first, last) = (cells[0], cells[^1]);
        var part = (x - platform.Cells[first].X) / (platform.Cells[last].X - platform.Cells[first].X);
        samples[first][i] += (float)(kg * (1 - part));
        samples[last][i] += (float)(kg * part);
    }
}
