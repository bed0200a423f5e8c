namespace GaitWatch.Store;

/// <summary>A copy of the store that was made.</summary>
/// <param name="File">Its full path.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Inputs">How many messages and writes it holds, counted from the first.</param>
/// <param name="NewestAt">The newest crossing in it; null when it has none.</param>
public sealed record BackupResult(string File, long Bytes, long Inputs, DateTimeOffset? NewestAt);
