using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class AfterTreatmentTests
{
    private static readonly RecoveryOptions Options = new();
    private static readonly TreatedFoot[] Feet =
        [.. TreatedFeet.Of([Some.Finding("f", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed)], [])];

    [Theory]
    [InlineData(Leg.Rh, 40, "relapse")]
    [InlineData(Leg.Lh, 40, "opposite-leg")]
    [InlineData(Leg.Rf, 40, null)]
    // The flag that led to the treatment; one that is another trouble.
    [InlineData(Leg.Rh, -3, null)]
    [InlineData(Leg.Rh, 121, null)]
    public void A_flag_on_the_treated_leg_is_a_relapse_and_on_the_opposite_one_is_said_so(Leg leg, int raised, string? what) =>
        Assert.Equal(what, AfterTreatment.Of(Some.Alert(leg: leg, raised: raised), Feet, Options)?.WireName);

    [Fact]
    public void Both_hind_legs_are_a_relapse_of_a_hind_one_and_another_cows_foot_does_not_count()
    {
        Assert.True(AfterTreatment.Of(Some.Alert(leg: Leg.Lh, raised: 40) with { Pattern = AlertPattern.BothHind }, Feet, Options)!.IsRelapse);
        Assert.Null(AfterTreatment.Of(Some.Alert("87", Leg.Rh, raised: 40), Feet, Options));
    }

    [Fact]
    public void It_is_said_in_words_on_the_list()
    {
        Assert.Equal("A relapse: the right hind was treated on 2026-03-03.", AfterTreatment.Of(Some.Alert(raised: 40), Feet, Options)!.InWords(Some.Berlin));
        var list = TrimListComposer.Compose(new TrimListInputs
        {
            AsOf = Some.At(41), Visit = Some.Day0.AddDays(42), Calendar = Some.Berlin, Register = HerdRegister.Empty, Alerts = [Some.Alert(leg: Leg.Lh, raised: 40)],
            Writes = [Some.Finding("f", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed).Written()],
        });
        var row = list.Rows.Single(row => row.Reason == TrimListReason.Alert);
        Assert.Contains("The opposite leg: the right hind was treated on 2026-03-03", row.Note, StringComparison.Ordinal);
    }
}
