using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class TreatmentOutcomesTests
{
    // Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486: newly lame cows with claw horn lesions, sound at 35 days: trim alone 11 of
    // 45, trim and block 14 of 39, trim and pain relief 12 of 42, all three 23 of 41. Intervals: scipy, Wilson (reference.json).
    private static readonly (TreatmentArm Arm, int Sound, int Of, double Lower, double Upper)[] Published =
    [
        (TreatmentArm.Trim, 11, 45, 0.142355, 0.386734), (TreatmentArm.TrimAndBlock, 14, 39, 0.227421, 0.515819),
        (TreatmentArm.TrimAndPainRelief, 12, 42, 0.171670, 0.435672), (TreatmentArm.TrimBlockAndPainRelief, 23, 41, 0.410405, 0.701099),
    ];

    [Fact]
    public void The_published_table_comes_out_of_findings()
    {
        var findings = new List<Finding>();
        foreach (var (arm, sound, of, _, _) in Published)
        {
            for (var i = 0; i < of; i++)
            {
                var cow = $"{arm}-{i}";
                findings.Add(Some.Finding($"{cow}-treated", 0, Lesion.SoleUlcer, Leg.Rh, Actions(arm)) with { Cow = cow, LocomotionScore = 3 });
                findings.Add(Some.Finding($"{cow}-judged", 35, Lesion.None) with { Cow = cow, LocomotionScore = i < sound ? 1 : 3 });
            }
        }

        var table = TreatmentOutcomes.Table(TreatmentOutcomes.Judge(findings, [], Some.Berlin));
        Assert.Equal(Published.Select(row => (row.Arm, row.Sound, row.Of)), table.Select(row => (row.Arm, row.Sound.Count, row.Sound.Of)));
        foreach (var (row, published) in table.Zip(Published))
        {
            Assert.Equal(published.Lower, row.Lower, 1e-6);
            Assert.Equal(published.Upper, row.Upper, 1e-6);
        }
    }

    [Theory]
    [InlineData(27, null)]
    [InlineData(28, true)]
    [InlineData(42, true)]
    [InlineData(43, null)]
    public void A_score_counts_near_the_35th_day(int day, bool? sound) =>
        Assert.Equal(sound, Judged([Treated(), Some.Finding("b", day, Lesion.None) with { LocomotionScore = 1 }])?.IsSound);

    [Theory]
    [InlineData(RecoveryStatus.Recovered, 30, true)]
    [InlineData(RecoveryStatus.Recovered, 50, false)]
    [InlineData(RecoveryStatus.Stalled, null, false)]
    [InlineData(RecoveryStatus.Recovering, null, null)]
    [InlineData(RecoveryStatus.TooEarly, null, null)]
    public void Without_a_score_the_load_judges_where_it_can(RecoveryStatus status, int? recovered, bool? sound)
    {
        var recovery = Some.Recovery("a", status) with { RecoveredOn = recovered is { } day ? Some.Day0.AddDays(day) : null, LastSeenAt = Some.At(60) };
        Assert.Equal(sound, Judged([Treated()], recovery)?.IsSound);
        Assert.False(Judged([Treated(), Some.Finding("b", 35, Lesion.None) with { LocomotionScore = 3 }], recovery)!.IsSound);
    }

    [Fact]
    public void A_cow_not_watched_so_long_is_not_called_lame() =>
        Assert.Null(Judged([Treated()], Some.Recovery("a", RecoveryStatus.Stalled) with { LastSeenAt = Some.At(20) }));

    [Fact]
    public void Only_lesions_of_the_claw_horn_are_in_the_table() =>
        Assert.Null(Judged([Treated() with { Lesion = Lesion.DigitalDermatitis }, Some.Finding("b", 35, Lesion.None) with { LocomotionScore = 1 }]));

    private static Finding Treated() => Some.Finding("a", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed);

    private static JudgedTreatment? Judged(Finding[] findings, params RecoveryAssessment[] recoveries) =>
        TreatmentOutcomes.Judge(findings, recoveries, Some.Berlin).SingleOrDefault();

    private static FindingAction[] Actions(TreatmentArm arm) => arm switch
    {
        TreatmentArm.Trim => [FindingAction.Trimmed],
        TreatmentArm.TrimAndBlock => [FindingAction.Trimmed, FindingAction.Block],
        TreatmentArm.TrimAndPainRelief => [FindingAction.Trimmed, FindingAction.PainRelief],
        _ => [FindingAction.Trimmed, FindingAction.Block, FindingAction.PainRelief],
    };
}
