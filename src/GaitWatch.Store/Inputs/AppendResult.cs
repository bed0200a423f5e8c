namespace GaitWatch.Store;

/// <summary>What became of a batch of inputs, now durable.</summary>
/// <param name="LastSeq">The newest sequence number given out so far, by this batch or an earlier one.</param>
/// <param name="Stored">How many were new.</param>
/// <param name="Duplicates">How many were there already.</param>
/// <param name="Rejected">How many were kept as rejected.</param>
public readonly record struct AppendResult(long LastSeq, int Stored, int Duplicates, int Rejected);
