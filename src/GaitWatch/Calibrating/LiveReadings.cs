using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>Waits for a platform to read what a step of a check asks for: nothing, or a weight at rest in one place.</summary>
internal sealed class LiveReadings(ApiClient api, string platform, TimeProvider time, TimeSpan patience)
{
    // What a device promises to send of an empty plate is half a second.
    private const double EmptySeconds = 0.4;
    private const double LoadedSeconds = 2;

    // An offset beyond this the analysis does not take for an empty plate.
    private const double LargestOffsetKg = 20;

    // Mud that fell off with the weight, not the weight.
    private const double LargestZeroStepKg = 5;

    // A platform that reads less than half of what stands on it is broken, and its place could not be told.
    private const double LeastPart = 0.5;

    private static readonly TimeSpan Poll = TimeSpan.FromMilliseconds(250);

    // Until when the last step was read: what a step waits for comes after it.
    private DateTimeOffset _readUntil = DateTimeOffset.MinValue;

    /// <summary>Waits for both plates to be empty.</summary>
    /// <param name="before">What they read empty before; null the first time.</param>
    /// <param name="told">Told what stands in the way.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="CommandFailedException">It took too long.</exception>
    public Task<PlatformReadingView> EmptyAsync(PlatformReadingView? before, Action<string> told, CancellationToken cancellation) => UntilAsync(
        EmptySeconds,
        reading => before is null
            ? Away(reading, cell => Math.Abs(cell.Kg) > LargestOffsetKg, "reads more than an empty plate")
            : Away(reading, cell => Math.Abs(cell.Kg - KgOf(before, cell.Id)) > LargestZeroStepKg, "still carries something"),
        "both plates empty", told, cancellation);

    /// <summary>Waits for the weight to rest over a cell.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="weightKg">The weight, kg.</param>
    /// <param name="empty">What the cells read empty.</param>
    /// <param name="told">Told what stands in the way.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="CommandFailedException">It took too long.</exception>
    public Task<PlatformReadingView> LoadedAsync(
        CellReadingView cell, double weightKg, PlatformReadingView empty, Action<string> told, CancellationToken cancellation) => UntilAsync(
        LoadedSeconds,
        reading => WhyNotOver(cell, weightKg, empty, reading),
        $"the weight at rest over cell {cell.Id}", told, cancellation);

    /// <summary>What a plate carries, and where, zero removed.</summary>
    public static (double Kg, double X) OnPlate(PlatformReadingView reading, PlatformReadingView empty, string plate)
    {
        double load = 0, moment = 0;
        foreach (var cell in reading.Cells.Where(cell => cell.Plate == plate))
        {
            var kg = cell.Kg - KgOf(empty, cell.Id);
            load += kg;
            moment += kg * cell.X;
        }

        return (load, moment / load);
    }

    private static string? Away(PlatformReadingView reading, Func<CellReadingView, bool> isAway, string what) =>
        reading.Cells.FirstOrDefault(isAway) is { } cell
            ? string.Create(CultureInfo.InvariantCulture, $"cell {cell.Id} {what}: {cell.Kg:0.0} kg")
            : null;

    private static string? WhyNotOver(CellReadingView cell, double weightKg, PlatformReadingView empty, PlatformReadingView reading)
    {
        var (kg, x) = OnPlate(reading, empty, cell.Plate);
        if (kg < LeastPart * weightKg)
            return string.Create(CultureInfo.InvariantCulture, $"the {cell.Plate} plate carries {kg:0.0} kg");
        var nearest = reading.Cells.Where(other => other.Plate == cell.Plate).MinBy(other => Math.Abs(other.X - x))!;
        return nearest.Id == cell.Id
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"it stands {x:0.00} m from the entry edge, nearer to cell {nearest.Id}");
    }

    private static double KgOf(PlatformReadingView reading, string id) => reading.Cells.First(cell => cell.Id == id).Kg;

    private async Task<PlatformReadingView> UntilAsync(
        double seconds, Func<PlatformReadingView, string?> whyNot, string what, Action<string> told, CancellationToken cancellation)
    {
        var begun = time.GetTimestamp();
        var route = string.Create(CultureInfo.InvariantCulture, $"api/platforms/{Uri.EscapeDataString(platform)}/reading?seconds={seconds}");
        string? last = null;
        while (true)
        {
            var reading = await ReadAsync(route, cancellation);
            // One that begins before the step before it ended, or holds too little, is not yet what is asked for.
            var isNew = reading is not null && reading.From > _readUntil && (reading.To - reading.From).TotalSeconds >= 0.75 * seconds;
            var why = reading is null ? "it has sent no readings" : !isNew ? "it sends nothing new" : !reading.IsSteady ? "something moves" : whyNot(reading);
            if (why is null)
            {
                _readUntil = reading!.To;
                return reading;
            }

            if (why != last)
                told(why);
            last = why;
            if (time.GetElapsedTime(begun) > patience)
            {
                throw new CommandFailedException(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{platform} did not read {what} within {patience.TotalSeconds:0} seconds: {why}. A device sends readings only while a plate is loaded and half a second beyond; --wait gives it longer."));
            }

            await Task.Delay(Poll, time, cancellation);
        }
    }

    // Before its first frame a platform has no reading, which the API answers as not found.
    private async Task<PlatformReadingView?> ReadAsync(string route, CancellationToken cancellation)
    {
        try
        {
            return await api.GetAsync<PlatformReadingView>(route, cancellation);
        }
        catch (CommandFailedException e) when (e.Message.Contains("no frames of this platform", StringComparison.Ordinal))
        {
            return null;
        }
    }
}
