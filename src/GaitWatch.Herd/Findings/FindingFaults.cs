using System.Collections.Immutable;
using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>
/// What cannot exist in a finding. It is refused with what would be right; what can happen but is unsafe is kept, and told by
/// <see cref="FindingWarnings"/>.
/// </summary>
public static class FindingFaults
{
    /// <summary>Longest id, cow number, material, kind and name, characters.</summary>
    public const int LongestName = 100;

    /// <summary>Longest note, characters.</summary>
    public const int LongestNote = 2000;

    /// <summary>The last zone of the claw map. Source: the international claw map (Greenough, Vermunt 1991 and later).</summary>
    public const int LastZone = 12;

    // Longer than a claw is long: a slip of the decimal point. Common practice, no source.
    private const double LargestBodyMillimetres = 200;

    /// <summary>Everything that cannot be: field and sentence, empty when nothing is.</summary>
    public static ImmutableArray<(string Field, string Fault)> Of(Finding finding)
    {
        var faults = OfPlainFields(finding).ToBuilder();
        AddLesion(finding, faults);
        AddPlace(finding, faults);
        AddActions(finding, faults);
        return faults.ToImmutable();
    }

    /// <summary>What can be judged of each field by itself.</summary>
    internal static ImmutableArray<(string Field, string Fault)> OfPlainFields(Finding finding)
    {
        var faults = ImmutableArray.CreateBuilder<(string, string)>();
        AddName(faults, "id", finding.Id, required: true, LongestName);
        AddName(faults, "cow", finding.Cow, required: true, HerdRegisterFaults.LongestName);
        if (finding.Zone is < 0 or > LastZone)
            faults.Add(("zone", $"zone is {finding.Zone}: the claw map has zones 0 to {LastZone}."));
        if (finding.Severity is < 1 or > 3)
            faults.Add(("severity", $"severity is {finding.Severity}: 1 mild, 2 moderate or 3 severe."));
        if (finding.LocomotionScore is < LocomotionScore.Least or > LocomotionScore.Most)
        {
            faults.Add(("locomotionScore",
                $"locomotionScore is {finding.LocomotionScore}: {LocomotionScore.Least} (sound) to {LocomotionScore.Most} (hardly able to walk)."));
        }

        if (finding.ForeignBody is { } body)
        {
            AddName(faults, "foreignBody.kind", body.Kind, required: true, LongestName);
            if (body.SizeMillimetres is { } size && !(size > 0 && size <= LargestBodyMillimetres))
            {
                faults.Add(("foreignBody.sizeMillimetres", string.Create(CultureInfo.InvariantCulture,
                    $"foreignBody.sizeMillimetres is {size}: its largest length, above 0 and at most {LargestBodyMillimetres} mm, or null.")));
            }
        }

        AddName(faults, "blockMaterial", finding.BlockMaterial, required: false, LongestName);
        AddName(faults, "by", finding.By, required: false, LongestName);
        if (finding.Note.Length > LongestNote)
            faults.Add(("note", $"note has {finding.Note.Length} characters: at most {LongestNote}."));
        return faults.ToImmutable();
    }

    /// <summary>A text cut to what an error should repeat of it.</summary>
    internal static string Shorten(string text) => text.Length > 40 ? text[..40] + "…" : text;

    private static void AddLesion(Finding finding, ImmutableArray<(string, string)>.Builder faults)
    {
        var code = finding.Lesion.WireName();
        if (finding is { Lesion: Lesion.DigitalDermatitis, Severity: not null })
            faults.Add(("severity", $"severity is {finding.Severity} for DD: digital dermatitis has mStage (M0 M1 M2 M3 M4 M4.1); leave severity null."));
        if (finding is { MStage: { } stage } && finding.Lesion != Lesion.DigitalDermatitis)
            faults.Add(("mStage", $"mStage is {stage.WireName()} for {code}: only digital dermatitis (DD) has stages; leave it null and give severity."));
        if (finding.Lesion != Lesion.None)
            return;
        if (finding.Severity is not null)
            faults.Add(("severity", $"severity is {finding.Severity} although lesion is none: leave it null, or name the lesion."));
        if (finding.ForeignBody is not null)
            faults.Add(("foreignBody", "foreignBody is given although lesion is none: say lesion foreign-body, or leave foreignBody null."));
        if (finding.Did(FindingAction.ForeignBodyRemoved))
            faults.Add(("actions", "actions holds foreign-body-removed although lesion is none: say lesion foreign-body, or leave the action out."));
    }

