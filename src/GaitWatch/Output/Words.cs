using System.Globalization;

namespace GaitWatch;

/// <summary>The words of the terminal for the contract's short names.</summary>
internal static class Words
{
    /// <summary>What stands with every list of cows: the tool points, it does not diagnose. Common practice, no source.</summary>
    public const string CallTheVeterinarian =
        """
        Call the veterinarian the same day: no weight on the leg; swelling above the claw, or between the claws with fever or
        a foul smell; pus, or bone, tendon or joint suspected; both claws of a foot sore; bleeding that does not stop; nothing
        found in the foot of a clearly lame cow; not better at the block check; down, feverish or off feed. Several lame with
        blisters, drooling or fever: move no animal and call at once. A flag is a reason to look, not a diagnosis; your
        veterinarian and local rules decide.
        """;

    /// <summary>A leg in words.</summary>
    public static string Leg(string? leg) => leg switch
    {
        "lf" => "left fore",
        "rf" => "right fore",
        "lh" => "left hind",
        "rh" => "right hind",
        _ => leg ?? "",
    };

    /// <summary>Which leg or legs an alert is about; of a pair the worse is named too.</summary>
    public static string Where(string pattern, string leg) => pattern switch
    {
        "both-hind" => $"both hind, worse {Side(leg)}",
        "both-fore" => $"both fore, worse {Side(leg)}",
        _ => Leg(leg),
    };

    /// <summary>How soon to look at her.</summary>
    public static string Urgency(string? urgency) => urgency switch
    {
        "today" => "today",
        "next-visit" => "next visit",
        "watch" => "watch",
        _ => urgency ?? "",
    };

    /// <summary>A share of a hundred, whole.</summary>
    public static string Percent(double? percent) => percent is { } value ? string.Create(CultureInfo.InvariantCulture, $"{value:0} %") : "";

    /// <summary>A day.</summary>
    public static string Day(DateOnly? day) => day is { } value ? value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "";

    /// <summary>The farm's day of an instant.</summary>
    public static string DayOf(DateTimeOffset instant, TimeZoneInfo zone) => Day(DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, zone).DateTime));

    /// <summary>An instant to the minute, in the farm's zone.</summary>
    public static string Minute(DateTimeOffset? instant, TimeZoneInfo zone) =>
        instant is { } value ? TimeZoneInfo.ConvertTime(value, zone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) : "";

    private static string Side(string leg) => leg.StartsWith('l') ? "left" : "right";
}
