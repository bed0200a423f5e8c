using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>Both plates during a crossing, and how their samples are placed in the recording.</summary>
/// <param name="Left">The left plate.</param>
/// <param name="Right">The right plate.</param>
/// <param name="First">Sample of the recording at which the signals' first sample lies.</param>
/// <param name="Every">Samples of the recording per sample of the signals.</param>
internal sealed record PlatePair(PlateSignal Left, PlateSignal Right, double First, int Every)
{
    /// <summary>
    /// Faster recordings are averaged down to about this rate, Hz: a footfall's curve needs far less, and the filter costs by the
    /// sample.
    /// </summary>
    private const double WorkingHz = 200;

    /// <summary>Empty plate kept on each side of the load, seconds, for the filter to settle in.</summary>
    private const double MarginSeconds = 0.3;

    /// <summary>The sample of the recording at a sample of the signals.</summary>
    public double InRecording(double sample) => First + (sample * Every);

    /// <summary>The signal of one side.</summary>
    public PlateSignal this[PlateSide side] => side == PlateSide.Left ? Left : Right;

    /// <summary>Takes both plates' signals out of a recording: zero removed, summed over the cells, smoothed.</summary>
    public static PlatePair Of(TwinPlate platform, RecordedLoad load)
    {
        var stretch = load.Stretch;
        var every = Math.Max(1, (int)(stretch.Hz / WorkingHz));
        var margin = (int)Math.Round(MarginSeconds * stretch.Hz);
        var start = Math.Max(0, load.Load.Start - margin);
        var end = Math.Min(stretch.Count, load.Load.End + margin);
        var count = Math.Max(1, (end - start) / every);
        var filter = new LowPass(stretch.Hz / every);
        var left = Plate(PlateSide.Left);
        var right = Plate(PlateSide.Right);
        return new PlatePair(left, right, start + (0.5 * (every - 1)), every);

        PlateSignal Plate(PlateSide side)
        {
            var force = new double[count];
            var moment = new double[count];
            var changes = ImmutableArray.CreateBuilder<ZeroChange>();
            for (var cell = 0; cell < platform.Cells.Length; cell++)
            {
                if (platform.Cells[cell].Plate != side)
                    continue;
                var x = platform.Cells[cell].X;
                changes.Add(new ZeroChange(x, load.Zero.Change(cell)));
                var samples = stretch.SamplesKg[cell];
                for (var i = 0; i < count; i++)
                {
                    var sum = 0.0;
                    for (var k = start + (i * every); k < Math.Min(stretch.Count, start + ((i + 1) * every)); k++)
                        sum += samples[k] - load.Zero.At(cell, k);
                    sum /= every;
                    force[i] += sum;
                    moment[i] += sum * x;
                }
            }

            return new PlateSignal(filter.Apply(force), filter.Apply(moment), stretch.Hz / every, platform.PlateLengthMetres) { ZeroChanges = changes.DrainToImmutable() };
        }
    }
}
