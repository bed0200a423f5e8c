using CsCheck;

namespace GaitWatch.Herd.Tests;

public sealed class ProportionTests
{
    // Newcombe R.G. 1998, Stat Med 17:857-872, table I, method 3 (four digits; the table from memory, agreeing with scipy).
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void The_interval_is_the_published_one(int count, int of, double lower, double upper)
    {
        var interval = new Proportion(count, of).Interval();
        Assert.Equal(lower, interval.Lower, 0.5e-4);
        Assert.Equal(upper, interval.Upper, 0.5e-4);
    }

    // scipy.stats.binomtest(...).proportion_ci(method="wilson") (Reference/make_reference.py).
    [Fact]
    public void The_interval_is_scipys()
    {
        foreach (var reference in ReferenceValues.Of("wilson"))
        {
            var proportion = new Proportion(reference.GetProperty("count").GetInt32(), reference.GetProperty("of").GetInt32());
            var interval = proportion.Interval(reference.GetProperty("confidence").GetDouble());
            Assert.Equal(reference.GetProperty("lower").GetDouble(), interval.Lower, 1e-9);
            Assert.Equal(reference.GetProperty("upper").GetDouble(), interval.Upper, 1e-9);
        }
    }

    [Fact]
    public void The_interval_holds_the_fraction_and_stays_within_bounds() => Gen.Select(Gen.Int[1, 500], Gen.Double[0, 1]).Sample((of, part) =>
    {
        var proportion = new Proportion((int)(part * of), of);
        var (lower, upper) = proportion.Interval();
        return lower >= 0 && lower <= proportion.Value && proportion.Value <= upper && upper <= 1;
    });

    [Fact]
    public void Of_none_nothing_is_known_and_more_than_all_is_refused()
    {
        Assert.Null(new Proportion(0, 0).Value);
        Assert.Equal((0, 1), new Proportion(0, 0).Interval());
        Assert.StartsWith("3 of 2: a count lies between 0", Assert.Throws<ArgumentOutOfRangeException>(() => new Proportion(3, 2)).Message, StringComparison.Ordinal);
    }
}
