namespace GaitWatch.Simulator;

/// <summary>What crosses the platform, and how.</summary>
public enum CrossingKind
{
    /// <summary>A cow walks over at one pace.</summary>
    Steady,

    /// <summary>A cow walks over, changing her speed or so slowly that a hind foot lands beside the fore foot still standing.</summary>
    Varied,

    /// <summary>Two cows nose to tail, both on the plates at once.</summary>
    TwoCows,

    /// <summary>She stands on the platform for over three seconds, then walks on.</summary>
    Stops,

    /// <summary>She comes on, stops, and leaves by the entry.</summary>
    TurnsBack,

    /// <summary>She goes back by a stride or part of one, then on.</summary>
    BacksAStep,

    /// <summary>She trots over.</summary>
    Runs,

    /// <summary>A calf walks over.</summary>
    Calf,

    /// <summary>A dog trots over.</summary>
    Dog,

    /// <summary>A person walks over.</summary>
    Person,

    /// <summary>A good walk of whose frames a stretch is lost.</summary>
    MissingFrames,

    /// <summary>A good walk over only a part of the platform: at least one leg never stands wholly on a plate.</summary>
    HalfCrossed,
}

/// <summary>What each kind of crossing should be called.</summary>
public static class CrossingKinds
{
    /// <summary>The bad ones.</summary>
    public static IReadOnlyList<CrossingKind> Bad { get; } = [.. Enum.GetValues<CrossingKind>().Where(kind => !kind.IsGood())];

    /// <summary>True for one cow walking over at her own pace, wholly recorded.</summary>
    public static bool IsGood(this CrossingKind kind) => kind is CrossingKind.Steady or CrossingKind.Varied;

    /// <summary>The contract's word for what is wrong; null for a good crossing. Other words may hold as well.</summary>
    public static string? Reason(this CrossingKind kind) => kind switch
    {
        CrossingKind.TwoCows => "two-cows",
        CrossingKind.Stops => "stopped",
        CrossingKind.TurnsBack => "turned",
        CrossingKind.BacksAStep => "backed-up",
        CrossingKind.Runs => "too-fast",
        CrossingKind.Calf or CrossingKind.Dog or CrossingKind.Person => "not-a-cow",
        CrossingKind.MissingFrames => "gap-in-frames",
        CrossingKind.HalfCrossed => "incomplete",
        _ => null,
    };
}
