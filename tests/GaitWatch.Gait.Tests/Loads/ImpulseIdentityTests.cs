namespace GaitWatch.Gait.Tests;

/// <summary>
/// Newton's second law: over a stride that repeats itself her vertical momentum does not change, so the impulses of the four legs over
/// one stride sum to weight x stride time, and the loads (impulse over stride time) to her weight.
/// </summary>
public class ImpulseIdentityTests
{
    public static TheoryData<double, double, double, double> Walks => new()
    {
        // stride s, stride m, duty, fore lag
        { 1.3, 1.45, 0.66, 0.25 },
        { 1.1, 1.55, 0.60, 0.24 },
        { 1.6, 1.30, 0.72, 0.26 },
        { 2.0, 1.10, 0.77, 0.24 },
    };

    [Theory]
    [MemberData(nameof(Walks))]
    public void Loads_of_a_steady_walk_sum_to_the_weight(double strideSeconds, double strideMetres, double duty, double foreLag)
    {
        var cow = new HalfSineCow { StrideSeconds = strideSeconds, StrideMetres = strideMetres, Duty = duty, ForeLag = foreLag };
        var crossing = Assert.Single(Tape.Analyse(Tape.Walk(cow, 10)).Crossings);
        Assert.Empty(crossing.Reasons);
        var sum = Legs.All.Sum(leg => crossing.Legs[leg].LoadKg!.Value);
        Assert.Equal(cow.WeightKg, sum, 0.006 * cow.WeightKg);
        Assert.Equal(cow.WeightKg, crossing.WeightKg!.Value, 0.006 * cow.WeightKg);
        foreach (var leg in Legs.All)
        {
            var found = crossing.Legs[leg];
            // A half sine of mean m has the peak m pi / 2; the mean over the stance is load / duty.
            Assert.Equal(cow.Shares[leg], found.Share!.Value, 0.0025);
            Assert.Equal(cow.Shares[leg] * cow.WeightKg / duty * Math.PI / 2, found.PeakKg!.Value, 0.01 * found.PeakKg.Value);
            Assert.Equal(duty * strideSeconds, found.StanceSeconds!.Value, 0.02);
        }

        Assert.Equal(strideSeconds, crossing.StrideSeconds!.Value, 0.01);
        Assert.Equal(strideMetres / strideSeconds, crossing.SpeedMetresPerSecond!.Value, 0.02 * strideMetres / strideSeconds);
    }
}
