namespace GaitWatch.Web;

/// <summary>Whether the service does its work.</summary>
/// <param name="Ready">Whether it does.</param>
/// <param name="Reasons">What stands in the way, and what to do; empty when nothing does.</param>
internal sealed record ReadinessView(bool Ready, IReadOnlyList<string> Reasons);

/// <summary>That the process answers.</summary>
/// <param name="Alive">Always true.</param>
internal sealed record LivenessView(bool Alive);
