using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>
/// A leg's trouble: it begins, the load drop grows in a straight line to its plateau, and after each treatment falls exponentially
/// towards what remains of it.
/// </summary>
public sealed record LamenessEpisode
{
    /// <summary>The cow's number.</summary>
    public required string Cow { get; init; }

    /// <summary>The sore leg.</summary>
    public required Foot Foot { get; init; }

    /// <summary>True when the opposite leg is sore at once by an episode of the same onset.</summary>
    public bool IsPaired { get; init; }

    /// <summary>True when it came on the opposite leg of one long lame (Thomas H.J. et al. 2016, Vet Rec 178:116: 38 % of such cows).</summary>
    public bool IsSecondary { get; init; }

    /// <summary>When it begins.</summary>
    public required DateTimeOffset OnsetAt { get; init; }

    /// <summary>Days from onset to plateau.</summary>
    public required double RampDays { get; init; }

    /// <summary>Part of that leg's own load that she takes off it at the plateau, 0 to 1.</summary>
    public required double PlateauDrop { get; init; }

    /// <summary>What is wrong: the lesion's code as a finding names it.</summary>
    public required string Lesion { get; init; }

    /// <summary>Turning points, by time: treatments, and healing that starts by itself.</summary>
    public ImmutableArray<HealingStart> Healing { get; init; } = [];

    /// <summary>The first treatment at the chute; null when never treated.</summary>
    public DateTimeOffset? TreatedAt => Healing.FirstOrDefault(start => start.IsTreatment)?.At;

    /// <summary>Part of the leg's own load taken off it at an instant, 0 before the onset.</summary>
    public double DropAt(DateTimeOffset at)
    {
        if (at <= OnsetAt)
            return 0;
        var drop = Grown(Healing.IsEmpty || at < Healing[0].At ? at : Healing[0].At);
        for (var i = 0; i < Healing.Length && Healing[i].At <= at; i++)
        {
            var until = i + 1 < Healing.Length && Healing[i + 1].At <= at ? Healing[i + 1].At : at;
            var rest = Healing[i].RemainingPart * drop;
            drop = rest + (drop - rest) * Math.Pow(0.5, (until - Healing[i].At).TotalDays / Healing[i].HalfLifeDays);
        }

        return drop;
    }

    /// <summary>When the drop has come down to 1 % of the leg's load; null when it never does.</summary>
    public DateTimeOffset? HealedAt
    {
        get
        {
            if (Healing.IsEmpty)
                return null;
            var last = Healing[^1];
            var drop = DropAt(last.At);
            if (drop <= 0.01)
                return last.At;
            var rest = last.RemainingPart * drop;
            return rest >= 0.01 ? null : last.At.AddDays(last.HalfLifeDays * Math.Log2((drop - rest) / (0.01 - rest)));
        }
    }

    private double Grown(DateTimeOffset at) => PlateauDrop * Math.Min(1, (at - OnsetAt).TotalDays / RampDays);
}

/// <summary>From here on the leg heals, wholly or in part.</summary>
/// <param name="At">When.</param>
/// <param name="HalfLifeDays">Days in which what will go is halved.</param>
/// <param name="RemainingPart">Part of the drop at that moment which never goes, 0 to 1: 0 heals wholly, 1 not at all.</param>
/// <param name="IsTreatment">False when it heals by itself.</param>
/// <param name="HasBlock">True when a block was put on.</param>
/// <param name="HasPainRelief">True when pain relief was given.</param>
public sealed record HealingStart(
    DateTimeOffset At, double HalfLifeDays, double RemainingPart, bool IsTreatment, bool HasBlock = false, bool HasPainRelief = false);
