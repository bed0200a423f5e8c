using System.Collections.Immutable;
using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>Leads through a check with a test weight: empty, the weight over each cell, empty again.</summary>
/// <param name="readings">What the platform reads.</param>
/// <param name="ask">Says a step and waits for the person to have done it.</param>
/// <param name="say">Says how it goes.</param>
internal sealed class CalibrationWalk(LiveReadings readings, Func<string, CancellationToken, Task> ask, Action<string> say)
{
    /// <summary>Walks through the places.</summary>
    /// <param name="weightKg">The test weight, kg.</param>
    /// <param name="wanted">Ids of the cells over which to put it, in order; empty for every cell.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>What is to be kept, as the API takes it, but who did it.</returns>
    public async Task<CalibrationReadings> RunAsync(double weightKg, ImmutableArray<string> wanted, CancellationToken cancellation)
    {
        await ask("Leave both plates empty. Step on a plate once and off again, so that the platform sends what it reads empty.", cancellation);
        var empty = await readings.EmptyAsync(null, Waiting, cancellation);
        say(string.Create(CultureInfo.InvariantCulture, $"Empty: {string.Join(", ", empty.Cells.Select(cell => $"{cell.Id} {cell.Kg.ToString("0.0", CultureInfo.InvariantCulture)} kg"))}."));
        if (wanted.FirstOrDefault(id => empty.Cells.All(cell => cell.Id != id)) is { } stranger)
            throw new CommandFailedException($"--places names cell '{stranger}': one of {string.Join(", ", empty.Cells.Select(cell => cell.Id))}.");

        var places = new List<PlacedCells>();
        foreach (var cell in wanted.IsEmpty ? empty.Cells : wanted.Select(id => empty.Cells.First(cell => cell.Id == id)))
        {
            await ask(
                string.Create(CultureInfo.InvariantCulture, $"Put the weight on the {cell.Plate} plate at its {End(cell, empty)}, as near over cell {cell.Id} as it stands safely (the cell is {cell.X:0.00} m from the entry edge), and step off."),
                cancellation);
            var reading = await readings.LoadedAsync(cell, weightKg, empty, Waiting, cancellation);
            places.Add(new PlacedCells(cell.Id, Middle(reading), Cells(reading)));
            say(Sentence(cell, weightKg, reading, empty));
        }

        await ask("Take the weight off.", cancellation);
        var after = await readings.EmptyAsync(empty, Waiting, cancellation);
        return new CalibrationReadings(new TimedCells(Middle(empty), Cells(empty)), places, new TimedCells(Middle(after), Cells(after)), after.To);
    }

    private void Waiting(string why) => say($"  waiting: {why}");

    private static string Sentence(CellReadingView cell, double weightKg, PlatformReadingView reading, PlatformReadingView empty)
    {
        var (kg, x) = LiveReadings.OnPlate(reading, empty, cell.Plate);
        var error = kg - weightKg;
        var tolerance = AccuracyClasses.TryParse(reading.AccuracyClass, out var accuracyClass)
            ? WeighingTolerance.InServiceKg(accuracyClass, reading.VerificationIntervalKg, weightKg)
            : double.NaN;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{cell.Plate} plate, cell {cell.Id}, at {x:0.00} m: {kg:0.00} kg, error {error:+0.00;-0.00;0.00} kg, allowed {tolerance:0.00}: {(Math.Abs(error) <= tolerance ? "within" : "beyond")}.");
    }

    private static string End(CellReadingView cell, PlatformReadingView empty)
    {
        var xs = empty.Cells.Where(other => other.Plate == cell.Plate).Select(other => other.X).ToArray();
        return cell.X == xs.Min() ? "entry end" : cell.X == xs.Max() ? "exit end" : "middle";
    }

    private static DateTimeOffset Middle(PlatformReadingView reading) => reading.From + ((reading.To - reading.From) / 2);

    private static Dictionary<string, double> Cells(PlatformReadingView reading) => reading.Cells.ToDictionary(cell => cell.Id, cell => cell.Kg, StringComparer.Ordinal);
}

/// <summary>What was read in a check, as <c>POST /api/platforms/{id}/calibrations</c> takes it.</summary>
/// <param name="EmptyBefore">Empty, first.</param>
/// <param name="Places">With the weight in each place.</param>
/// <param name="EmptyAfter">Empty, last.</param>
/// <param name="At">When the last was read.</param>
internal sealed record CalibrationReadings(TimedCells EmptyBefore, IReadOnlyList<PlacedCells> Places, TimedCells EmptyAfter, DateTimeOffset At);

/// <summary>What each cell read at an instant.</summary>
/// <param name="At">When.</param>
/// <param name="Cells">By the cell's id, kg, zero offset not removed.</param>
internal sealed record TimedCells(DateTimeOffset At, IReadOnlyDictionary<string, double> Cells);

/// <summary>What each cell read with the weight over one of them.</summary>
/// <param name="Cell">That cell.</param>
/// <param name="At">When.</param>
/// <param name="Cells">By the cell's id, kg, zero offset not removed.</param>
internal sealed record PlacedCells(string Cell, DateTimeOffset At, IReadOnlyDictionary<string, double> Cells);
