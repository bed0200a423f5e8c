using System.Text.Json;
using GaitWatch.Gait;

namespace GaitWatch.Herd.Tests;

/// <summary>What is taken from the wire, and the sentence with which everything else is refused.</summary>
public sealed class FindingReaderTests
{
    private const string Lesionlist =
        "AC BU CC CD DD DS HFA HFH HFV HF HHE ID IH IP SC SH SHC SHD SU SW TN TS TU U WL WLA WLF foreign-body other none";

    [Fact]
    public void A_whole_finding_is_read_and_written_as_it_came()
    {
        var form = Some.Form() with
        {
            Claw = "outer", Zone = 4, Severity = 2, Signs = ["no-weight-on-leg"], Actions = ["trimmed", "block", "antibiotic"], BlockClaw = "inner", BlockMaterial = "rubber",
            ForeignBody = new ForeignBodyForm("stone", 6), WithdrawalUntil = Some.Day0.AddDays(5), LocomotionScore = 4, By = "K.", Note = "came in by herself",
        };
        var finding = FindingReader.Read(form).Finding!;
        Assert.Equal((Leg.Rh, Claw.Outer, Lesion.SoleUlcer, Claw.Inner), (finding.Foot, finding.Claw, finding.Lesion, finding.BlockClaw));
        Assert.Equal(JsonSerializer.Serialize(form with { At = form.At!.Value.ToUniversalTime() }), JsonSerializer.Serialize(FindingForm.Of(finding)));
    }

    [Fact]
    public void Id_time_foot_and_lesion_are_enough() => Assert.NotNull(FindingReader.Read(Some.Form("none")).Finding);

    [Fact]
    public void The_routes_cow_goes_before_the_forms() => Assert.Equal("87", FindingReader.Read(Some.Form(), "87").Finding!.Cow);

    [Fact]
    public void Every_lesion_code_is_read_and_has_words()
    {
        foreach (var code in Lesionlist.Split(' '))
        {
            var finding = FindingReader.Read(Some.Form(code)).Finding!;
            Assert.Equal(code, finding.Lesion.WireName());
            Assert.NotEqual("", finding.Lesion.InWords());
        }

        Assert.Equal(Lesionlist.Split(' ').Length, Enum.GetValues<Lesion>().Length);
    }

    [Theory]
    [InlineData("XX")]
    [InlineData("su")]
    [InlineData(null)]
    public void An_unknown_lesion_is_refused_with_all_that_are_known(string? code) =>
        Assert.Equal([$"lesion: lesion is {(code is null ? "missing" : $"'{code}'")}: one of {Lesionlist}."], Some.Faults(Some.Form() with { Lesion = code }));

    [Fact]
    public void Everything_wrong_is_told_at_once() => Assert.Equal(
        [
            "at: at is missing: the time the foot was in hand, RFC 3339, such as 2026-03-03T10:20:00.000Z.",
            "foot: foot is 'hind': one of lf rf lh rh.",
            "claw: claw is 'left': one of inner outer both, or null.",
            "mStage: mStage is 'M5': one of M0 M1 M2 M3 M4 M4.1, or null.",
            "signs: signs holds 'sad': each one of no-weight-on-leg swelling-above-claw swelling-between-claws deep-infection both-claws-sore "
                + "bleeding-does-not-stop lame-nothing-in-foot not-better-at-block-check down-feverish-off-feed blisters-in-herd.",
            "actions: actions holds 'glue', 'paint': each one of trimmed loose-horn-removed foreign-body-removed corium-exposed dressing wrap wrap-off "
                + "block block-off block-lost pain-relief antibiotic refer-to-vet.",
            "id: id is '': 1 to 100 characters, no control characters.",
            "zone: zone is 13: the claw map has zones 0 to 12.",
        ],
        Some.Faults(Some.Form() with
        {
            Id = " ".Trim(), At = null, Foot = "hind", Claw = "left", Zone = 13, MStage = "M5", Signs = ["sad"], Actions = ["trimmed", "glue", "paint"],
        }));

    [Fact]
    public void Figures_out_of_range_are_refused() => Assert.Equal(
        [
            "zone: zone is -1: the claw map has zones 0 to 12.",
            "severity: severity is 4: 1 mild, 2 moderate or 3 severe.",
            "locomotionScore: locomotionScore is 0: 1 (sound) to 5 (hardly able to walk).",
            "foreignBody.kind: foreignBody.kind is '': 1 to 100 characters, no control characters.",
            "foreignBody.sizeMillimetres: foreignBody.sizeMillimetres is 2000: its largest length, above 0 and at most 200 mm, or null.",
            "note: note has 2001 characters: at most 2000.",
        ],
        Some.Faults(Some.Form() with
        {
            Zone = -1, Severity = 4, LocomotionScore = 0, ForeignBody = new ForeignBodyForm(null, 2000), Note = new string('x', 2001),
        }));

    [Theory]
    [InlineData("SU", "M2")]
    [InlineData("none", "M0")]
    public void Only_digital_dermatitis_has_stages(string lesion, string stage) => Assert.Equal(
        [$"mStage: mStage is {stage} for {lesion}: only digital dermatitis (DD) has stages; leave it null and give severity."],
        Some.Faults(Some.Form(lesion) with { MStage = stage }));

