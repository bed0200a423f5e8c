namespace GaitWatch.Gait.Tests;

/// <summary>However wild the times, the clock's work is bounded: its course has so many knots at most, and each trial is one small system.</summary>
public class StrideClockWorkTests
{
    [Fact]
    public void A_course_longer_than_any_walk_is_refused()
    {
        Assert.NotNull(PaceCourse.Even(-4, 4, 1.3));
        Assert.Null(PaceCourse.Even(-40, 40, 1.3));
        Assert.Null(PaceCourse.Even(-4, 4e9, 1.3));
        Assert.Null(PaceCourse.Even(-4, double.PositiveInfinity, 1.3));
        Assert.Null(PaceCourse.Even(double.NaN, 4, 1.3));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-1.3, 0.7)]
    [InlineData(0.2, 0.3)]
    [InlineData(-9, 12)]
    [InlineData(2, -2)]
    public void The_time_between_two_stride_numbers_is_the_sum_over_small_steps(double from, double to)
    {
        var course = PaceCourse.Even(-2, 2, 1)!;
        course = course.With([.. Enumerable.Range(0, course.Knots).Select(k => 1 + (0.1 * Math.Sin(k)))])!;
        var row = new double[course.Knots];
        course.AddTime(row, from, to, 1);
        const int steps = 20_000;
        var sum = 0.0;
        for (var i = 0; i < steps; i++)
        {
            // The mean of the hat functions at the middle of the step, laid out plainly.
            var n = from + ((to - from) * (i + 0.5) / steps);
            var at = Math.Clamp((n - course.First) / PaceCourse.Spacing, 0, course.Knots - 1);
            var k = Math.Min((int)at, course.Knots - 2);
            sum += (to - from) / steps * (((1 + (0.1 * Math.Sin(k))) * (1 - (at - k))) + ((1 + (0.1 * Math.Sin(k + 1))) * (at - k)));
        }

        Assert.Equal(sum, course.Sum(row), 1e-6);
    }

    [Fact]
    public void Strides_at_a_time_undo_the_time_at_a_stride()
    {
        var course = PaceCourse.Even(-2, 2, 1)!;
        course = course.With([.. Enumerable.Range(0, course.Knots).Select(k => 1.2 - (0.05 * k))])!;
        for (var n = -3.0; n <= 3; n += 0.17)
        {
            var row = new double[course.Knots];
            course.AddTime(row, 0, n, 1);
            Assert.Equal(n, course.StridesAt(course.Sum(row)), 1e-9);
        }
    }
}
