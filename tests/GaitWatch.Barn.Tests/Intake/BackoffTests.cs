namespace GaitWatch.Barn.Tests.Intakes;

public class BackoffTests
{
    [Fact]
    public void Delays_double_up_to_the_longest_and_begin_anew_after_a_success()
    {
        var backoff = new Backoff(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(10), () => 1);
        Assert.Equal([1, 2, 4, 8, 10, 10], Enumerable.Range(0, 6).Select(_ => backoff.Next().TotalSeconds));
        Assert.Equal(6, backoff.Failures);
        backoff.Reset();
        Assert.Equal(1, backoff.Next().TotalSeconds);
    }

    [Fact]
    public void The_draw_takes_up_to_half_of_a_delay_away() =>
        Assert.Equal(0.5, new Backoff(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(10), () => 0).Next().TotalSeconds);

    [Fact]
    public void A_thousand_failures_do_not_overflow()
    {
        var backoff = new Backoff(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(10), () => 1);
        for (var i = 0; i < 1000; i++)
            Assert.InRange(backoff.Next().TotalSeconds, 1, 10);
    }
}
