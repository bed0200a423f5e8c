using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>A person ticked a cow off a visit's list, or took the tick back. The last word on cow and visit holds.</summary>
/// <param name="At">When.</param>
/// <param name="Visit">The visit's day; it goes with the visit when that is moved.</param>
/// <param name="Cow">Her number.</param>
/// <param name="IsDone">Whether she is done.</param>
/// <param name="By">Who; may be empty.</param>
public sealed record TrimListDoneWrite(DateTimeOffset At, DateOnly Visit, string Cow, bool IsDone, string By) : FarmWrite(At)
{
    /// <summary>Order in which the last word is found.</summary>
    internal static IComparer<TrimListDoneWrite> Order { get; } = Comparer<TrimListDoneWrite>.Create((a, b) =>
        a.At != b.At ? a.At.CompareTo(b.At) : string.CompareOrdinal(a.Text(), b.Text()));

    private string Text() => string.Create(CultureInfo.InvariantCulture, $"{IsDone}/{Visit:O}/{By}");
}
