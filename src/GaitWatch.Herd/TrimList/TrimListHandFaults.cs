using System.Collections.Immutable;
using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>What must hold of a decision by hand.</summary>
public static class TrimListHandFaults
{
    /// <summary>Longest reason, characters.</summary>
    public const int LongestReason = 200;

    /// <summary>Everything wrong with it: field and sentence, empty when nothing is.</summary>
    public static ImmutableArray<(string Field, string Fault)> Of(TrimListHandWrite write, VisitBook visits)
    {
        var faults = ImmutableArray.CreateBuilder<(string, string)>();
        if (string.IsNullOrWhiteSpace(write.Cow) || write.Cow.Length > HerdRegisterFaults.LongestName || write.Cow.Any(char.IsControl))
            faults.Add(("cow", $"cow is '{FindingFaults.Shorten(write.Cow)}': a number or name of 1 to {HerdRegisterFaults.LongestName} characters."));
        if (write.Hand != TrimListHand.AsRule && string.IsNullOrWhiteSpace(write.Reason))
            faults.Add(("reason", "reason is empty: say why, in a few words; it stands beside her on the list."));
        else if (write.Reason.Length > LongestReason || write.Reason.Any(char.IsControl))
            faults.Add(("reason", $"reason is '{FindingFaults.Shorten(write.Reason)}': at most {LongestReason} characters on one line."));
        if (!visits.Visits.Any(planned => planned.IsOrWasOn(write.Visit)))
            faults.Add(("visit", string.Create(CultureInfo.InvariantCulture, $"visit is {write.Visit:yyyy-MM-dd}, where no visit is planned: plan it first.")));
        return faults.ToImmutable();
    }
}
