using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>What was found in a foot, in words.</summary>
internal static class FindingTexts
{
    private static readonly Words s_words = new("Finding");

    public static string Lesion(Lesion lesion) => s_words.Text($"Lesion.{lesion.WireName()}");

    public static string Action(FindingAction action) => s_words.Text($"Action.{action.WireName()}");

    public static string Claw(Claw claw) => s_words.Text($"Claw.{claw.WireName()}");

    public static string Severity(int severity) => s_words.Text($"Severity.{severity}");

    /// <summary>Lesion, place, how bad, what was done: "sole ulcer, outer claw, zone 4, moderate: trimmed, block on inner claw".</summary>
    public static string InWords(Finding finding)
    {
        var what = new List<string> { Lesion(finding.Lesion) };
        if (finding.MStage is { } stage)
            what.Add(stage.WireName());
        if (finding.Claw is { } claw)
            what.Add(Claw(claw));
        if (finding.Zone is { } zone)
            what.Add(s_words.With([zone], "Zone"));
        if (finding.Severity is { } severity)
            what.Add(Severity(severity));
        var done = string.Join(", ", finding.Actions.Select(action =>
            action == FindingAction.Block && finding.BlockClaw is { } on ? s_words.With([Claw(on)], "BlockOn") : Action(action)));
        return string.Join(", ", what) + (done.Length > 0 ? $": {done}" : "");
    }
}
