namespace GaitWatch.Web;

/// <summary>A link that was given out.</summary>
/// <param name="Visit">The visit's day.</param>
/// <param name="Address">Where it leads.</param>
/// <param name="EndsAt">When it ends.</param>
internal sealed record ShareLink(DateOnly Visit, Uri Address, DateTimeOffset EndsAt);
