using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>
/// What a simulated herd is like. Each disturbance can be set alone; <see cref="Plain"/>, <see cref="Barn"/>, <see cref="Hard"/> and
/// <see cref="Demo"/> are ready mixtures. Rates are invented within common practice unless a source is named.
/// </summary>
public sealed record HerdSpec
{
    /// <summary>Everything is drawn from this.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Cows in the herd on the first day, dry ones included.</summary>
    public int Cows { get; init; } = 200;

    /// <summary>First day.</summary>
    public DateOnly Start { get; init; } = new(2025, 1, 1);

    /// <summary>Days simulated.</summary>
    public int Days { get; init; } = 240;

    /// <summary>Nothing after this instant is told; null: to the end of the last day.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Milkings a day, and so crossings of each cow in milk: 2 or 3. Herds of both kinds in equal number make 2.5 on average.</summary>
    public int MilkingsPerDay { get; init; } = 2;

    /// <summary>Multiplies all of the cows' own scatter.</summary>
    public double NoiseScale { get; init; } = 1;

    /// <summary>Part of the scatter's variance that all passages of a cow on one day have in common, 0 to 1.</summary>
    public double WithinDayCorrelation { get; init; } = 0.3;

    /// <summary>Part of the cows whose scatter has heavier tails than a normal's (Student's t, 4 degrees).</summary>
    public double HeavyTailedCows { get; init; }

    /// <summary>Standard deviation of each cow's slow wandering over weeks, log-ratio.</summary>
    public double SlowWander { get; init; }

    /// <summary>New cases of lameness per 100 cows a year. 25 to 50 is usual (evidence from memory, common practice).</summary>
    public double CasesPer100CowsAndYear { get; init; }

    /// <summary>Part of the cases on a hind leg; most are.</summary>
    public double HindCases { get; init; } = 0.87;

    /// <summary>Part of the hind cases that have both hind legs sore.</summary>
    public double BothHindCases { get; init; } = 0.08;

    /// <summary>True: the trimmer visits, treats, notes; cases seen to be severe are treated by the farm in between.</summary>
    public bool Treatments { get; init; }

    /// <summary>Days from visit to visit of the trimmer.</summary>
    public int VisitEveryDays { get; init; } = 28;

    /// <summary>True: milk in the udder, the lactation's course of weight and shares, calves carried and born, dry cows away.</summary>
    public bool Lactations { get; init; }

    /// <summary>Part of the herd sold and replaced by heifers in a year.</summary>
    public double TurnoverPerYear { get; init; }

    /// <summary>Standard deviation of the platform's slow drift between its left and right plate, log-ratio.</summary>
    public double PlatformDrift { get; init; }

    /// <summary>Sudden faults of the platform: a plate reads too little until it is mended.</summary>
    public ImmutableArray<PlatformFault> PlatformFaults { get; init; } = [];

    /// <summary>Part of the days on which the floor is wet: everybody walks less evenly.</summary>
    public double WetDays { get; init; }

    /// <summary>Part of the crossings that give no passage: two at once, a stop, no trouble taken.</summary>
    public double LostPassages { get; init; }

    /// <summary>Part of the passages without a tag.</summary>
    public double MissedReads { get; init; }

    /// <summary>Part of the passages that carry the tag of the cow behind.</summary>
    public double SwappedTags { get; init; }

    /// <summary>Part of the passages that arrive minutes to days late.</summary>
    public double LateReads { get; init; }

    /// <summary>Part of the passages that arrive twice.</summary>
    public double DoubledReads { get; init; }

    /// <summary>True: at the end of the history some cows are lame, each at a stage of her own, as a demonstration needs.</summary>
    public bool DemoCases { get; init; }

    /// <summary>Platform's name.</summary>
    public string Platform { get; init; } = "parlour-exit";

    /// <summary>First instant that is not told.</summary>
    public DateTimeOffset End
    {
        get
        {
            var end = new DateTimeOffset(Start.AddDays(Days), TimeOnly.MinValue, TimeSpan.Zero);
            return Until is { } until && until < end ? until : end;
        }
    }

    /// <summary>Sound cows with a scatter of their own, nothing else.</summary>
    public static HerdSpec Plain(long seed, int cows = 200, int days = 240) => new() { Seed = seed, Cows = cows, Days = days };

    /// <summary>Everything a barn does to a measurement. Even seeds milk twice, odd ones thrice a day.</summary>
    public static HerdSpec Barn(long seed, int cows = 200, int days = 240) => new()
    {
        Seed = seed,
        Cows = cows,
        Days = days,
        MilkingsPerDay = seed % 2 == 0 ? 2 : 3,
        HeavyTailedCows = 0.25,
        SlowWander = 0.015,
        CasesPer100CowsAndYear = 40,
        Treatments = true,
        Lactations = true,
        TurnoverPerYear = 0.3,
        PlatformDrift = 0.01,
        WetDays = 0.08,
        LostPassages = 0.06,
        MissedReads = 0.01,
        SwappedTags = 0.003,
        LateReads = 0.005,
        DoubledReads = 0.002,
        // Day 120 or so: the right plate reads 12 % too little for two days.
        PlatformFaults = days > 60 ? [new(days / 2, 2, false, 0.12)] : [],
    };

    /// <summary>A small herd with half the reads missing and half as much scatter again.</summary>
    public static HerdSpec Hard(long seed, int days = 240) => Barn(seed, 40, days) with { MissedReads = 0.5, NoiseScale = 1.5 };

    /// <summary>
    /// Sixty cows over the year before <paramref name="now"/>, at whose end some are freshly lame at different stages, one of them
    /// severely, one on both hind legs, one recovering after treatment, one stalled.
    /// </summary>
    public static HerdSpec Demo(long seed, DateTimeOffset now) => Barn(seed, 60, 366) with
    {
        MilkingsPerDay = 2,
        CasesPer100CowsAndYear = 30,
        VisitEveryDays = 14,
        Start = DateOnly.FromDateTime(now.UtcDateTime).AddDays(-365),
        Until = now.ToUniversalTime(),
        DemoCases = true,
        PlatformFaults = [new(150, 2, false, 0.12)],
    };
}

/// <summary>A sudden fault of a platform, as of a stone jammed under a plate.</summary>
/// <param name="FirstDay">Day of the history on which it begins, from 0.</param>
/// <param name="Days">How long it lasts.</param>
/// <param name="IsLeft">The plate that reads too little.</param>
/// <param name="Loss">Part of the load that it does not feel.</param>
public sealed record PlatformFault(int FirstDay, int Days, bool IsLeft, double Loss);
