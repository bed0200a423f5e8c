using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>
/// The geometry of a platform: two plates side by side with a kerb between them, each on two or more load cells at known
/// <c>x</c> along the walking direction, 0 at the entry edge.
/// </summary>
public sealed record TwinPlate
{
    /// <summary>The platform's name in the topics.</summary>
    public required string Id { get; init; }

    /// <summary>Length of the plates along the walking direction, metres; 1.8 to 6.</summary>
    public double PlateLengthMetres { get; init; } = 2.4;

    /// <summary>Nominal sampling rate, Hz; 50 to 1,000. The rate in a frame wins over this.</summary>
    public double SampleRateHz { get; init; } = 200;

    /// <summary>The load cells of both plates, in the order in which frames hold their samples.</summary>
    public required ImmutableArray<LoadCell> Cells { get; init; }

    /// <summary>Accuracy class of the instrument by OIML R 76-1, as on its plate.</summary>
    public string AccuracyClass { get; init; } = "III";

    /// <summary>Verification scale interval e by OIML R 76-1, kg.</summary>
    public double VerificationIntervalKg { get; init; } = 0.5;

    /// <summary>The platform of the settings' default: 2.4 m, 200 Hz, a cell at each end of each plate.</summary>
    public static TwinPlate Default { get; } = new()
    {
        Id = "parlour-exit",
        Cells =
        [
            new("l0", PlateSide.Left, 0.0), new("l1", PlateSide.Left, 2.4),
            new("r0", PlateSide.Right, 0.0), new("r1", PlateSide.Right, 2.4),
        ],
    };

    /// <summary>
    /// Everything that is wrong with this geometry, each fault naming the field, what was found and what would be right;
    /// empty when the platform can be used.
    /// </summary>
    public ImmutableArray<string> Faults()
    {
        var faults = ImmutableArray.CreateBuilder<string>();
        if (string.IsNullOrWhiteSpace(Id) || Id.AsSpan().ContainsAny("/+# "))
            faults.Add($"id is '{Id}': a platform's id is a topic level, so not empty and without '/', '+', '#' and spaces.");
        if (!(PlateLengthMetres is >= 1.8 and <= 6))
            faults.Add($"plateLengthMetres is {PlateLengthMetres}: 1.8 to 6 metres can be analysed.");
        if (!(SampleRateHz is >= 50 and <= 1000))
            faults.Add($"sampleRateHz is {SampleRateHz}: 50 to 1000 Hz can be analysed.");
        if (!(VerificationIntervalKg > 0 && double.IsFinite(VerificationIntervalKg)))
            faults.Add($"verificationIntervalKg is {VerificationIntervalKg}: a positive number of kilograms.");
        if (!AccuracyClasses.TryParse(AccuracyClass, out _))
            faults.Add($"accuracyClass is '{AccuracyClass}': one of I, II, III, IIII, as on the instrument's plate.");
        if (Cells.IsDefaultOrEmpty)
        {
            faults.Add("cells is empty: each plate needs two or more load cells.");
            return faults.ToImmutable();
        }

        foreach (var side in Enum.GetValues<PlateSide>())
        {
            var xs = Cells.Where(cell => cell.Plate == side).Select(cell => cell.X).ToArray();
            var name = side == PlateSide.Left ? "left" : "right";
            if (xs.Length < 2)
                faults.Add($"cells has {xs.Length} on the {name} plate: two or more, or the place of a foot cannot be told.");
            else if (xs.Max() - xs.Min() < 0.5 * PlateLengthMetres)
                faults.Add($"cells of the {name} plate span {xs.Max() - xs.Min():0.##} m: at least half the plate's {PlateLengthMetres} m.");
        }

        foreach (var cell in Cells)
        {
            if (!(cell.X >= -0.5 && cell.X <= PlateLengthMetres + 0.5))
                faults.Add($"cell '{cell.Id}' stands at x = {cell.X}: between -0.5 m and half a metre beyond the plate's {PlateLengthMetres} m.");
        }

        foreach (var twice in Cells.GroupBy(cell => cell.Id, StringComparer.Ordinal).Where(group => group.Count() > 1))
            faults.Add($"cell '{twice.Key}' is listed {twice.Count()} times: each cell has an id of its own.");
        return faults.ToImmutable();
    }
}
