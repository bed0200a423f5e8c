using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>A cow's life in the herd, planned from the seed before the first day.</summary>
public sealed record SimulatedCow
{
    /// <summary>Her number.</summary>
    public required string Number { get; init; }

    /// <summary>Her electronic ear tag, valid by ISO 11784; maker code 997, which is invented.</summary>
    public required string Eid { get; init; }

    /// <summary>Her pen while in milk.</summary>
    public required string Pen { get; init; }

    /// <summary>The day of the history from which she is in the herd; 0 or before for the first cows.</summary>
    public required int EntersOn { get; init; }

    /// <summary>The day she leaves; null when she stays.</summary>
    public int? LeavesOn { get; init; }

    /// <summary>Her parity at the first of <see cref="Calvings"/>.</summary>
    public required int FirstParity { get; init; }

    /// <summary>Days of the history on which she calves, the first one before or on the day she enters.</summary>
    public required ImmutableArray<int> Calvings { get; init; }

    /// <summary>Days on which she is dried off, one before each calving but the first.</summary>
    public required ImmutableArray<int> DryOffs { get; init; }

    /// <summary>Her weight empty of calf and milk, in mid-lactation, kg.</summary>
    public required double WeightKg { get; init; }

    /// <summary>Her own shares, sound.</summary>
    public required PerFoot<double> Shares { get; init; }

    /// <summary>Her own scatter over that of the usual cow.</summary>
    public required double NoiseLevel { get; init; }

    /// <summary>True when her scatter has heavier tails than a normal's.</summary>
    public required bool IsHeavyTailed { get; init; }

    /// <summary>Her usual place in the order through the parlour, 0 first to 1 last.</summary>
    public required double Place { get; init; }

    /// <summary>Her milk at the peak, kg a day.</summary>
    public required double PeakMilkKg { get; init; }

    /// <summary>Stretches of days spent in the hospital pen, where she does not cross.</summary>
    public ImmutableArray<(int First, int Last)> Hospital { get; init; } = [];

    /// <summary>Her troubles.</summary>
    public ImmutableArray<LamenessEpisode> Episodes { get; init; } = [];

    /// <summary>What was found and done on her feet.</summary>
    public ImmutableArray<FindingEvent> Findings { get; init; } = [];

    /// <summary>True while she is in the herd.</summary>
    public bool IsPresentOn(int day) => day >= EntersOn && (LeavesOn is not { } left || day < left);

    /// <summary>True while she is milked, and so crosses.</summary>
    public bool IsMilkedOn(int day) => IsPresentOn(day) && !IsDryOn(day);

    /// <summary>True between drying off and calving.</summary>
    public bool IsDryOn(int day)
    {
        for (var i = 0; i < DryOffs.Length; i++)
        {
            if (day >= DryOffs[i] && day < Calvings[i + 1])
                return true;
        }

        return false;
    }

    /// <summary>True while she is in the hospital pen.</summary>
    public bool IsInHospitalOn(int day)
    {
        foreach (var (first, last) in Hospital)
        {
            if (day >= first && day <= last)
                return true;
        }

        return false;
    }

    /// <summary>How many of <see cref="Calvings"/> lie on or before a day; at least 1.</summary>
    public int CalvingsBy(int day)
    {
        var count = 1;
        while (count < Calvings.Length && Calvings[count] <= day)
            count++;
        return count;
    }

    /// <summary>Days since her last calving.</summary>
    public int DaysInMilkOn(int day) => day - Calvings[CalvingsBy(day) - 1];

    /// <summary>Days until her next calving; null when she has none ahead.</summary>
    public int? DaysToCalvingOn(int day) => CalvingsBy(day) is var count && count < Calvings.Length ? Calvings[count] - day : null;
}
