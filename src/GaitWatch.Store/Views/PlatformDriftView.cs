using System.Text.Json.Serialization;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>How far a platform has drifted. A figure that could not be measured is null.</summary>
/// <param name="Zero">Largest change of a cell's zero over the last 24 hours. The analysis takes each crossing's own zero out, so this tells of mud and stones, not of wrong loads.</param>
/// <param name="Sides">How much more the left plate reads against the right than when the herd's normals were learnt.</param>
/// <param name="Weight">How much more the same cows weigh in the last two days than in the week before: both plates together, or their feed.</param>
public sealed record PlatformDriftView(DriftFigureView? Zero, DriftFigureView? Sides, DriftFigureView? Weight);

/// <summary>A drift in kilograms and per cent, and what a weighing instrument may be off there.</summary>
/// <param name="Kg">The drift, kg.</param>
/// <param name="Percent">The drift over a cow's usual weight, per cent; null while that is not known.</param>
/// <param name="AtKg">The load at which it is told, kg; 0 for the zero.</param>
/// <param name="ToleranceKg">Largest error that OIML R 76-1 allows in service at that load, kg.</param>
/// <param name="MaintenanceToleranceKg">Maintenance tolerance of NIST Handbook 44 section 2.20 at that load, kg.</param>
public sealed record DriftFigureView(double Kg, double? Percent, double AtKg, double ToleranceKg, double MaintenanceToleranceKg)
{
    /// <summary>The standards whose tolerance it breaks; empty when none.</summary>
    public IReadOnlyList<string> Breaks =>
    [
        .. Math.Abs(Kg) > ToleranceKg ? ["OIML R 76-1"] : Array.Empty<string>(),
        .. Math.Abs(Kg) > MaintenanceToleranceKg ? ["NIST Handbook 44 2.20"] : Array.Empty<string>(),
    ];

    internal static DriftFigureView Of(TwinPlate platform, double kg, double? percent, double atKg) => AccuracyClasses.TryParse(platform.AccuracyClass, out var accuracyClass)
        // Rounded: means are summed by the database in an order of its own.
        ? new DriftFigureView(
            Math.Round(kg, 3), percent is { } some ? Math.Round(some, 3) : null, Math.Round(atKg, 3),
            WeighingTolerance.InServiceKg(accuracyClass, platform.VerificationIntervalKg, atKg),
            WeighingTolerance.MaintenanceKg(accuracyClass, platform.VerificationIntervalKg, atKg))
        : throw new ArgumentException($"accuracyClass is '{platform.AccuracyClass}': one of I, II, III, IIII.", nameof(platform));

    /// <summary>How often the tolerance in service goes into it.</summary>
    [JsonIgnore]
    public double TimesTolerance => Math.Abs(Kg) / ToleranceKg;
}

/// <summary>How a plate reads at its exit end against its entry end, told from walks.</summary>
/// <param name="Plate"><c>left</c> or <c>right</c>.</param>
/// <param name="ExitCell">Id of the cell at the exit end.</param>
/// <param name="EntryCell">Id of the cell at the entry end.</param>
/// <param name="Percent">How much more it reads at the exit end for the same load, per cent; negative: less.</param>
/// <param name="ErrorPercent">One standard error of it, per cent.</param>
/// <param name="Crossings">How many crossings it rests on.</param>
/// <param name="AtKg">Mean load of the feet it rests on, kg.</param>
/// <param name="Kg">The difference at that load, kg.</param>
/// <param name="ToleranceKg">The two ends may differ by so much at that load when each is just within what OIML R 76-1 allows in service, kg.</param>
/// <param name="IsBeyond">Whether the difference is more than that by two standard errors.</param>
public sealed record PlateEndsView(
    string Plate, string EntryCell, string ExitCell, double Percent, double ErrorPercent, int Crossings, double AtKg, double Kg, double ToleranceKg, bool IsBeyond)
{
    internal static PlateEndsView? Of(TwinPlate platform, PlateSide side, IEnumerable<PlateEnds> crossings)
    {
        if (EndToEndGain.Of(crossings) is not { } gain || !AccuracyClasses.TryParse(platform.AccuracyClass, out var accuracyClass))
            return null;
        var cells = platform.Cells.Where(cell => cell.Plate == side).OrderBy(cell => cell.X).ToArray();
        // Each end may be off by the error of that load, one way and the other.
        var tolerance = 2 * WeighingTolerance.InServiceKg(accuracyClass, platform.VerificationIntervalKg, gain.LoadKg);
        var kg = gain.Percent / 100 * gain.LoadKg;
        var surely = (Math.Abs(gain.Percent) - 2 * gain.ErrorPercent) / 100 * gain.LoadKg;
        return new PlateEndsView(
            side.WireName(), cells[0].Id, cells[^1].Id, gain.Percent, gain.ErrorPercent, gain.Crossings, gain.LoadKg, kg, tolerance, surely > tolerance);
    }
}
