namespace GaitWatch.Lameness.Tests;

public sealed class EquivalenceTests
{
    // scipy.stats.ttest_1samp, both alternatives (Reference/make_reference.py).
    [Fact]
    public void The_p_value_is_scipys()
    {
        foreach (var reference in ReferenceValues.Of("equivalence").EnumerateArray())
            Assert.Equal(reference.Number("pValue"), Equivalence.PValue(reference.Numbers("values"), reference.Number("band")), 1e-9);
    }

    [Fact]
    public void Nothing_is_shown_by_one_value_and_everything_by_values_all_alike()
    {
        Assert.Equal(1, Equivalence.PValue([0.1], 4));
        Assert.Equal(0, Equivalence.PValue([0.5, 0.5, 0.5], 4));
        Assert.Equal(1, Equivalence.PValue([5.0, 5.0, 5.0], 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => Equivalence.PValue([1, 2], 0));
    }
}
