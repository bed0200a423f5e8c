namespace GaitWatch.Lameness;

/// <summary>
/// When a treated foot's load is not her own walk: a block shifts load within the foot and changes the gait for days, and so
/// does taking it off; pain relief hides what would hurt.
/// </summary>
internal sealed class GaitMask
{
    private readonly List<(DateTimeOffset From, DateTimeOffset To)> _masked = [];
    private readonly List<(DateTimeOffset From, DateTimeOffset To)> _settling = [];

    public GaitMask(TreatedFoot foot, RecoveryOptions options)
    {
        var marks = foot.Marks.OrderBy(mark => mark.At).ThenBy(mark => OnLast(mark.What)).ToArray();
        AddWorn(marks, what => what == RecoveryMarkKind.Block, what => what is RecoveryMarkKind.BlockOff or RecoveryMarkKind.BlockLost);
        AddWorn(marks, what => what == RecoveryMarkKind.Wrap, what => what == RecoveryMarkKind.WrapOff);
        foreach (var mark in marks)
        {
            if (mark.What == RecoveryMarkKind.PainRelief)
                _masked.Add((mark.At, mark.At.AddDays(options.PainReliefDays)));
            else
                _settling.Add((mark.At, mark.At.AddDays(options.SettlingDays)));
        }

        // The treatment itself: trimmed and opened, a foot is sorer for some days.
        _settling.Add((foot.TreatedAt, foot.TreatedAt.AddDays(options.SettlingDays)));
        _masked.AddRange(_settling);
    }

    /// <summary>Whether an instant's load proves no recovery.</summary>
    public bool IsMasked(DateTimeOffset at) => Holds(_masked, at);

    /// <summary>Whether an instant's load tells nothing at all.</summary>
    public bool IsSettling(DateTimeOffset at) => Holds(_settling, at);

    private static bool Holds(List<(DateTimeOffset From, DateTimeOffset To)> spans, DateTimeOffset at) =>
        spans.Exists(span => span.From <= at && at < span.To);

    private void AddWorn(RecoveryMark[] marks, Func<RecoveryMarkKind, bool> puts, Func<RecoveryMarkKind, bool> ends)
    {
        DateTimeOffset? since = null;
        foreach (var mark in marks)
        {
            if (since is { } from && ends(mark.What))
            {
                _masked.Add((from, mark.At));
                since = null;
            }

            if (puts(mark.What))
                since ??= mark.At;
        }

        if (since is { } still)
            _masked.Add((still, DateTimeOffset.MaxValue));
    }

    // In one instant a block comes off before the next goes on.
    private static bool OnLast(RecoveryMarkKind what) => what is RecoveryMarkKind.Block or RecoveryMarkKind.Wrap;
}
