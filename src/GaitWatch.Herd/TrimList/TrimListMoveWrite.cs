using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>A person put a cow elsewhere in the order of a visit's list.</summary>
/// <param name="At">When.</param>
/// <param name="Visit">The visit's day; it goes with the visit when that is moved.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Before">The cow she is to come just before; null for the end of those that have a place.</param>
/// <param name="By">Who; may be empty.</param>
public sealed record TrimListMoveWrite(DateTimeOffset At, DateOnly Visit, string Cow, string? Before, string By) : FarmWrite(At)
{
    /// <summary>Order in which moves are made.</summary>
    internal static IComparer<TrimListMoveWrite> Order { get; } = Comparer<TrimListMoveWrite>.Create((a, b) =>
        a.At != b.At ? a.At.CompareTo(b.At) : string.CompareOrdinal(a.Text(), b.Text()));

    private string Text() => string.Create(CultureInfo.InvariantCulture, $"{Cow}/{Before}/{Visit:O}/{By}");
}
