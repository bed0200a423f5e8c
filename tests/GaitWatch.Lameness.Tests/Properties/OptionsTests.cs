namespace GaitWatch.Lameness.Tests.Properties;

public sealed class OptionsTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(51)]
    public void A_budget_out_of_range_is_refused_by_name(double budget)
    {
        var e = Assert.Throws<ArgumentException>(() => new HerdFold(new LamenessOptions { FalseAlertsPer100CowsPerWeek = budget }));
        Assert.Contains("FalseAlertsPer100CowsPerWeek", e.Message, StringComparison.Ordinal);
        Assert.Contains("between", e.Message, StringComparison.Ordinal);
    }
}
