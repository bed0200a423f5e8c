using GaitWatch.Gait;

namespace GaitWatch.Barn.Tests.Analysis;

/// <summary>How much of a window's answer is believed. Seconds from some instant; the window holds frames from 0 to 100.</summary>
public class FrameWindowTests
{
    private static DateTimeOffset At(double seconds) => Some.Now.AddSeconds(seconds);

    private static Crossing Crossing(double from, double to) => new() { FirstContact = At(from), LastLift = At(to) };

    private static FrameWindow Window(
        double? before = null, double? after = null, double? keptFrom = null, bool beginsLoaded = false, double? loadedSince = null, params Crossing[] crossings) => new()
        {
            From = At(0),
            To = At(100),
            Before = before is { } b ? At(b) : null,
            After = after is { } a ? At(a) : null,
            KeptFrom = keptFrom is { } k ? At(k) : null,
            Analysis = new WindowAnalysis
            {
                Crossings = [.. crossings],
                BeginsLoaded = beginsLoaded,
                LoadedSince = loadedSince is { } l ? At(l) : null,
            },
        };

    private static double[] Believed(FrameWindow window) => [.. window.Believed().Select(crossing => (crossing.FirstContact - Some.Now).TotalSeconds)];

    [Fact]
    public void Where_the_recording_begins_and_ends_everything_is_believed() =>
        Assert.Equal([1, 50, 96], Believed(Window(crossings: [Crossing(1, 5), Crossing(50, 55), Crossing(96, 99)])));

    [Fact]
    public void Near_a_cut_the_zero_is_cut_too() =>
        Assert.Equal([50], Believed(Window(before: -0.01, after: 100, crossings: [Crossing(1, 5), Crossing(50, 55), Crossing(96, 99)])));

    [Fact]
    public void A_load_with_which_a_cut_window_begins_is_not_believed_and_what_follows_is() =>
        Assert.Equal([9], Believed(Window(before: -0.01, beginsLoaded: true, crossings: [Crossing(0, 7), Crossing(9, 13)])));

    [Fact]
    public void A_load_with_which_a_recording_begins_is_believed() =>
        Assert.Equal([0], Believed(Window(before: -60, beginsLoaded: true, crossings: [Crossing(0, 7)])));

    [Fact]
    public void Where_earlier_frames_are_no_longer_kept_the_window_counts_as_cut() =>
        Assert.Equal([50], Believed(Window(keptFrom: -1, crossings: [Crossing(1, 5), Crossing(50, 55)])));

    [Fact]
    public void A_load_of_more_than_ten_minutes_is_no_crossing() =>
        Assert.Empty(Believed(Window(crossings: [Crossing(1, 1 + 601)])));

    [Fact]
    public void A_cut_window_that_begins_loaded_asks_for_more_within_reach()
    {
        Assert.True(Window(before: -0.01, beginsLoaded: true).NeedsEarlier(At(60)));
        Assert.False(Window(before: -30, beginsLoaded: true).NeedsEarlier(At(60)));
        Assert.False(Window(before: -0.01, beginsLoaded: true).NeedsEarlier(At(601)));
        Assert.False(Window(before: -0.01).NeedsEarlier(At(60)));
    }

    [Fact]
    public void A_crossing_that_begins_at_a_cut_and_reaches_what_came_in_asks_for_more() =>
        Assert.True(Window(before: -0.01, crossings: [Crossing(2, 58)]).NeedsEarlier(At(60)));

    [Fact]
    public void A_cut_window_that_ends_loaded_asks_for_more_only_when_the_load_touches_what_came_in()
    {
        Assert.True(Window(after: 100, loadedSince: 38).NeedsLater(At(40)));
        Assert.False(Window(after: 100, loadedSince: 90).NeedsLater(At(40)));
        Assert.False(Window(after: 200, loadedSince: 38).NeedsLater(At(40)));
    }

    [Fact]
    public void A_load_at_the_end_is_over_only_when_the_recording_goes_on_elsewhere()
    {
        Assert.False(Window(loadedSince: 98).BrokeOff);
        Assert.False(Window(after: 105, loadedSince: 98).BrokeOff);
        Assert.True(Window(after: 160, loadedSince: 98).BrokeOff);
        Assert.False(Window(after: 160).BrokeOff);
    }
}
