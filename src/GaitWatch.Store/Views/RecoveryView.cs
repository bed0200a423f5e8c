using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>A treated foot's recovery as the wire contract shows it.</summary>
public sealed record RecoveryView
{
    /// <summary>The finding that treated it.</summary>
    public required string FindingId { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>The foot.</summary>
    public required string Foot { get; init; }

    /// <summary>When it was treated.</summary>
    public required DateTimeOffset TreatedAt { get; init; }

    /// <summary><c>too-early</c>, <c>recovering</c>, <c>recovered</c>, <c>stalled</c> or <c>worse</c>.</summary>
    public required string Status { get; init; }

    /// <summary>Drop before treatment, per cent of her own normal.</summary>
    public double? DropPercentAtTreatment { get; init; }

    /// <summary>Drop now, per cent.</summary>
    public double? DropPercentNow { get; init; }

    /// <summary>95 % interval of the drop now, per cent; null when that is.</summary>
    public double[]? DropInterval { get; init; }

    /// <summary>Days in which half of the way is covered.</summary>
    public double? HalfLifeDays { get; init; }

    /// <summary>The day the curve enters the normal band.</summary>
    public DateOnly? ExpectedNormalOn { get; init; }

    /// <summary>The day on which recovery was shown.</summary>
    public DateOnly? RecoveredOn { get; init; }

    /// <summary>Half width of the normal band, per cent.</summary>
    public double? BandPercent { get; init; }

    /// <summary>Mean drop of each day since treatment, oldest first.</summary>
    public required IReadOnlyList<RecoveryDayView> Days { get; init; }

    /// <summary>Blocks, wraps and pain relief, oldest first.</summary>
    public required IReadOnlyList<RecoveryMarkView> Marks { get; init; }

    /// <summary>In plain words, why this status.</summary>
    public required string Explanation { get; init; }

    /// <summary>How a recovery looks on the wire.</summary>
    public static RecoveryView Of(RecoveryAssessment recovery) => new()
    {
        FindingId = recovery.FindingId,
        Cow = recovery.Cow,
        Foot = GaitWatch.Gait.Legs.WireName(recovery.Foot),
        TreatedAt = recovery.TreatedAt,
        Status = recovery.Status.WireName(),
        DropPercentAtTreatment = recovery.DropPercentAtTreatment,
        DropPercentNow = recovery.DropPercentNow,
        DropInterval = recovery is { DropLowerPercent: { } lower, DropUpperPercent: { } upper } ? [lower, upper] : null,
        HalfLifeDays = recovery.HalfLifeDays,
        ExpectedNormalOn = recovery.ExpectedNormalOn,
        RecoveredOn = recovery.RecoveredOn,
        BandPercent = recovery.BandPercent,
        Days = [.. recovery.Days.Select(day => new RecoveryDayView(day.Day, day.DropPercent))],
        Marks = [.. recovery.Marks.Select(mark => new RecoveryMarkView(mark.At, mark.What.WireName()))],
        Explanation = recovery.Explanation,
    };
}

/// <summary>A day of a follow-up.</summary>
/// <param name="Day">The farm's day.</param>
/// <param name="DropPercent">Mean drop, per cent.</param>
public sealed record RecoveryDayView(DateOnly Day, double DropPercent);

/// <summary>Something that changes how she walks.</summary>
/// <param name="At">When.</param>
/// <param name="What">What, such as <c>block</c>.</param>
public sealed record RecoveryMarkView(DateTimeOffset At, string What);
