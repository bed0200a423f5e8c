using System.Collections.Immutable;

namespace GaitWatch.Lameness;

/// <summary>
/// A herd's history folded into what is known of each cow: her baseline, the evidence on each leg, her open alerts, and what
/// moves everybody at once. The state after a history is a pure function of it; no decision looks ahead of its input.
/// </summary>
/// <remarks>Not safe for use by several threads at once.</remarks>
public sealed class HerdFold
{
    /// <summary>A herd of which nothing is known.</summary>
    public HerdFold(LamenessOptions options)
    {
        Options = options;
    }

    /// <summary>The settings.</summary>
    public LamenessOptions Options { get; }

    /// <summary>Time of the newest input folded; null before the first.</summary>
    public DateTimeOffset? Head { get; private set; }

    /// <summary>The newest common movement of every platform.</summary>
    public ImmutableArray<PlatformShift> Shifts => throw new NotImplementedException();

    /// <summary>Every alert that is not closed, in order of cow, then of <see cref="Alert.RaisedAt"/>.</summary>
    public ImmutableArray<Alert> OpenAlerts => throw new NotImplementedException();

    /// <summary>Folds one more input.</summary>
    /// <exception cref="InvalidOperationException">The input lies before <see cref="Head"/>: a late one needs an earlier checkpoint.</exception>
    public FoldStep Fold(HerdInput input) => throw new NotImplementedException();

    /// <summary>The whole state, to go on from later. What is restored behaves exactly as what was saved.</summary>
    public byte[] Save() => throw new NotImplementedException();

    /// <summary>The state that <see cref="Save"/> wrote.</summary>
    /// <exception cref="FormatException">The bytes are no state of this version; fold again from the start.</exception>
    public static HerdFold Restore(LamenessOptions options, ReadOnlySpan<byte> saved) => throw new NotImplementedException();
}
