namespace GaitWatch.Simulator.Tests;

/// <summary>Against Scott G.B. 1988, Vet Rec 123:245-248: number, place and size of the force peaks of cattle at a walk.</summary>
public class ForceShapeTests
{
    [Theory]
    [InlineData(0.085, -0.008)]
    [InlineData(0.095, 0)]
    [InlineData(0.105, 0.008)]
    public void A_fore_foot_has_one_peak_about_half_way(double flatness, double lean)
    {
        var peak = Assert.Single(Peaks(new(flatness, lean)));
        Assert.InRange(peak.Place, 0.40, 0.60);
    }

    [Theory]
    [InlineData(0.23, 0.008)]
    [InlineData(0.26, 0.02)]
    [InlineData(0.29, 0.03)]
    public void A_hind_foot_has_two_peaks_at_about_one_and_three_quarters_the_second_slightly_smaller(double flatness, double lean)
    {
        var peaks = Peaks(new(flatness, lean));
        Assert.Equal(2, peaks.Count);
        Assert.Equal(0.25, peaks[0].Place, 0.045);
        Assert.Equal(0.75, peaks[1].Place, 0.045);
        Assert.InRange(peaks[1].Value / peaks[0].Value, 0.90, 0.99);
    }

    [Theory]
    [InlineData(0.095, 0.0)]
    [InlineData(0.26, 0.02)]
    public void The_curve_starts_and_ends_at_nothing_without_a_jump_and_averages_one(double flatness, double lean)
    {
        var shape = new ForceShape(flatness, lean);
        Assert.Equal(0, shape.At(0));
        Assert.Equal(0, shape.At(1));
        const int steps = 100_000;
        double sum = 0, jump = 0, bend = 0;
        for (var i = 1; i <= steps; i++)
        {
            var (a, b, c) = (shape.At((i - 1.0) / steps), shape.At((double)i / steps), shape.At((i + 1.0) / steps));
            sum += b / steps;
            jump = Math.Max(jump, Math.Abs(b - a));
            bend = Math.Max(bend, Math.Abs(c - 2 * b + a));
        }

        Assert.Equal(1, sum, 1e-4);
        // Slope and curvature stay bounded: a jump of the force or of its slope would show as a step not shrinking with the grid.
        Assert.True(jump * steps < 20, $"steepest slope {jump * steps}");
        Assert.True(bend * steps * steps < 2000, $"sharpest bend {bend * steps * steps}");
    }

    [Fact]
    public void At_a_sound_cows_walk_fore_feet_peak_at_about_60_and_hind_feet_at_about_50_percent_of_body_weight()
    {
        // Scott 1988: "at most about 60 %" in front, about 50 % behind. Stride and swing of sound cows: Flower 2005, 2006.
        var fore = new List<double>();
        var hind = new List<double>();
        for (var seed = 0; seed < 60; seed++)
        {
            var spec = new WalkSpec { SpeedMetresPerSecond = 1.11, SwingSeconds = 0.44, StartPhase = seed / 60.0 };
            var crossing = WalkGenerator.Cross(spec, seed);
            foreach (var footfall in crossing.Truth.Footfalls.Where(f => f.IsWhole))
                (footfall.Foot.IsFore() ? fore : hind).Add(footfall.PeakKg / spec.WeightKg);
        }

        Assert.InRange(fore.Average(), 0.54, 0.60);
        Assert.InRange(hind.Average(), 0.45, 0.50);
    }

    private static List<(double Place, double Value)> Peaks(ForceShape shape)
    {
        const int steps = 4000;
        return [.. Enumerable.Range(1, steps - 1)
            .Where(i => shape.At((i - 1.0) / steps) < shape.At((double)i / steps) && shape.At((double)i / steps) >= shape.At((i + 1.0) / steps))
            .Select(i => ((double)i / steps, shape.At((double)i / steps)))];
    }
}
