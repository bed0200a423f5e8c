namespace GaitWatch.Store;

// Rows of the derived state: everything here can be made again from the log.

internal sealed class LegColumns
{
    public double? LoadKg { get; set; }
    public double? Share { get; set; }
    public double? ShareError { get; set; }
    public double? PeakKg { get; set; }
    public double? StanceSeconds { get; set; }
    public int Footfalls { get; set; }
}

internal sealed class PassageRow
{
    public required string Id { get; set; }
    public required string Platform { get; set; }
    public bool FromFrames { get; set; }
    public long? Eid { get; set; }
    public string? Cow { get; set; }
    public long StartedAt { get; set; }
    public long EndedAt { get; set; }
    public bool Accepted { get; set; }

    // Wire names, comma between, the decisive one first; the gait analysis' own, not those found in the light of her history.
    public required string Reasons { get; set; }
    public double? WeightKg { get; set; }
    public double? StrideSeconds { get; set; }
    public double? SpeedMetresPerSecond { get; set; }
    public required LegColumns Lf { get; set; }
    public required LegColumns Rf { get; set; }
    public required LegColumns Lh { get; set; }
    public required LegColumns Rh { get; set; }

    // What the crossing tells of each plate's ends; null together.
    public double? LeftEndsPercent { get; set; }
    public double? LeftEndsWeight { get; set; }
    public double? LeftEndsLoadKg { get; set; }
    public double? RightEndsPercent { get; set; }
    public double? RightEndsWeight { get; set; }
    public double? RightEndsLoadKg { get; set; }
}

internal sealed class CowSeenRow
{
    public required string Cow { get; set; }
    public long FirstSeenAt { get; set; }
    public long LastSeenAt { get; set; }
}

internal sealed class AssessmentRow
{
    public required string PassageId { get; set; }
    public required string Cow { get; set; }
    public long At { get; set; }
    public required string Reasons { get; set; }
    public int Baseline { get; set; }

    // Null together while nothing is known of her.
    public double? ExpectedLf { get; set; }
    public double? ExpectedRf { get; set; }
    public double? ExpectedLh { get; set; }
    public double? ExpectedRh { get; set; }
    public double? SpreadLf { get; set; }
    public double? SpreadRf { get; set; }
    public double? SpreadLh { get; set; }
    public double? SpreadRh { get; set; }
    public double? ResidualForeHind { get; set; }
    public double? ResidualFore { get; set; }
    public double? ResidualHind { get; set; }
    public double? CommonForeHind { get; set; }
    public double? CommonFore { get; set; }
    public double? CommonHind { get; set; }
    public double EvidenceLf { get; set; }
    public double EvidenceRf { get; set; }
    public double EvidenceLh { get; set; }
    public double EvidenceRh { get; set; }
    public double EvidenceBothHind { get; set; }
    public double EvidenceBothFore { get; set; }
}

internal sealed class AlertRow
{
    public required string Id { get; set; }
    public required string Cow { get; set; }
    public required string Pattern { get; set; }
    public required string Leg { get; set; }
    public long RaisedAt { get; set; }
    public long? ClosedAt { get; set; }
    public int? CloseReason { get; set; }
    public int State { get; set; }
    public long? RevisedAt { get; set; }

    // The alert as of its newest step.
    public required string Body { get; set; }
}

internal sealed class AlertStepRow
{
    public required string AlertId { get; set; }
    public int Number { get; set; }
    public long At { get; set; }
    public int Kind { get; set; }
    public required string Body { get; set; }
}

internal sealed class AlertRedirectRow
{
    public required string OldId { get; set; }

    // Null: withdrawn.
    public string? NewId { get; set; }
    public long At { get; set; }
}

internal sealed class CheckpointRow
{
    public long Head { get; set; }
    public required byte[] Saved { get; set; }
}

internal sealed class ZeroRow
{
    public required string Platform { get; set; }

    // The quarter of an hour, by its beginning.
    public long Bucket { get; set; }
    public long At { get; set; }
    public required string Kg { get; set; }
}

internal sealed class ShiftRow
{
    public required string Platform { get; set; }
    public required string Body { get; set; }
}

internal sealed class MarkRow
{
    public required string Name { get; set; }
    public long Value { get; set; }
}

internal sealed class RecoveryRow
{
    public required string FindingId { get; set; }
    public required string Cow { get; set; }
    public long TreatedAt { get; set; }

    // Without its days, which only the view of one cow needs.
    public required string Body { get; set; }
    public required string Days { get; set; }
}
