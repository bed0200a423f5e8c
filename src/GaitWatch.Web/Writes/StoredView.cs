namespace GaitWatch.Web;

/// <summary>The answer to a write that is safe in the store but does not show in the state yet.</summary>
/// <param name="Stored">What that means, in words.</param>
internal sealed record StoredView(string Stored);
