using GaitWatch.Gait;

namespace GaitWatch.Barn.Tests.Analysis;

/// <summary>How far the question whose crossing it was reaches. The window is 10 s.</summary>
public class TagChainTests
{
    private static readonly TimeSpan Window = TimeSpan.FromSeconds(10);

    private static DateTimeOffset At(double seconds) => Some.Now.AddSeconds(seconds);

    private static TagRead Tag(double seconds) => new(At(seconds), Eid.Parse("982000123456789"));

    private static (double From, double To) Around(double from, double to, (double From, double To)[] crossings, double[] tags)
    {
        var chain = TagChain.Around(
            new TagChain(At(from), At(to)), crossings.Select(crossing => (At(crossing.From), At(crossing.To))), tags.Select(Tag), Window);
        return ((chain.From - Some.Now).TotalSeconds, (chain.To - Some.Now).TotalSeconds);
    }

    [Fact]
    public void Alone_it_is_itself() => Assert.Equal((0, 4), Around(0, 4, [], []));

    [Fact]
    public void A_read_up_to_a_window_before_belongs_to_it() => Assert.Equal((-10, 4), Around(0, 4, [(0, 4)], [-10]));

    [Fact]
    public void A_read_earlier_than_a_window_does_not() => Assert.Equal((0, 4), Around(0, 4, [(0, 4)], [-10.001]));

    [Fact]
    public void Links_are_followed_back_and_forth() =>
        Assert.Equal((-40, 44), Around(0, 4, [(-40, -30), (-22, -15), (0, 4), (14, 20), (30, 44)], [-6, 25]));

    [Fact]
    public void A_quiet_span_longer_than_the_window_ends_it_on_both_sides() =>
        Assert.Equal((0, 4), Around(0, 4, [(-20, -10.5), (0, 4), (14.5, 20)], []));

    [Fact]
    public void A_long_crossing_bridges_what_lies_within_it() =>
        Assert.Equal((-60, 4), Around(0, 4, [(-60, -5)], [-50]));
}
