using GaitWatch.Gait;
using GaitWatch.Herd;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Platforms under a test weight.
public sealed partial class BarnReader
{
    // A stretch without a gap that is averaged lies within this before the newest frame's beginning.
    private static readonly TimeSpan FrameMargin = TimeSpan.FromSeconds(2);

    /// <summary>A platform's kept checks with a test weight, newest first.</summary>
    public async Task<IReadOnlyList<CalibrationView>> CalibrationsAsync(string platform, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return [.. Calibrations((await BookAsync(context, cancellation)).Writes, platform)];
    }

    /// <summary>What a platform that is set up reads at the end of its newest frames; null while it has sent none.</summary>
    /// <param name="platform">The platform.</param>
    /// <param name="over">How much of the end is averaged.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<PlatformReadingView?> ReadingAsync(TwinPlate platform, TimeSpan over, CancellationToken cancellation = default)
    {
        DateTimeOffset newest;
        await using (var context = _contexts.CreateDbContext())
        {
            if (await context.Frames.Where(row => row.Platform == platform.Id).MaxAsync(row => (long?)row.T0, cancellation) is not { } t0)
                return null;
            newest = t0.FromMs();
        }

        var frames = await FramesAsync(platform.Id, platform.Cells.Length, newest - over - FrameMargin, newest.AddMilliseconds(1), cancellation);
        if (StaticReading.Of(platform, frames, over) is not { } reading)
            return null;
        return new PlatformReadingView
        {
            Platform = platform.Id,
            From = reading.From,
            To = reading.To,
            AgeSeconds = (_time.GetUtcNow() - reading.To).TotalSeconds,
            Samples = reading.Samples,
            IsSteady = reading.IsSteady,
            PlateLengthMetres = platform.PlateLengthMetres,
            AccuracyClass = platform.AccuracyClass,
            VerificationIntervalKg = platform.VerificationIntervalKg,
            Cells = [.. platform.Cells.Select((cell, i) => new CellReadingView(cell.Id, cell.Plate.WireName(), cell.X, reading.Kg[i], reading.SpreadKg[i]))],
        };
    }

    private static IEnumerable<CalibrationView> Calibrations(IEnumerable<FarmWrite> writes, string platform) => writes
        .OfType<CalibrationWrite>()
        .Where(write => write.Calibration.Platform == platform)
        .OrderByDescending(write => write.At).ThenBy(write => write.By, StringComparer.Ordinal).ThenBy(write => write.Calibration.WeightKg)
        .Select(CalibrationView.Of);
}
