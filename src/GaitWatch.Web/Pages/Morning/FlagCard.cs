using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>A flagged cow on the morning page.</summary>
/// <param name="Alert">Her flag.</param>
/// <param name="Days">Days since its onset.</param>
/// <param name="NotSeenFor">How long she has not crossed, when that is over a day; null while she crosses.</param>
public sealed record FlagCard(AlertView Alert, int Days, TimeSpan? NotSeenFor);