    [Fact]
    public void Digital_dermatitis_has_a_stage_and_no_severity()
    {
        Assert.Equal(
            ["severity: severity is 2 for DD: digital dermatitis has mStage (M0 M1 M2 M3 M4 M4.1); leave severity null."],
            Some.Faults(Some.Form("DD") with { Severity = 2 }));
        Assert.Empty(Some.Faults(Some.Form("DD") with { MStage = "M4.1" }));
    }

    [Theory]
    [InlineData("DD")]
    [InlineData("ID")]
    [InlineData("IH")]
    [InlineData("IP")]
    public void A_lesion_of_the_skin_has_no_claw(string lesion) => Assert.Equal(
        [$"claw: claw is outer for {lesion}: a lesion of the skin belongs to the foot, not to one claw; leave it null."],
        Some.Faults(Some.Form(lesion) with { Claw = "outer" }));

    [Theory]
    [InlineData("SU", 0, "zones 0, 9 and 10 are skin between the claws; a lesion of the horn lies in 1 to 8")]
    [InlineData("WLA", 10, "zones 0, 9 and 10 are skin between the claws; a lesion of the horn lies in 1 to 8")]
    [InlineData("IP", 4, "zones 1 to 8 are horn; a lesion of the skin lies in 0, 9 or 10")]
    [InlineData("SU", 7, "zones 7 and 8 are wall; a lesion of the sole lies in 1 to 6")]
    [InlineData("HFV", 5, "zones 4 to 6 are sole and heel; a fissure of the wall lies in 7 or 8 or reaches the white line in 1 to 3")]
    public void A_lesion_lies_where_its_tissue_is(string lesion, int zone, string right) =>
        Assert.Equal([$"zone: zone is {zone} for {lesion}: {right}."], Some.Faults(Some.Form(lesion) with { Zone = zone }));

    [Theory]
    [InlineData("SU", 4)]
    [InlineData("WLA", 8)]
    [InlineData("TU", 5)]
    [InlineData("IH", 0)]
    [InlineData("DD", 6)]
    [InlineData("SU", 11)]
    [InlineData("IP", 12)]
    [InlineData("foreign-body", 1)]
    public void What_can_be_is_taken(string lesion, int zone) => Assert.Empty(Some.Faults(Some.Form(lesion) with { Zone = zone }));

    [Fact]
    public void Nothing_found_has_nothing_to_say_of_a_lesion() => Assert.Equal(
        [
            "severity: severity is 1 although lesion is none: leave it null, or name the lesion.",
            "foreignBody: foreignBody is given although lesion is none: say lesion foreign-body, or leave foreignBody null.",
            "actions: actions holds foreign-body-removed although lesion is none: say lesion foreign-body, or leave the action out.",
            "zone: zone is 4 although lesion is none: leave it null, or name the lesion.",
        ],
        Some.Faults(Some.Form("none") with { Zone = 4, Severity = 1, ForeignBody = new ForeignBodyForm("stone", 6), Actions = ["foreign-body-removed"] }));

    [Fact]
    public void A_block_is_said_whole_or_not_at_all()
    {
        Assert.Equal(
            [
                "blockClaw: blockClaw is inner without a block: add block to actions, or leave blockClaw null.",
                "blockMaterial: blockMaterial is 'wood' without a block: add block to actions, or leave blockMaterial null.",
            ],
            Some.Faults(Some.Form() with { BlockClaw = "inner", BlockMaterial = "wood" }));
        Assert.Equal(
            ["blockClaw: blockClaw is both: a block goes on one claw, inner or outer, to take the weight off the other."],
            Some.Faults(Some.Form() with { Actions = ["block"], BlockClaw = "both" }));
        Assert.Equal(
            ["actions: actions holds block-off and block-lost: a block was either taken off or had come off by itself."],
            Some.Faults(Some.Form() with { Actions = ["block-off", "block-lost"] }));
        Assert.Empty(Some.Faults(Some.Form() with { Actions = ["block-lost", "block"], BlockClaw = "inner" }));
    }

    [Fact]
    public void A_withdrawal_ends_after_the_treatment()
    {
        Assert.Equal(
            ["withdrawalUntil: withdrawalUntil is 2026-02-01, before the finding of 2026-03-03: the last day of withdrawal, on or after the treatment."],
            Some.Faults(Some.Form() with { WithdrawalUntil = new DateOnly(2026, 2, 1) }));
        Assert.Empty(Some.Faults(Some.Form() with { WithdrawalUntil = Some.Day0 }));
    }

    [Fact]
    public void Every_score_stage_and_sign_has_words_of_its_own()
    {
        Assert.Equal(5, Enumerable.Range(1, 5).Select(LocomotionScore.InWords).Distinct().Count());
        Assert.Throws<ArgumentOutOfRangeException>(() => LocomotionScore.InWords(6));
        Assert.Equal(10, Enum.GetValues<VetSign>().Select(VetSigns.InWords).Distinct().Count());
        Assert.StartsWith("Move no animal and call the veterinarian at once", VetSign.BlistersInHerd.Advice(), StringComparison.Ordinal);
        Assert.Equal([MStage.M1, MStage.M2, MStage.M41], Enum.GetValues<MStage>().Where(FindingNames.IsActive));
    }
}
