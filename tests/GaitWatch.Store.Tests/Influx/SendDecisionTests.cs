namespace GaitWatch.Store.Tests;

public sealed class SendDecisionTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(401)]
    [InlineData(403)]
    [InlineData(404)]
    [InlineData(429)]
    [InlineData(500)]
    [InlineData(503)]
    public void What_may_pass_is_tried_again(int status) =>
        Assert.Equal(SendStep.Retry, SendDecision.Of(status, null, 5000, 0, 0.5).Step);

    // Statuses of the write route: InfluxDB's API reference v2 (400 malformed or partial write, 413 too large, 422 unprocessable).
    [Theory]
    [InlineData(400)]
    [InlineData(413)]
    [InlineData(422)]
    public void What_is_refused_is_found_by_halves_and_set_aside(int status)
    {
        Assert.Equal(new SendDecision(SendStep.Split, TimeSpan.Zero), SendDecision.Of(status, null, 2, 7, 0.5));
        Assert.Equal(new SendDecision(SendStep.SetAside, TimeSpan.Zero), SendDecision.Of(status, null, 1, 7, 0.5));
    }

    [Theory]
    [InlineData(404)]
    [InlineData(405)]
    [InlineData(501)]
    public void A_server_that_cannot_delete_holds_nothing_up(int status) =>
        Assert.Equal(SendStep.SetAside, SendDecision.Of(status, null, 0, 0, 0.5).Step);

    [Fact]
    public void The_delay_doubles_from_half_a_second_to_five_minutes_and_is_spread_over_its_upper_half()
    {
        Assert.Equal([0.5, 1, 2, 4, 8], Enumerable.Range(0, 5).Select(failures => SendDecision.Of(0, null, 1, failures, 0).Delay.TotalSeconds));
        Assert.Equal([1, 2, 4, 8, 16], Enumerable.Range(0, 5).Select(failures => SendDecision.Of(0, null, 1, failures, 1).Delay.TotalSeconds));
        Assert.Equal(300, SendDecision.Of(0, null, 1, int.MaxValue, 1).Delay.TotalSeconds);
        Assert.Equal(150, SendDecision.Of(0, null, 1, 40, 0).Delay.TotalSeconds);
    }

    [Fact]
    public void A_server_that_asks_for_more_time_gets_it_within_reason()
    {
        Assert.Equal(60, SendDecision.Of(429, TimeSpan.FromSeconds(60), 1, 0, 0.5).Delay.TotalSeconds);
        Assert.Equal(0.75, SendDecision.Of(429, TimeSpan.FromSeconds(0.1), 1, 0, 0.5).Delay.TotalSeconds);
        Assert.Equal(3600, SendDecision.Of(503, TimeSpan.FromDays(9), 1, 0, 0.5).Delay.TotalSeconds);
    }
}
