namespace GaitWatch.Lameness.Tests;

public sealed class RecoveryNamesTests
{
    [Fact]
    public void Names_are_the_contracts()
    {
        Assert.Equal(["too-early", "recovering", "recovered", "stalled", "worse"], Enum.GetValues<RecoveryStatus>().Select(RecoveryNames.WireName));
        Assert.Equal(["block", "block-off", "block-lost", "wrap", "wrap-off", "pain-relief"], Enum.GetValues<RecoveryMarkKind>().Select(RecoveryNames.WireName));
    }
}
