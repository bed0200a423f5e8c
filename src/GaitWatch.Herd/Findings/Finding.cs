using System.Collections.Immutable;
using System.Globalization;
using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>
/// What was found in one foot and done to it. Two findings are equal when everything said in them is; the order in which signs
/// and actions were named does not count.
/// </summary>
public sealed record Finding
{
    /// <summary>The caller's name for it: sent twice it counts once.</summary>
    public required string Id { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>When the foot was in hand.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>The foot.</summary>
    public required Leg Foot { get; init; }

    /// <summary>What was found.</summary>
    public required Lesion Lesion { get; init; }

    /// <summary>The claw; null when not said, and for a lesion of the skin.</summary>
    public Claw? Claw { get; init; }

    /// <summary>Place on the claw map, 0 to 12; null when not said.</summary>
    public int? Zone { get; init; }

    /// <summary>1 mild, 2 moderate, 3 severe; null when not said, and for digital dermatitis, which has a stage.</summary>
    public int? Severity { get; init; }

    /// <summary>Stage of digital dermatitis; null for every other lesion.</summary>
    public MStage? MStage { get; init; }

    /// <summary>Signs that ask for the veterinarian, each once.</summary>
    public ImmutableArray<VetSign> Signs { get; init => field = InOrder(value); } = [];

    /// <summary>What was done, each once, in the order of the work.</summary>
    public ImmutableArray<FindingAction> Actions { get; init => field = InOrder(value); } = [];

    /// <summary>The claw that carries the block put on; null when none was, or not said.</summary>
    public Claw? BlockClaw { get; init; }

    /// <summary>What the block is made of; null when not said.</summary>
    public string? BlockMaterial { get; init; }

    /// <summary>The body found; null when none was, or not described.</summary>
    public ForeignBody? ForeignBody { get; init; }

    /// <summary>Until when milk or meat is withheld, as the farm entered it; never computed here.</summary>
    public DateOnly? WithdrawalUntil { get; init; }

    /// <summary>How she walked, 1 to 5 (<see cref="LocomotionScore"/>); null when not said.</summary>
    public int? LocomotionScore { get; init; }

    /// <summary>Who entered it; may be empty.</summary>
    public string By { get; init; } = "";

    /// <summary>What else was to be said; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <summary>Order of findings: by time, then by id.</summary>
    public static IComparer<Finding> ByTime { get; } = Comparer<Finding>.Create((a, b) =>
        a.At != b.At ? a.At.CompareTo(b.At) : string.CompareOrdinal(a.Id, b.Id));

    /// <summary>Whether something was done.</summary>
    public bool Did(FindingAction action) => Actions.Contains(action);

    /// <inheritdoc/>
    public bool Equals(Finding? other) => other is not null && (ReferenceEquals(this, other) || Canonical() == other.Canonical());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Id, Cow, At, Foot, Lesion);

    /// <summary>Everything said, as one text: equal findings have equal texts, and no two others do.</summary>
    internal string Canonical() => string.Join(',', new[]
    {
        Id, Cow, At.UtcTicks.ToString(CultureInfo.InvariantCulture), $"{Foot}", $"{Lesion}", $"{Claw}", $"{Zone}", $"{Severity}", $"{MStage}",
        string.Join('+', Signs), string.Join('+', Actions), $"{BlockClaw}", BlockMaterial ?? "-", ForeignBody?.Kind ?? "-",
        ForeignBody?.SizeMillimetres?.ToString("R", CultureInfo.InvariantCulture) ?? "-", WithdrawalUntil?.ToString("O", CultureInfo.InvariantCulture) ?? "-",
        $"{LocomotionScore}", By, Note,
    }.Select(text => $"{text.Length}:{text}"));

    private static ImmutableArray<T> InOrder<T>(ImmutableArray<T> values) where T : struct, Enum =>
        values.IsDefaultOrEmpty ? [] : [.. values.Distinct().Order()];
}
