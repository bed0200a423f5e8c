namespace GaitWatch.Store;

/// <summary>What a platform's cells read at the end of its newest frames. The zero offset is not removed.</summary>
public sealed record PlatformReadingView
{
    /// <summary>The platform.</summary>
    public required string Platform { get; init; }

    /// <summary>When the first sample averaged was taken.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>When the last sample averaged was taken.</summary>
    public required DateTimeOffset To { get; init; }

    /// <summary>How long ago that was by this machine's clock, seconds. A device sends frames only while a plate is loaded and half a second beyond.</summary>
    public required double AgeSeconds { get; init; }

    /// <summary>How many samples of each cell were averaged.</summary>
    public required int Samples { get; init; }

    /// <summary>Whether nothing moved meanwhile.</summary>
    public required bool IsSteady { get; init; }

    /// <summary>Length of the plates, metres.</summary>
    public required double PlateLengthMetres { get; init; }

    /// <summary>Accuracy class of the platform.</summary>
    public required string AccuracyClass { get; init; }

    /// <summary>Its verification scale interval e, kg.</summary>
    public required double VerificationIntervalKg { get; init; }

    /// <summary>The cells, in the platform's order.</summary>
    public required IReadOnlyList<CellReadingView> Cells { get; init; }
}

/// <summary>What a cell reads.</summary>
/// <param name="Id">The cell.</param>
/// <param name="Plate"><c>left</c> or <c>right</c>.</param>
/// <param name="X">Where it stands, metres from the entry edge.</param>
/// <param name="Kg">Mean of its samples, kg, zero offset not removed.</param>
/// <param name="SpreadKg">Standard deviation of its samples, kg.</param>
public sealed record CellReadingView(string Id, string Plate, double X, double Kg, double SpreadKg);
