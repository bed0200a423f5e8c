namespace GaitWatch;

/// <summary>Whether the clock can be believed, and where the farm's day ends.</summary>
internal static class ClockCheck
{
    private const string What = "clock";

    /// <summary>Looks at the clock.</summary>
    /// <param name="now">What it shows.</param>
    /// <param name="built">When this program was built: a clock before that is wrong.</param>
    /// <param name="newestEvent">The newest event in the store; null when none is known.</param>
    /// <param name="zone">The farm's time zone.</param>
    public static IEnumerable<CheckLine> Of(DateTimeOffset now, DateTimeOffset built, DateTimeOffset? newestEvent, TimeZoneInfo zone)
    {
        if (now < built)
        {
            yield return CheckLine.Fault(
                What, $"The clock shows {now:yyyy-MM-dd HH:mm} UTC, before this program was built.", "Set it, and let it follow a time server.");
        }
        else if (newestEvent is { } newest && newest > now.AddMinutes(5))
        {
            yield return CheckLine.Notice(
                What, $"The newest reading is of {newest:yyyy-MM-dd HH:mm} UTC, later than the clock's {now:yyyy-MM-dd HH:mm}.",
                "This machine's clock or a platform's is wrong; let both follow a time server.");
        }
        else
        {
            yield return CheckLine.Ok(What, $"{now:yyyy-MM-dd HH:mm} UTC, {TimeZoneInfo.ConvertTime(now, zone):HH:mm} on the farm.");
        }

        yield return zone.HasSameRules(TimeZoneInfo.Utc)
            ? CheckLine.Notice(What, $"The farm's time zone is {zone.Id}.", "Unless the farm lives by it, set GaitWatch:TimeZone to its own, such as Europe/Dublin: it sets where a day ends.")
            : CheckLine.Ok(What, $"The farm's time zone is {zone.Id}.");
    }
}
