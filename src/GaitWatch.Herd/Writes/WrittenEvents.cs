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
        return Of(writes, findings, FarmRemovals.Of(writes, findings), new HerdRegister(writes.OfType<RegisterWrite>().Select(write => write.Registration)));
    }

    /// <summary>The same of what has been gathered from the writes already.</summary>
    /// <param name="writes">The writes.</param>
    /// <param name="findings">Their findings.</param>
    /// <param name="removals">What the farm took off.</param>
    /// <param name="register">Their register.</param>
    public static ImmutableArray<CowEventInput> Of(
        IEnumerable<FarmWrite> writes, IEnumerable<Finding> findings, IEnumerable<FarmRemoval> removals, HerdRegister register) =>
    [
        .. writes.OfType<CloseAlertWrite>().Select(write => ToInput(write, register)),
        .. FootCare.Events(findings),
        .. FootCare.Events(removals),
    ];

    // The key tells every closing from every other. An alert of a cow known by her tag alone is her own once the tag is registered.
    private static CowEventInput ToInput(CloseAlertWrite write, HerdRegister register)
    {
        var closed = write.Closed with { Cow = register.Meant(write.Closed.Cow, write.At) };
        return new CowEventInput(closed, $"{closed.Cow}/closed/{closed.Pattern}/{closed.Leg}/{closed.Reason}/{closed.By}/{closed.Note}");
    }
}
