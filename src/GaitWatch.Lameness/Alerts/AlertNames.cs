namespace GaitWatch.Lameness;

/// <summary>Names of alert values on the wire.</summary>
public static class AlertNames
{
    /// <summary>The pattern on the wire.</summary>
    public static string WireName(this AlertPattern pattern) => pattern switch
    {
        AlertPattern.OneLeg => "one-leg",
        AlertPattern.BothHind => "both-hind",
        AlertPattern.BothFore => "both-fore",
        _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "Not a pattern of the contract."),
    };

    /// <summary>The urgency on the wire.</summary>
    public static string WireName(this Urgency urgency) => urgency switch
    {
        Urgency.Today => "today",
        Urgency.NextVisit => "next-visit",
        Urgency.Watch => "watch",
        _ => throw new ArgumentOutOfRangeException(nameof(urgency), urgency, "Not an urgency of the contract."),
    };

    /// <summary>The state on the wire.</summary>
    public static string WireName(this AlertState state) => state switch
    {
        AlertState.Open => "open",
        AlertState.Listed => "listed",
        AlertState.Examined => "examined",
        AlertState.Closed => "closed",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a state of the contract."),
    };

    /// <summary>The reason on the wire.</summary>
    public static string WireName(this AlertCloseReason reason) => reason switch
    {
        AlertCloseReason.LiftedNothingFound => "lifted-nothing-found",
        AlertCloseReason.SeenWalkingSound => "seen-walking-sound",
        AlertCloseReason.TreatedByFarm => "treated-by-farm",
        AlertCloseReason.WrongCow => "wrong-cow",
        AlertCloseReason.LeftHerd => "left-herd",
        AlertCloseReason.Other => "other",
        AlertCloseReason.LoadNormal => "load-normal",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason of the contract."),
    };

    /// <summary>Reads any of the enums above from its wire name; false when no value has that name.</summary>
    /// <param name="text">The name.</param>
    /// <param name="nameOf">The enum's <c>WireName</c>.</param>
    /// <param name="value">The value, when true is returned.</param>
    /// <typeparam name="T">The enum.</typeparam>
    public static bool TryParse<T>(string? text, Func<T, string> nameOf, out T value) where T : struct, Enum
    {
        foreach (var candidate in Enum.GetValues<T>())
        {
            if (nameOf(candidate) == text)
            {
                value = candidate;
                return true;
            }
        }

        value = default;
        return false;
    }
}
