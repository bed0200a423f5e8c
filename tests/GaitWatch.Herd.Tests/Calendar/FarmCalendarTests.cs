using CsCheck;

namespace GaitWatch.Herd.Tests;

/// <summary>Days of 23, 24 and 25 hours. The dates of the clock changes are those of the IANA time zone database.</summary>
public sealed class FarmCalendarTests
{
    private static readonly FarmCalendar Berlin = new(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));

    private static readonly string[] Zones = ["Europe/Berlin", "America/Chicago", "Australia/Lord_Howe", "Africa/Cairo", "Asia/Kathmandu"];

    [Theory]
    [InlineData("2026-03-29", 23)]
    [InlineData("2026-10-25", 25)]
    [InlineData("2026-06-01", 24)]
    public void A_day_is_as_long_as_the_clocks_make_it(string day, int hours)
    {
        var date = DateOnly.Parse(day);
        Assert.Equal(TimeSpan.FromHours(hours), Berlin.EndOf(date) - Berlin.StartOf(date));
    }

    [Fact]
    public void Where_the_clocks_skip_midnight_the_day_begins_with_its_first_instant()
    {
        // Cairo 2024-04-26: from 00:00 to 01:00 (IANA tz database, rule Egypt).
        var cairo = new FarmCalendar(TimeZoneInfo.FindSystemTimeZoneById("Africa/Cairo"));
        var day = new DateOnly(2024, 4, 26);
        Assert.Equal(new DateTimeOffset(2024, 4, 25, 22, 0, 0, TimeSpan.Zero), cairo.StartOf(day));
        Assert.Equal(day, cairo.DayOf(cairo.StartOf(day)));
        Assert.Equal(day.AddDays(-1), cairo.DayOf(cairo.StartOf(day).AddMilliseconds(-1)));
    }

    [Fact]
    public void Every_instant_falls_into_the_day_whose_bounds_hold_it() =>
        Gen.Select(Gen.Long[0, 4_000_000_000], Gen.Int[0, Zones.Length - 1])
            .Sample((seconds, which) =>
            {
                var calendar = new FarmCalendar(TimeZoneInfo.FindSystemTimeZoneById(Zones[which]));
                var instant = DateTimeOffset.FromUnixTimeSeconds(seconds);
                var day = calendar.DayOf(instant);
                return calendar.StartOf(day) <= instant && instant < calendar.EndOf(day);
            });
}