    private static void AddPlace(Finding finding, ImmutableArray<(string, string)>.Builder faults)
    {
        var code = finding.Lesion.WireName();
        var site = finding.Lesion.Site();
        if (site == LesionSite.Skin && finding.Claw is { } claw)
            faults.Add(("claw", $"claw is {claw.WireName()} for {code}: a lesion of the skin belongs to the foot, not to one claw; leave it null."));
        if (finding.Zone is not { } zone || zone is < 0 or > LastZone)
            return;
        if (finding.Lesion == Lesion.None)
            faults.Add(("zone", $"zone is {zone} although lesion is none: leave it null, or name the lesion."));
        else if (IsImpossible(finding.Lesion, site, zone) is { } right)
            faults.Add(("zone", $"zone is {zone} for {code}: {right}."));
    }

    // Zones by the international claw map: 0 skin between the claws, 1 to 3 white line, 4 sole at the heel, 5 apex of the sole,
    // 6 heel, 7 and 8 wall, 9 and 10 skin between the claws in front and at the heel. Nothing is refused in 11 and 12, whose
    // place is to be read from the published figure. Digital dermatitis may spread from skin to horn and is refused nowhere.
    private static string? IsImpossible(Lesion lesion, LesionSite site, int zone) => (site, zone) switch
    {
        (LesionSite.SoleHorn or LesionSite.WallHorn, 0 or 9 or 10) => "zones 0, 9 and 10 are skin between the claws; a lesion of the horn lies in 1 to 8",
        (LesionSite.Skin, >= 1 and <= 8) when lesion != Lesion.DigitalDermatitis => "zones 1 to 8 are horn; a lesion of the skin lies in 0, 9 or 10",
        (LesionSite.SoleHorn, 7 or 8) when !IsWhiteLine(lesion) => "zones 7 and 8 are wall; a lesion of the sole lies in 1 to 6",
        (LesionSite.WallHorn, >= 4 and <= 6) => "zones 4 to 6 are sole and heel; a fissure of the wall lies in 7 or 8 or reaches the white line in 1 to 3",
        _ => null,
    };

    // An abscess under the white line may break out at the top of the wall.
    private static bool IsWhiteLine(Lesion lesion) => lesion is Lesion.WhiteLineAbscess or Lesion.WhiteLineDisease or Lesion.WhiteLineFissure;

    private static void AddActions(Finding finding, ImmutableArray<(string, string)>.Builder faults)
    {
        if (finding is { BlockClaw: not null } && !finding.Did(FindingAction.Block))
            faults.Add(("blockClaw", $"blockClaw is {finding.BlockClaw.Value.WireName()} without a block: add block to actions, or leave blockClaw null."));
        if (finding.BlockClaw is Claw.Both)
            faults.Add(("blockClaw", "blockClaw is both: a block goes on one claw, inner or outer, to take the weight off the other."));
        if (finding is { BlockMaterial: not null } && !finding.Did(FindingAction.Block))
            faults.Add(("blockMaterial", $"blockMaterial is '{Shorten(finding.BlockMaterial)}' without a block: add block to actions, or leave blockMaterial null."));
        if (finding.Did(FindingAction.BlockOff) && finding.Did(FindingAction.BlockLost))
            faults.Add(("actions", "actions holds block-off and block-lost: a block was either taken off or had come off by itself."));
        // The day may be one earlier west of Greenwich; which zone the farm lies in does not matter for a slip of a month.
        var day = DateOnly.FromDateTime(finding.At.UtcDateTime).AddDays(-1);
        if (finding.WithdrawalUntil is { } until && until < day)
        {
            faults.Add(("withdrawalUntil",
                $"withdrawalUntil is {Day(until)}, before the finding of {Day(day.AddDays(1))}: the last day of withdrawal, on or after the treatment."));
        }
    }

    private static void AddName(ImmutableArray<(string, string)>.Builder faults, string field, string? text, bool required, int longest)
    {
        if (text is null)
            return;
        if ((required && string.IsNullOrWhiteSpace(text)) || text.Length > longest || text.Any(char.IsControl))
            faults.Add((field, $"{field} is '{Shorten(new string([.. text.Where(c => !char.IsControl(c))]))}': {(required ? "1" : "0")} to {longest} characters, no control characters."));
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
