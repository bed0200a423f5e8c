using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class TreatmentOutcomesTests
{
    // Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486: newly lame cows with claw horn lesions, sound at 35 days: trim alone 11 of
    // 45, trim and block 14 of 39, trim and pain relief 12 of 42, all three 23 of 41. Intervals: scipy, Wilson (reference.json).
    private static readonly (Treatment Treatment, int Sound, int Of, double Lower, double Upper)[] Published =
    [
        (Treatment.Trim, 11, 45, 0.142355, 0.386734), (Treatment.Block, 14, 39, 0.227421, 0.515819),
        (Treatment.PainRelief, 12, 42, 0.171670, 0.435672), (Treatment.Block | Treatment.PainRelief, 23, 41, 0.410405, 0.701099),
    ];

    [Fact]
    public void The_published_table_comes_out_of_findings()
    {
        var findings = new List<Finding>();
        foreach (var (treatment, sound, of, _, _) in Published)
        {
            for (var i = 0; i < of; i++)
            {
                var cow = $"{treatment}-{i}";
                findings.Add(Some.Finding($"{cow}-treated", 0, Lesion.SoleUlcer, Leg.Rh, Actions(treatment)) with { Cow = cow, LocomotionScore = 3 });
                findings.Add(Some.Finding($"{cow}-judged", 35, Lesion.None) with { Cow = cow, LocomotionScore = i < sound ? 1 : 3 });
            }
        }

        var table = TreatmentOutcomes.OfClawHorn(TreatmentOutcomes.Judge(findings, [], Some.Berlin));
        Assert.Equal(Published.Select(row => (row.Treatment, row.Sound, row.Of)), table.Select(row => (row.Treatment, row.Sound.Count, row.Sound.Of)));
        foreach (var (row, published) in table.Zip(Published))
        {
            Assert.Equal(published.Lower, row.Interval.Lower, 1e-6);
            Assert.Equal(published.Upper, row.Interval.Upper, 1e-6);
        }
    }

    [Theory]
    [InlineData(27, null)]
    [InlineData(28, true)]
    [InlineData(42, true)]
    [InlineData(43, null)]
    public void A_score_counts_near_the_35th_day(int day, bool? sound) =>
        Assert.Equal(sound, Judged([Treated(), Some.Finding("b", day, Lesion.None) with { LocomotionScore = 1 }])!.IsSound);

    [Theory]
    [InlineData(RecoveryStatus.Recovered, 30, 3, true)]
    [InlineData(RecoveryStatus.Recovered, 50, 3, true)]
    [InlineData(RecoveryStatus.Recovered, 50, 9, false)]
    [InlineData(RecoveryStatus.Stalled, null, 9, false)]
    [InlineData(RecoveryStatus.Recovering, null, 5, false)]
    [InlineData(RecoveryStatus.Recovering, null, 3, true)]
    public void Without_a_score_the_load_judges(RecoveryStatus status, int? recovered, double dropAround35, bool sound)
    {
        var recovery = Followed(status, dropAround35) with { RecoveredOn = recovered is { } day ? Some.Day0.AddDays(day) : null };
        Assert.Equal(sound, Judged([Treated()], recovery)!.IsSound);
        Assert.False(Judged([Treated(), Some.Finding("b", 35, Lesion.None) with { LocomotionScore = 3 }], recovery)!.IsSound);
    }

    [Fact]
    public void Where_nothing_tells_nothing_is_said()
    {
        var followed = Followed(RecoveryStatus.Stalled, 9);
        Assert.Null(Judged([Treated()])!.IsSound);
        // Not watched so long, or a block on all the time; no normal from before.
        Assert.Null(Judged([Treated()], followed with { DropPercentWhenJudged = null })!.IsSound);
        Assert.Null(Judged([Treated()], followed with { BandPercent = null })!.IsSound);
    }

    [Fact]
    public void Each_lesion_has_its_own_row_with_the_number_behind_each_figure_and_few_give_no_verdict()
    {
        var findings = new List<Finding>();
        var recoveries = new List<RecoveryAssessment>();
        void Add(string cow, Lesion lesion, double drop, params FindingAction[] actions)
        {
            findings.Add(Some.Finding(cow, 0, lesion, Leg.Rh, [FindingAction.Trimmed, .. actions]) with { Cow = cow });
            recoveries.Add(Followed(RecoveryStatus.Recovering, drop) with { FindingId = cow, Cow = cow, RecoveredOn = drop < 4 ? Some.Day0.AddDays(20) : null });
        }

        for (var i = 0; i < 13; i++)
            Add($"s{i}", Lesion.SoleUlcer, i < 9 ? 2 : 9, FindingAction.Block, FindingAction.Wrap);
        Add("w", Lesion.WhiteLineFissure, 2, FindingAction.PainRelief);
        Add("d", Lesion.DigitalDermatitis, 9, FindingAction.Wrap, FindingAction.Block);
        var rows = TreatmentOutcomes.ByLesion(TreatmentOutcomes.Judge(findings, recoveries, Some.Berlin));
        // 9 of 13, Wilson: 0.4237 to 0.8732 (scipy.stats.binomtest(9, 13).proportion_ci(method="wilson")).
        Assert.Equal(
            [
                "Digital dermatitis, trim and dressing: 0 of 1 foot sound at 35 days: too few to say.",
                "Sole ulcer, trim and block: 9 of 13 feet sound at 35 days (42 to 87 % by chance alone); half of 13 were shown to be recovered by day 21.",
                "White line fissure, trim and pain relief: 1 of 1 foot sound at 35 days: too few to say.",
            ],
            rows.Select(row => row.Sentence));
        Assert.Equal(["dressing", "block", "pain-relief"], rows.Select(row => row.Treatment.WireName()));
        Assert.Equal([false, true, false], rows.Select(row => row.IsEnough));
    }

    [Fact]
    public void Lesions_of_the_skin_are_not_among_those_of_the_claw_horn() =>
        Assert.All(
            TreatmentOutcomes.OfClawHorn(TreatmentOutcomes.Judge([Treated() with { Lesion = Lesion.DigitalDermatitis }], [], Some.Berlin)), row => Assert.Equal(0, row.Treated));

    private static RecoveryAssessment Followed(RecoveryStatus status, double dropAround35) => Some.Recovery("a", status) with
    {
        BandPercent = 4,
        LastSeenAt = Some.At(60),
        DropPercentWhenJudged = dropAround35,
    };

    private static Finding Treated() => Some.Finding("a", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed);

    private static JudgedTreatment? Judged(Finding[] findings, params RecoveryAssessment[] recoveries) =>
        TreatmentOutcomes.Judge(findings, recoveries, Some.Berlin).SingleOrDefault();

    private static FindingAction[] Actions(Treatment treatment) =>
    [
        FindingAction.Trimmed, .. treatment.HasFlag(Treatment.Block) ? [FindingAction.Block] : Array.Empty<FindingAction>(),
        .. treatment.HasFlag(Treatment.PainRelief) ? [FindingAction.PainRelief] : Array.Empty<FindingAction>(),
    ];
}
