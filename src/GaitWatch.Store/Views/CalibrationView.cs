using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>A kept check of a platform with a test weight. No reading is changed by it.</summary>
public sealed record CalibrationView
{
    /// <summary>The platform.</summary>
    public required string Platform { get; init; }

    /// <summary>When the check ended.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Who did it.</summary>
    public required string By { get; init; }

    /// <summary>The test weight, kg.</summary>
    public required double WeightKg { get; init; }

    /// <summary><c>within</c> or <c>beyond</c> what OIML R 76-1 allows in service.</summary>
    public required string Verdict { get; init; }

    /// <summary>The platform's accuracy class at the time.</summary>
    public required string AccuracyClass { get; init; }

    /// <summary>Its verification scale interval e at the time, kg.</summary>
    public required double VerificationIntervalKg { get; init; }

    /// <summary>How it read in each place, in the order it was read.</summary>
    public required IReadOnlyList<CalibrationPlaceView> Places { get; init; }

    /// <summary>How each cell reads.</summary>
    public required IReadOnlyList<CalibrationCellView> Cells { get; init; }

    /// <summary>By how much the empty left plate read other after than before, kg.</summary>
    public required double LeftZeroReturnKg { get; init; }

    /// <summary>By how much the empty right plate read other after than before, kg.</summary>
    public required double RightZeroReturnKg { get; init; }

    /// <summary>How far each plate may be off empty, kg.</summary>
    public required double ZeroToleranceKg { get; init; }

    /// <summary>What was seen.</summary>
    public required string Note { get; init; }

    /// <summary>How a kept record looks on the wire.</summary>
    public static CalibrationView Of(CalibrationWrite write)
    {
        var judged = write.Calibration;
        return new CalibrationView
        {
            Platform = judged.Platform,
            At = write.At,
            By = write.By,
            WeightKg = judged.WeightKg,
            Verdict = Word(judged.IsWithin),
            AccuracyClass = judged.AccuracyClass.ToString(),
            VerificationIntervalKg = judged.VerificationIntervalKg,
            Places =
            [
                .. judged.Places.Select(place => new CalibrationPlaceView(
                    place.At, place.Cell, place.Plate.WireName(), place.X, place.ReadingKg, place.ErrorKg, 100 * place.ErrorKg / judged.WeightKg,
                    place.ToleranceKg, place.MaintenanceToleranceKg, Word(place.IsWithin))),
            ],
            Cells = [.. judged.Cells.Select(cell => new CalibrationCellView(cell.Id, cell.Percent))],
            LeftZeroReturnKg = judged.LeftZeroReturnKg,
            RightZeroReturnKg = judged.RightZeroReturnKg,
            ZeroToleranceKg = judged.ZeroToleranceKg,
            Note = write.Note,
        };
    }

    private static string Word(bool isWithin) => isWithin ? "within" : "beyond";
}

/// <summary>How a platform read with the test weight in one place.</summary>
/// <param name="At">When.</param>
/// <param name="Cell">Id of the cell over which the weight was to stand.</param>
/// <param name="Plate"><c>left</c> or <c>right</c>.</param>
/// <param name="X">Where it stood, metres from the entry edge; null when the plate read nothing.</param>
/// <param name="ReadingKg">What the plate read, zero removed, kg.</param>
/// <param name="ErrorKg">The reading less the weight, kg.</param>
/// <param name="ErrorPercent">That over the weight, per cent.</param>
/// <param name="ToleranceKg">Largest error that OIML R 76-1 allows in service, kg.</param>
/// <param name="MaintenanceToleranceKg">Maintenance tolerance of NIST Handbook 44 section 2.20, kg.</param>
/// <param name="Verdict"><c>within</c> or <c>beyond</c> what OIML R 76-1 allows in service.</param>
public sealed record CalibrationPlaceView(
    DateTimeOffset At, string Cell, string Plate, double? X, double ReadingKg, double ErrorKg, double ErrorPercent, double ToleranceKg,
    double MaintenanceToleranceKg, string Verdict);

/// <summary>How a cell reads.</summary>
/// <param name="Id">The cell.</param>
/// <param name="Percent">How much more it reads than stands on it, per cent; negative: less; null where the places do not tell the plate's cells apart.</param>
public sealed record CalibrationCellView(string Id, double? Percent);
