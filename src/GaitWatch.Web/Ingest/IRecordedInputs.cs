namespace GaitWatch.Web;

/// <summary>Takes recorded messages as if their devices sent them now. The host implements it with what reads live messages.</summary>
public interface IRecordedInputs
{
    /// <summary>Takes a batch in order. When it has returned, everything is durable: used, kept as rejected, or known already.</summary>
    /// <param name="messages">The messages in the order of the recording.</param>
    /// <param name="cancellation">Gives up; what is durable stays so.</param>
    /// <returns>What became of them.</returns>
    /// <exception cref="Store.StoreUnavailableException">Nothing of the batch is durable.</exception>
    Task<RecordedOutcome> TakeAsync(IReadOnlyList<RecordedMessage> messages, CancellationToken cancellation);
}

/// <summary>A message as it was recorded.</summary>
/// <param name="Line">Its line in the recording, from 1.</param>
/// <param name="Topic">The topic it was sent to.</param>
/// <param name="Payload">Its payload, byte for byte.</param>
public sealed record RecordedMessage(long Line, string Topic, ReadOnlyMemory<byte> Payload);

/// <summary>What became of a batch of recorded messages.</summary>
/// <param name="LastSeq">The newest sequence number given out by the log so far.</param>
/// <param name="Stored">How many were new.</param>
/// <param name="Duplicates">How many were there already.</param>
/// <param name="Faults">Those that could not be used.</param>
public sealed record RecordedOutcome(long LastSeq, int Stored, int Duplicates, IReadOnlyList<RecordedFault> Faults);

/// <summary>Why a line of a recording was not used.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Fault">The field, what was found and what would be right.</param>
public sealed record RecordedFault(long Line, string Fault);
