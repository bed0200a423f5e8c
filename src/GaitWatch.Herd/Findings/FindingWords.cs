namespace GaitWatch.Herd;

/// <summary>A finding as a person would say it.</summary>
public static class FindingWords
{
    /// <summary>Lesion, place, how bad, what was done: "sole ulcer, outer claw, zone 4, moderate: trimmed, block on inner claw".</summary>
    public static string InWords(this Finding finding)
    {
        var what = new List<string> { finding.Lesion.InWords() };
        if (finding.ForeignBody is { } body)
            what.Add(body.SizeMillimetres is { } size ? FormattableString.Invariant($"{body.Kind} of {size} mm") : body.Kind);
        if (finding.MStage is { } stage)
            what.Add(stage.WireName());
        if (finding.Claw is { } claw)
            what.Add(claw == Claw.Both ? "both claws" : $"{claw.WireName()} claw");
        if (finding.Zone is { } zone)
            what.Add(FormattableString.Invariant($"zone {zone}"));
        if (finding.Severity is { } severity)
            what.Add(FindingNames.SeverityInWords(severity));
        var done = finding.Actions.Select(action => action == FindingAction.Block && finding.BlockClaw is { } on
            ? $"block on {on.WireName()} claw"
            : action.InWords());
        var doing = string.Join(", ", done);
        return string.Join(", ", what) + (doing.Length > 0 ? $": {doing}" : "");
    }
}
