using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Turns findings and alerts into events of the ICAR Animal Data Exchange standard.</summary>
internal static class IcarEvents
{
    private const string Source = "gaitwatch";

    public static DiagnosisEvent Of(FindingHistory history, FindingLog log, HerdRegister register)
    {
        var finding = history.Current;
        var view = FindingView.Of(history, log);
        var by = finding.By.Length == 0 ? null : finding.By;
        return new DiagnosisEvent(
            "icarDiagnosisEventResource", finding.Id,
            new IcarMeta(Source, finding.Id, view.Correctable!.CorrectedAt ?? view.Correctable.EnteredAt, view.Correctable.EnteredAt, by),
            Animal(finding.Cow, finding.At, register), finding.At, by,
            finding.Lesion == Lesion.None
                ? []
                :
                [
                    new IcarDiagnosis(
                        finding.Id, finding.Lesion.InWords(), finding.Note.Length == 0 ? null : finding.Note,
                        new IcarCode("gaitwatch.lesion", finding.Lesion.WireName()), Site(finding), Severity(finding.Severity), [new IcarPosition(Position(finding.Foot))]),
                ],
            view);
    }

    public static AttentionEvent Of(AlertView alert, HerdRegister register) => new(
        "icarAttentionEventResource", alert.Id,
        new IcarMeta(Source, alert.Id, new[] { alert.RaisedAt, alert.ClosedAt, alert.RevisedAt }.Max()!.Value, alert.RaisedAt, null),
        Animal(alert.Cow, alert.RaisedAt, register), alert.RaisedAt, alert.ClosedAt, "Health", ["Lameness"],
        alert.Urgency switch { "today" => "Urgent", "next-visit" => "Normal", _ => "Informational" },
        alert.LoadDropPercent, alert);

    private static IcarAnimal Animal(string cow, DateTimeOffset at, HerdRegister register)
    {
        var eid = register.At(cow, at) is { } known ? known.Eid : Eid.TryParse(cow, out var named, out _) ? named : (Eid?)null;
        return eid is { } tag ? new IcarAnimal("std.iso.11785", tag.ToString()) : new IcarAnimal("gaitwatch.cow", cow);
    }

    private static string? Site(Finding finding)
    {
        var parts = new[] { finding.Claw is { } claw ? $"{claw.WireName()} claw" : null, finding.Zone is { } zone ? FormattableString.Invariant($"zone {zone}") : null }.OfType<string>();
        return string.Join(", ", parts) is { Length: > 0 } site ? site : null;
    }

    private static string? Severity(int? severity) => severity switch { 1 => "Light", 2 => "Moderate", 3 => "Severe", _ => null };

    private static string Position(Leg foot) => foot switch
    {
        Leg.Lf => "LegsFrontLeft",
        Leg.Rf => "LegsFrontRight",
        Leg.Lh => "LegsRearLeft",
        _ => "LegsRearRight",
    };
}
