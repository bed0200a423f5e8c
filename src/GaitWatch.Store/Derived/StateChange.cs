using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>
/// One change of the derived state, whole or not at all: reads inputs and state as they stand and writes what follows from
/// them, together with how far the log has been folded.
/// </summary>
public sealed partial class StateChange : IAsyncDisposable
{
    /// <summary>Up to which sequence number the state shows.</summary>
    public Task<long> FoldedAsync() => throw new NotImplementedException();

    /// <summary>What came in after a sequence number, at most <paramref name="most"/> sequence numbers of it.</summary>
    public Task<InputBatch> InputsAfterAsync(long seq, int most) => throw new NotImplementedException();

    /// <summary>A platform's frames that overlap [from, to), in order of time.</summary>
    /// <param name="platform">The platform.</param>
    /// <param name="cells">How many cells the platform has; frames of another number are left out.</param>
    /// <param name="from">Inclusive.</param>
    /// <param name="to">Exclusive.</param>
    public Task<IReadOnlyList<Frame>> FramesAsync(string platform, int cells, DateTimeOffset from, DateTimeOffset to) => throw new NotImplementedException();

    /// <summary>A platform's tag reads in [from, to), in order of time.</summary>
    public Task<IReadOnlyList<TagRead>> TagsAsync(string platform, DateTimeOffset from, DateTimeOffset to) => throw new NotImplementedException();

    /// <summary>A platform's passages analysed here from frames whose first contact is in [from, to), in order of it.</summary>
    public Task<IReadOnlyList<Passage>> CrossingsAsync(string platform, DateTimeOffset from, DateTimeOffset to) => throw new NotImplementedException();

    /// <summary>Every registration ever made.</summary>
    public Task<HerdRegister> RegisterAsync() => throw new NotImplementedException();

    /// <summary>Every event that is not the register's: alerts closed by hand. In no order.</summary>
    public Task<IReadOnlyList<CowEventInput>> WrittenEventsAsync() => throw new NotImplementedException();

    /// <summary>
    /// Removes passages and writes others, new or changed; whose each is, is told by the register. A passage written again
    /// under its id replaces the earlier one.
    /// </summary>
    /// <param name="removedIds">Ids of passages that are no more.</param>
    /// <param name="written">Passages new or changed.</param>
    /// <param name="fromFrames">Whether they were analysed here from frames.</param>
    /// <param name="register">The register.</param>
    public Task ReplacePassagesAsync(
        IReadOnlyCollection<string> removedIds, IReadOnlyCollection<Passage> written, bool fromFrames, HerdRegister register) => throw new NotImplementedException();

    /// <summary>Gives the passages that carried any of these tags to the cow that the register now names.</summary>
    /// <returns>End of the earliest passage that changed hands; null when none did.</returns>
    public Task<DateTimeOffset?> ReassignAsync(IReadOnlyCollection<Eid> tags, HerdRegister register) => throw new NotImplementedException();

    /// <summary>Accepted passages of known cows that ended at or after an instant, in the order of a history.</summary>
    public IAsyncEnumerable<PassageInput> HistoryAsync(DateTimeOffset from) => throw new NotImplementedException();

    /// <summary>The newest saved fold from before an instant (from any time when null); null when there is none.</summary>
    public Task<(DateTimeOffset Head, byte[] Saved)?> CheckpointBeforeAsync(DateTimeOffset? before) => throw new NotImplementedException();

    /// <summary>Removes every checkpoint, assessment and alert step at or after an instant: what follows is folded again.</summary>
    public Task ForgetFromAsync(DateTimeOffset from) => throw new NotImplementedException();

    /// <summary>Writes a saved fold; older ones are thinned out.</summary>
    public Task WriteCheckpointAsync(DateTimeOffset head, byte[] saved) => throw new NotImplementedException();

    /// <summary>Writes assessments, new or again.</summary>
    public Task WriteAssessmentsAsync(IReadOnlyCollection<PassageAssessment> assessments) => throw new NotImplementedException();

    /// <summary>Appends steps of alerts' lives, in order.</summary>
    public Task WriteAlertStepsAsync(IReadOnlyCollection<AlertChange> changes) => throw new NotImplementedException();

    /// <summary>
    /// Ends a fold of the past: alerts that were there before <see cref="ForgetFromAsync"/> and are no more redirect to their
    /// successor (same cow, pattern and leg, raised within 14 days) or are known as withdrawn; those that changed are marked revised.
    /// </summary>
    /// <returns>Ids of alerts that are no more.</returns>
    public Task<ImmutableArray<string>> SettleRevisionAsync(DateTimeOffset revisedAt) => throw new NotImplementedException();

    /// <summary>Writes what a platform's cells read when empty.</summary>
    public Task WriteZerosAsync(string platform, IReadOnlyCollection<ZeroLevels> zeros) => throw new NotImplementedException();

    /// <summary>The zero last read before an instant; null when none is known.</summary>
    public Task<ZeroLevels?> ZeroBeforeAsync(string platform, DateTimeOffset before) => throw new NotImplementedException();

    /// <summary>Writes the newest common movement of platforms.</summary>
    public Task WriteShiftsAsync(IReadOnlyCollection<PlatformShift> shifts) => throw new NotImplementedException();

    /// <summary>Removes frames and tags that began before an instant; later ones of that age are refused as too late.</summary>
    public Task PruneFramesAsync(DateTimeOffset before) => throw new NotImplementedException();

    /// <summary>Makes everything of this change visible at once, and the log folded up to a sequence number.</summary>
    public Task CommitAsync(long folded) => throw new NotImplementedException();

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => throw new NotImplementedException();
}
