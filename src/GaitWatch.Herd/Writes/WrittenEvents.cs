using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>What detection has to know of what people entered, the register apart: alerts closed by hand, feet that were worked on.</summary>
public static class WrittenEvents
{
    /// <summary>The events of a set of writes, in no order; corrected findings count as they read now.</summary>
    public static ImmutableArray<CowEventInput> Of(IReadOnlyCollection<FarmWrite> writes)
    {
        var findings = FindingLog.Of(writes).Findings;
        return
        [
            .. writes.OfType<CloseAlertWrite>().Select(ToInput),
            .. FootCare.Events(findings),
            .. FootCare.Events(FarmRemovals.Of(writes, findings)),
        ];
    }

    // The key tells every closing from every other.
    private static CowEventInput ToInput(CloseAlertWrite write) => new(
        write.Closed, $"{write.Closed.Cow}/closed/{write.Closed.Pattern}/{write.Closed.Leg}/{write.Closed.Reason}/{write.Closed.By}/{write.Closed.Note}");
}
