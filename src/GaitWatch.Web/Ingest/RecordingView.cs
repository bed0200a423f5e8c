namespace GaitWatch.Web;

/// <summary>What became of a recording.</summary>
/// <param name="Lines">How many lines held something.</param>
/// <param name="Stored">How many inputs were new.</param>
/// <param name="Duplicates">How many were there already.</param>
/// <param name="Rejected">How many lines could not be used; each is kept with its reason.</param>
/// <param name="Faults">The first of these, with their lines.</param>
internal sealed record RecordingView(long Lines, long Stored, long Duplicates, long Rejected, IReadOnlyList<RecordedFault> Faults);
