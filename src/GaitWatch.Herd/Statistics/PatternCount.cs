namespace GaitWatch.Herd;

/// <summary>How many new cases and alerts have something in common.</summary>
/// <param name="Of">What: a pen, a leg, a zone, a lesion or a month; null for those of which it is not known.</param>
/// <param name="Cases">New cases of a lesion.</param>
/// <param name="Alerts">Alerts raised; null where alerts have no such thing.</param>
/// <typeparam name="T">What they have in common.</typeparam>
public sealed record PatternCount<T>(T Of, int Cases, int? Alerts);
