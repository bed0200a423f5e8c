using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace GaitWatch.Gait;

/// <summary>The outcome of a check of a platform with a test weight. It says how the platform reads; no reading is changed by it.</summary>
/// <remarks>
/// Readings are not rescaled from it. A load is compared with the same cow's own loads on the same platform, where a constant gain
/// error cancels; rescaling from an instant on would put a step into every cow's history at once. A cell that reads wrong is set
/// right where it is, at the device.
/// </remarks>
public sealed record PlatformCalibration
{
    /// <summary>Cells are told apart only when the places differ enough: least over largest singular value of what they read.</summary>
    private const double LeastSeparation = 0.1;

    /// <summary>The platform.</summary>
    public required string Platform { get; init; }

    /// <summary>The test weight, kg.</summary>
    public required double WeightKg { get; init; }

    /// <summary>The platform's accuracy class at the time.</summary>
    public required AccuracyClass AccuracyClass { get; init; }

    /// <summary>Its verification scale interval e at the time, kg.</summary>
    public required double VerificationIntervalKg { get; init; }

    /// <summary>What was read in each place, in the order it was read.</summary>
    public required ImmutableArray<CalibrationPlace> Places { get; init; }

    /// <summary>How each cell reads, in the platform's order.</summary>
    public required ImmutableArray<CalibrationCell> Cells { get; init; }

    /// <summary>By how much the empty left plate read other after than before, kg.</summary>
    public required double LeftZeroReturnKg { get; init; }

    /// <summary>By how much the empty right plate read other after than before, kg.</summary>
    public required double RightZeroReturnKg { get; init; }

    /// <summary>How far each plate may be off empty, kg: the error in service by OIML R 76-1 at no load.</summary>
    public double ZeroToleranceKg => WeighingTolerance.InServiceKg(AccuracyClass, VerificationIntervalKg, 0);

    /// <summary>Whether both plates came back to their zero.</summary>
    public bool ZeroReturned => Math.Max(Math.Abs(LeftZeroReturnKg), Math.Abs(RightZeroReturnKg)) <= ZeroToleranceKg;

    /// <summary>Whether every place read within tolerance and the zero came back.</summary>
    public bool IsWithin => ZeroReturned && Places.All(place => place.IsWithin);

    /// <summary>Judges a trial.</summary>
    /// <param name="platform">The platform; its class must be one of OIML R 76-1.</param>
    /// <param name="trial">What was read, of cells of this platform.</param>
    public static PlatformCalibration Judge(TwinPlate platform, TestWeightTrial trial)
    {
        if (!AccuracyClasses.TryParse(platform.AccuracyClass, out var accuracyClass))
            throw new ArgumentException($"accuracyClass is '{platform.AccuracyClass}': I, II, III or IIII.", nameof(platform));
        var unloaded = trial.Places.Select(place => Unloaded(trial, place.Readings)).ToImmutableArray();
        return new PlatformCalibration
        {
            Platform = platform.Id,
            WeightKg = trial.WeightKg,
            AccuracyClass = accuracyClass,
            VerificationIntervalKg = platform.VerificationIntervalKg,
            Places = [.. trial.Places.Select((place, k) => Place(platform, accuracyClass, trial.WeightKg, place, unloaded[k]))],
            Cells = CellsOf(platform, trial, unloaded),
            LeftZeroReturnKg = ZeroReturn(PlateSide.Left),
            RightZeroReturnKg = ZeroReturn(PlateSide.Right),
        };

        double ZeroReturn(PlateSide side) =>
            platform.Cells.Select((cell, i) => cell.Plate == side ? trial.EmptyAfter.Kg[i] - trial.EmptyBefore.Kg[i] : 0).Sum();
    }

    // The zero meanwhile: a straight line between the two empties.
    private static ImmutableArray<double> Unloaded(TestWeightTrial trial, CellReadings readings)
    {
        var (before, after) = (trial.EmptyBefore, trial.EmptyAfter);
        var span = (after.At - before.At).TotalSeconds;
        var part = span > 0 ? Math.Clamp((readings.At - before.At).TotalSeconds / span, 0, 1) : 0;
        return [.. readings.Kg.Select((kg, i) => kg - before.Kg[i] - (part * (after.Kg[i] - before.Kg[i])))];
    }

