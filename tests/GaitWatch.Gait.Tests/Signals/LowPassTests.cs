using System.Text.Json;
using NWaves.Filters.Butterworth;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// The low-pass against scipy.signal (butter, sosfiltfilt; numbers and their script in Published/). The tolerance is that of two
/// implementations in double precision.
/// </summary>
public class LowPassTests
{
    private static readonly JsonElement s_reference =
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Published", "filter_reference.json"))).RootElement;

    public static TheoryData<int> Cases => [0, 1, 2, 3];

    [Fact]
    public void Cut_off_of_one_pass_puts_half_power_of_both_at_the_cut_off_meant() =>
        Assert.Equal(s_reference.GetProperty("passHz").GetDouble(), LowPass.PassHz(s_reference.GetProperty("cutOffHz").GetDouble()), 1e-9);

    [Theory]
    [MemberData(nameof(Cases))]
    public void Coefficients_are_those_of_scipy(int number)
    {
        var example = s_reference.GetProperty("cases")[number];
        var filter = new LowPassFilter(LowPass.PassHz(LowPass.CutOffHz) / example.GetProperty("hz").GetDouble(), LowPass.Order).Tf;
        Near(Numbers(example, "b"), filter.Numerator, 1e-12);
        Near(Numbers(example, "a"), filter.Denominator, 1e-12);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Filtered_signal_is_that_of_scipy(int number)
    {
        var example = s_reference.GetProperty("cases")[number];
        var smoothed = new LowPass(example.GetProperty("hz").GetDouble()).Apply(Numbers(example, "x"));
        Near(Numbers(example, "y"), smoothed, 1e-9);
    }

    [Fact]
    public void Nothing_is_delayed_a_symmetric_signal_stays_symmetric()
    {
        var signal = new double[801];
        for (var i = 0; i < signal.Length; i++)
            signal[i] = Math.Exp(-0.5 * Math.Pow((i - 400) / 15.0, 2));
        var smoothed = new LowPass(200).Apply(signal);
        for (var i = 0; i <= 400; i++)
            Assert.Equal(smoothed[400 - i], smoothed[400 + i], 1e-9);
    }

    private static double[] Numbers(JsonElement of, string name) => [.. of.GetProperty(name).EnumerateArray().Select(number => number.GetDouble())];

    private static void Near(double[] expected, double[] actual, double tolerance)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (var i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], actual[i], tolerance);
    }
}
