namespace GaitWatch.Gait.Tests;

/// <summary>The rule of the contract, situation by situation. Times are seconds; the window is 10 s.</summary>
public class TagAssignmentTests
{
    private const string A = "982000123456789";
    private const string B = "982000123456790";
    private const string C = "276000000000001";

    [Fact]
    public void A_tag_read_before_names_her() => Equal([A], [(5, 9)], (2, A));

    [Fact]
    public void No_tag_is_said() => Equal(["no-tag"], [(5, 9)]);

    [Fact]
    public void A_tag_read_at_the_very_beginning_of_the_window_counts() => Equal([A], [(15, 19)], (5, A));

    [Fact]
    public void A_tag_read_longer_ago_than_the_window_does_not() => Equal(["no-tag"], [(15.001, 19)], (5, A));

    [Fact]
    public void A_tag_read_at_first_contact_counts_as_waiting() => Equal([A], [(5, 9)], (5, A), (6, B));

    [Fact]
    public void Two_tags_waiting_are_two_tags() => Equal(["two-tags"], [(5, 9)], (2, A), (3, B));

    [Fact]
    public void The_same_tag_twice_is_one_read() => Equal([A], [(5, 9)], (2, A), (3, A), (4, A));

    [Fact]
    public void With_none_waiting_the_first_read_under_way_names_her() => Equal([A], [(5, 9)], (6, A), (7, B));

    [Fact]
    public void A_read_after_the_last_lift_is_too_late() => Equal(["no-tag"], [(5, 9)], (9.001, A));

    [Fact]
    public void A_further_tag_under_way_waits_for_the_next_crossing() => Equal([A, B], [(5, 9), (12, 16)], (2, A), (8, B));

    [Fact]
    public void A_further_tag_under_way_waits_no_longer_than_the_window() => Equal([A, "no-tag"], [(5, 9), (19, 23)], (2, A), (8, B));

    [Fact]
    public void The_tag_after_the_one_that_named_her_under_way_waits_too() => Equal([A, B], [(5, 9), (12, 16)], (6, A), (8, B));

    [Fact]
    public void A_used_tag_does_not_wait_again() => Equal([A, "no-tag"], [(5, 7), (9, 12)], (4, A));

    [Fact]
    public void The_same_tag_read_again_under_way_is_the_same_read() => Equal([A, "no-tag"], [(5, 9), (12, 16)], (2, A), (8, A));

    [Fact]
    public void Her_tag_read_again_under_way_does_not_disturb_the_next() => Equal([A, B], [(5, 9), (12, 16)], (2, A), (8, A), (8.5, B));

    [Fact]
    public void Her_tag_read_again_after_she_left_waits_as_a_new_read() => Equal([A, A], [(5, 9), (12, 16)], (2, A), (10, A));

    [Fact]
    public void Two_tags_waiting_are_not_used_up() => Equal(["two-tags", "two-tags"], [(5, 7), (9, 12)], (3, A), (4, B));

    [Fact]
    public void Of_two_waiting_the_one_still_in_the_window_names_the_next() => Equal(["two-tags", B], [(10, 11), (13, 16)], (1, A), (8, B));

    [Fact]
    public void A_tag_waiting_and_another_under_way_do_not_clash() => Equal([A], [(5, 9)], (2, A), (5.5, B));

    [Fact]
    public void The_order_of_the_reads_does_not_matter() => Equal([A, B], [(5, 9), (12, 16)], (8, B), (2, A));

    [Fact]
    public void A_queue_of_three_each_read_while_the_cow_ahead_is_on_the_plate() =>
        Equal([A, B, C], [(5, 9), (10, 14), (15, 19)], (2, A), (7, B), (12, C));

    private static void Equal(string[] expected, (double First, double Last)[] crossings, params (double At, string Eid)[] reads)
    {
        var verdicts = TagAssignment.Assign(
            [.. crossings.Select(crossing => (At(crossing.First), At(crossing.Last)))],
            [.. reads.Select(read => new TagRead(At(read.At), Eid.Parse(read.Eid)))],
            TimeSpan.FromSeconds(10));
        Assert.Equal(expected, verdicts.Select(verdict => verdict.Eid?.ToString() ?? verdict.Reason!.Value.WireName()));
    }

    private static DateTimeOffset At(double seconds) => Tape.Start.AddSeconds(seconds);
}