    private static CalibrationPlace Place(
        TwinPlate platform, AccuracyClass accuracyClass, double weightKg, PlacedReadings place, ImmutableArray<double> cellsKg)
    {
        var side = platform.Cells.First(cell => cell.Id == place.Cell).Plate;
        double reading = 0, moment = 0;
        for (var i = 0; i < cellsKg.Length; i++)
        {
            if (platform.Cells[i].Plate != side)
                continue;
            reading += cellsKg[i];
            moment += cellsKg[i] * platform.Cells[i].X;
        }

        return new CalibrationPlace(
            place.Readings.At, place.Cell, side, reading == 0 ? null : moment / reading, reading, reading - weightKg,
            WeighingTolerance.InServiceKg(accuracyClass, platform.VerificationIntervalKg, weightKg),
            WeighingTolerance.MaintenanceKg(accuracyClass, platform.VerificationIntervalKg, weightKg),
            cellsKg);
    }

    // In every place the true loads of a plate's cells sum to the weight: with as many different places as cells that tells each cell's gain.
    private static ImmutableArray<CalibrationCell> CellsOf(TwinPlate platform, TestWeightTrial trial, ImmutableArray<ImmutableArray<double>> unloaded)
    {
        var percent = new double?[platform.Cells.Length];
        foreach (var side in Enum.GetValues<PlateSide>())
        {
            var cells = Enumerable.Range(0, platform.Cells.Length).Where(i => platform.Cells[i].Plate == side).ToArray();
            var places = Enumerable.Range(0, trial.Places.Length)
                .Where(k => platform.Cells.First(cell => cell.Id == trial.Places[k].Cell).Plate == side).ToArray();
            if (places.Length < cells.Length)
                continue;
            var read = Matrix<double>.Build.Dense(places.Length, cells.Length, (k, i) => unloaded[places[k]][cells[i]]);
            var svd = read.Svd();
            if (!(svd.S[^1] >= LeastSeparation * svd.S[0]))
                continue;
            var factors = svd.Solve(Vector<double>.Build.Dense(places.Length, trial.WeightKg));
            for (var i = 0; i < cells.Length; i++)
                percent[cells[i]] = 100 * ((1 / factors[i]) - 1);
        }

        return [.. platform.Cells.Select((cell, i) => new CalibrationCell(cell.Id, percent[i]))];
    }
}

/// <summary>How a platform read with the test weight in one place.</summary>
/// <param name="At">When.</param>
/// <param name="Cell">Id of the cell over which the weight was to stand.</param>
/// <param name="Plate">The plate it stood on.</param>
/// <param name="X">Where it stood, metres from the entry edge; null when the plate read nothing.</param>
/// <param name="ReadingKg">What the plate read, zero removed, kg.</param>
/// <param name="ErrorKg">The reading less the weight, kg.</param>
/// <param name="ToleranceKg">What OIML R 76-1 allows in service, kg.</param>
/// <param name="MaintenanceToleranceKg">What NIST Handbook 44 section 2.20 allows in maintenance, kg.</param>
/// <param name="CellsKg">What each cell of the platform read, zero removed, kg.</param>
public sealed record CalibrationPlace(
    DateTimeOffset At, string Cell, PlateSide Plate, double? X, double ReadingKg, double ErrorKg, double ToleranceKg, double MaintenanceToleranceKg,
    ImmutableArray<double> CellsKg)
{
    /// <summary>Whether the error is within what OIML R 76-1 allows in service.</summary>
    public bool IsWithin => Math.Abs(ErrorKg) <= ToleranceKg;
}

/// <summary>How a cell reads.</summary>
/// <param name="Id">The cell.</param>
/// <param name="Percent">How much more it reads than stands on it, per cent; negative: less; null where the places do not tell the plate's cells apart.</param>
public sealed record CalibrationCell(string Id, double? Percent);
