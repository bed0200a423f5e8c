using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>
/// A platform's cells over days: noise, gains and bounce stay; each zero wanders with the day's warmth and with mud by several
/// kilograms (amounts invented).
/// </summary>
internal sealed class PlatformOverTime
{
    private readonly SimulatedPlatform _platform;
    private readonly PlatformSensors _sensors;
    private readonly (double DailyKg, double DailyPhase, double SlowKg, double SlowPhase, double SlowDays)[] _zero;

    public PlatformOverTime(SimulatedPlatform platform, long seed)
    {
        var random = new SeededRandom(seed, 50);
        _platform = platform;
        _sensors = PlatformSensors.Draw(random, platform.Cells.Length) with { OffsetKg = [.. platform.Cells.Select(_ => random.Uniform(-8, 8))] };
        _zero = [.. platform.Cells.Select(_ => (random.Uniform(0.3, 1.5), random.Uniform(0, 2 * Math.PI), random.Uniform(1, 4), random.Uniform(0, 2 * Math.PI), random.Uniform(5, 15)))];
    }

    /// <summary>The platform as it is at an instant.</summary>
    public SimulatedPlatform At(DateTimeOffset at)
    {
        var days = (at - DateTimeOffset.UnixEpoch).TotalDays;
        var offsets = ImmutableArray.CreateBuilder<double>(_zero.Length);
        for (var i = 0; i < _zero.Length; i++)
        {
            var z = _zero[i];
            offsets.Add(_sensors.OffsetKg[i] + z.DailyKg * Math.Sin(2 * Math.PI * days + z.DailyPhase) + z.SlowKg * Math.Sin(2 * Math.PI * days / z.SlowDays + z.SlowPhase));
        }

        return _platform with { Sensors = _sensors with { OffsetKg = offsets.MoveToImmutable(), DriftKgPerHour = [] } };
    }
}
