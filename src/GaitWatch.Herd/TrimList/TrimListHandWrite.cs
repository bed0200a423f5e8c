using System.Globalization;
using GaitWatch.Gait;

namespace GaitWatch.Herd;

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
