namespace GaitWatch.Tests;

public class ClockCheckTests
{
    private static readonly DateTimeOffset s_built = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly TimeZoneInfo s_farm = TimeZoneInfo.FindSystemTimeZoneById("Europe/Dublin");

    [Fact]
    public void A_clock_before_the_program_was_built_is_wrong() =>
        Assert.Contains(ClockCheck.Of(s_built.AddDays(-1), s_built, null, s_farm), line => line.State == CheckState.Fault);

    [Fact]
    public void A_reading_from_the_clocks_future_is_told() =>
        Assert.Contains(
            ClockCheck.Of(s_built.AddDays(60), s_built, s_built.AddDays(60).AddHours(2), s_farm),
            line => line.State == CheckState.Notice && line.Found.StartsWith("The newest reading is of 2026-03-02 02:00 UTC, later than the clock's 2026-03-02 00:00", StringComparison.Ordinal));

    [Fact]
    public void The_farms_time_is_told_beside_the_clocks() =>
        Assert.Contains(ClockCheck.Of(new(2026, 7, 1, 5, 30, 0, TimeSpan.Zero), s_built, null, s_farm), line => line.Found == "2026-07-01 05:30 UTC, 06:30 on the farm.");

    [Fact]
    public void A_farm_that_lives_by_universal_time_is_asked_whether_it_does() =>
        Assert.Contains(ClockCheck.Of(s_built, s_built, null, TimeZoneInfo.Utc), line => line.State == CheckState.Notice && line.ToDo!.Contains("GaitWatch:TimeZone", StringComparison.Ordinal));
}
