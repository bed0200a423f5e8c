namespace GaitWatch.Store;

/// <summary>What came in since the store was made.</summary>
/// <param name="Received">Everything: stored, rejected and duplicates.</param>
/// <param name="Stored">Kept and used.</param>
/// <param name="Rejected">Kept with a reason.</param>
/// <param name="Duplicates">There already.</param>
/// <param name="Pending">Stored, not yet folded into the state.</param>
public sealed record IngestView(long Received, long Stored, long Rejected, long Duplicates, long Pending);

/// <summary>A message that could not be used.</summary>
/// <param name="At">When it arrived.</param>
/// <param name="Topic">Where it came from.</param>
/// <param name="Reason">A short fixed word.</param>
/// <param name="Detail">The field, what was found and what would be right.</param>
/// <param name="Payload">As it came, as text; what is not UTF-8 is shown as replacement characters.</param>
public sealed record RejectedView(DateTimeOffset At, string Topic, string Reason, string Detail, string Payload);
