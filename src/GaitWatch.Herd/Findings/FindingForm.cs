using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>
/// A finding as the wire contract writes it, before it is known to make sense. <see cref="FindingReader"/> turns it into a
/// <see cref="Finding"/> or into sentences that say what is wrong.
/// </summary>
public record FindingForm
{
    /// <summary>The caller's name for it.</summary>
    public string? Id { get; init; }

    /// <summary>Her number; in the route where the contract has it there.</summary>
    public string? Cow { get; init; }

    /// <summary>When the foot was in hand.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary><c>lf rf lh rh</c>.</summary>
    public string? Foot { get; init; }

    /// <summary><c>inner outer both</c>, null for the skin.</summary>
    public string? Claw { get; init; }

    /// <summary>0 to 12.</summary>
    public int? Zone { get; init; }

    /// <summary>An ICAR code, <c>foreign-body</c>, <c>other</c> or <c>none</c>.</summary>
    public string? Lesion { get; init; }

    /// <summary>1 to 3.</summary>
    public int? Severity { get; init; }

    /// <summary><c>M0 M1 M2 M3 M4 M4.1</c>.</summary>
    public string? MStage { get; init; }

    /// <summary>Signs that ask for the veterinarian.</summary>
    public IReadOnlyList<string>? Signs { get; init; } = [];

    /// <summary>What was done.</summary>
    public IReadOnlyList<string>? Actions { get; init; } = [];

    /// <summary><c>inner</c> or <c>outer</c>.</summary>
    public string? BlockClaw { get; init; }

    /// <summary>What the block is made of.</summary>
    public string? BlockMaterial { get; init; }

    /// <summary>The body found.</summary>
    public ForeignBodyForm? ForeignBody { get; init; }

    /// <summary>The date the farm entered.</summary>
    public DateOnly? WithdrawalUntil { get; init; }

    /// <summary>1 to 5.</summary>
    public int? LocomotionScore { get; init; }

    /// <summary>Who entered it.</summary>
    public string? By { get; init; } = "";

    /// <summary>What else was to be said.</summary>
    public string? Note { get; init; } = "";

    /// <summary>How a finding looks on the wire.</summary>
    public static FindingForm Of(Finding finding) => new()
    {
        Id = finding.Id,
        Cow = finding.Cow,
        At = finding.At,
        Foot = finding.Foot.WireName(),
        Claw = finding.Claw?.WireName(),
        Zone = finding.Zone,
        Lesion = finding.Lesion.WireName(),
        Severity = finding.Severity,
        MStage = finding.MStage?.WireName(),
        Signs = [.. finding.Signs.Select(sign => sign.WireName())],
        Actions = [.. finding.Actions.Select(action => action.WireName())],
        BlockClaw = finding.BlockClaw?.WireName(),
        BlockMaterial = finding.BlockMaterial,
        ForeignBody = finding.ForeignBody is { } body ? new ForeignBodyForm(body.Kind, body.SizeMillimetres) : null,
        WithdrawalUntil = finding.WithdrawalUntil,
        LocomotionScore = finding.LocomotionScore,
        By = finding.By,
        Note = finding.Note,
    };
}
