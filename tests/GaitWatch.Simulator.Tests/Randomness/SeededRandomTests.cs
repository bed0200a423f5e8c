namespace GaitWatch.Simulator.Tests;

public class SeededRandomTests
{
    [Fact]
    public void The_first_bits_are_those_that_the_algorithm_gives_by_hand()
    {
        // xoshiro256**, state 1, 2, 3, 4: rotl(2 * 5, 7) * 9 = 10 * 128 * 9 = 11520. The step leaves s1 = 1 ^ (2 ^ (3 ^ 1)) ... worked
        // by hand: s2 = 3^1 = 2, s3 = 4^2 = 6, s1 = 2^2 = 0, s0 = 1^6 = 7, s2 ^= 2<<17, s3 = rotl(6, 45). So the second is rotl(0) = 0.
        // Third step: s2 = (2 ^ 2<<17) ^ 7, s3 = rotl(6,45) ^ 0, s1 = 0 ^ s2, which is 5 ^ 262144 = 262149; rotl(262149 * 5, 7) * 9 = 1509978240.
        var random = new SeededRandom(1, 2, 3, 4);
        Assert.Equal([11520UL, 0UL, 1509978240UL], [random.NextBits(), random.NextBits(), random.NextBits()]);
    }

    [Fact]
    public void Same_seed_and_stream_same_numbers_another_stream_others()
    {
        var first = Enumerable.Range(0, 50).Select(_ => new SeededRandom(7, 1)).Select(r => r.NextBits()).Distinct();
        Assert.Single(first);
        Assert.NotEqual(new SeededRandom(7, 1).NextBits(), new SeededRandom(7, 2).NextBits());
        Assert.NotEqual(new SeededRandom(7, 1).NextBits(), new SeededRandom(8, 1).NextBits());
    }

    [Fact]
    public void Draws_have_the_moments_of_their_distributions()
    {
        // Uniform: variance 1/12. Normal: kurtosis 3. Student t, 6 degrees: kurtosis 3 + 6 / (6 - 4) = 6. Exponential: variance = mean^2. (Textbook facts.)
        var random = new SeededRandom(11);
        const int n = 400_000;
        var uniform = Draw(() => random.Uniform());
        Assert.Equal(0.5, uniform.Mean, 0.003);
        Assert.Equal(1.0 / 12, uniform.Variance, 0.001);
        var normal = Draw(() => random.Normal());
        Assert.Equal(0, normal.Mean, 0.01);
        Assert.Equal(1, normal.Variance, 0.01);
        Assert.Equal(3, normal.Kurtosis, 0.06);
        var heavy = Draw(() => random.HeavyTailed(6));
        Assert.Equal(1, heavy.Variance, 0.03);
        Assert.InRange(heavy.Kurtosis, 4.5, 9);
        var exponential = Draw(() => random.Exponential(2));
        Assert.Equal(2, exponential.Mean, 0.02);
        Assert.Equal(4, exponential.Variance, 0.1);

        (double Mean, double Variance, double Kurtosis) Draw(Func<double> next)
        {
            var values = Enumerable.Range(0, n).Select(_ => next()).ToArray();
            var mean = values.Average();
            var variance = values.Average(v => (v - mean) * (v - mean));
            return (mean, variance, values.Average(v => Math.Pow(v - mean, 4)) / (variance * variance));
        }
    }
}
