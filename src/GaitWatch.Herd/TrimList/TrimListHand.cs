using System.Collections.Immutable;
using System.Globalization;
using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>What a person decided about a cow and a visit.</summary>
public enum TrimListHand
{
    /// <summary>She is to be on the list.</summary>
    Pinned,

    /// <summary>She is not to be on the list.</summary>
    Removed,

    /// <summary>What was decided before no longer holds.</summary>
    AsRule,
}

/// <summary>A person put a cow on a visit's list, took her off, or took that back. The last word on cow and visit holds.</summary>
/// <param name="At">When.</param>
/// <param name="Visit">The visit's day; it goes with the visit when that is moved.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Hand">What was decided.</param>
/// <param name="Reason">Why; never empty, except when a decision is taken back.</param>
public sealed record TrimListHandWrite(DateTimeOffset At, DateOnly Visit, string Cow, TrimListHand Hand, string Reason) : FarmWrite(At)
{
    /// <summary>The foot to lift first; null when not said.</summary>
    public Leg? Foot { get; init; }

    /// <summary>Who; may be empty.</summary>
    public string By { get; init; } = "";

    /// <summary>Order in which the last word is found.</summary>
    internal static IComparer<TrimListHandWrite> Order { get; } = Comparer<TrimListHandWrite>.Create((a, b) =>
        a.At != b.At ? a.At.CompareTo(b.At) : string.CompareOrdinal(a.Text(), b.Text()));

    private string Text() => string.Create(CultureInfo.InvariantCulture, $"{Hand}/{Visit:O}/{Foot}/{Reason}/{By}");
}

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
