using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Something that happened to a cow's feet, in a line.</summary>
/// <param name="At">When.</param>
/// <param name="Words">What.</param>
public sealed record CowEventLine(DateTimeOffset At, string Words)
{
    internal static IEnumerable<CowEventLine> Of(
        IEnumerable<AlertView> alerts, IEnumerable<Finding> findings, IEnumerable<RecoveryAssessment> recoveries, PageContext page)
    {
        foreach (var alert in alerts)
        {
            yield return new CowEventLine(alert.OnsetAt, CowTexts.Began(AlertTexts.Leg(alert)));
            yield return new CowEventLine(alert.RaisedAt, CowTexts.Flagged(AlertTexts.Leg(alert)));
            if (alert.ClosedAt is { } closed)
                yield return new CowEventLine(closed, CowTexts.FlagClosed(AlertTexts.Leg(alert), AlertTexts.Reason(alert.CloseReason)));
        }

        foreach (var finding in findings)
            yield return new CowEventLine(finding.At, CowTexts.FoundIn(LegTexts.Title(finding.Foot), FindingTexts.InWords(finding)));
        foreach (var foot in recoveries)
        {
            foreach (var mark in foot.Marks.Where(mark => mark.What is RecoveryMarkKind.BlockOff or RecoveryMarkKind.BlockLost or RecoveryMarkKind.WrapOff))
                yield return new CowEventLine(mark.At, CowTexts.FoundIn(LegTexts.Title(foot.Foot), CowTexts.CameOff(mark.What)));
            if (foot.RecoveredOn is { } day)
                yield return new CowEventLine(page.Calendar.StartOf(day), CowTexts.FoundIn(LegTexts.Title(foot.Foot), RecoveryTexts.Status(RecoveryStatus.Recovered)));
        }
    }
}
