using GaitWatch.Lameness;

namespace GaitWatch.Web;

/// <summary>From when to when a block or a wrap was on a foot.</summary>
/// <param name="What"><c>block</c> or <c>wrap</c>.</param>
/// <param name="From">When it was put on.</param>
/// <param name="To">When it came off; the newest event while it is on.</param>
/// <param name="IsOn">Whether it is on still.</param>
public sealed record CareSpan(string What, DateTimeOffset From, DateTimeOffset To, bool IsOn);

/// <summary>Puts what was put on and what came off together.</summary>
internal static class CareSpans
{
    public static IEnumerable<CareSpan> Of(IEnumerable<RecoveryMark> marks, DateTimeOffset until)
    {
        var ordered = marks.Distinct().OrderBy(mark => mark.At).ThenBy(mark => mark.What).ToArray();
        return Of("block", ordered, RecoveryMarkKind.Block, [RecoveryMarkKind.BlockOff, RecoveryMarkKind.BlockLost], until)
            .Concat(Of("wrap", ordered, RecoveryMarkKind.Wrap, [RecoveryMarkKind.WrapOff], until));
    }

    private static IEnumerable<CareSpan> Of(string what, RecoveryMark[] marks, RecoveryMarkKind on, RecoveryMarkKind[] off, DateTimeOffset until)
    {
        DateTimeOffset? since = null;
        foreach (var mark in marks)
        {
            if (mark.What == on)
                since ??= mark.At;
            else if (since is { } from && off.Contains(mark.What))
            {
                yield return new CareSpan(what, from, mark.At, false);
                since = null;
            }
        }

        if (since is { } still && until > still)
            yield return new CareSpan(what, still, until, true);
    }
}
