namespace GaitWatch.Barn;

/// <summary>Why a message cannot be used.</summary>
/// <param name="Reason">One of <see cref="RejectionReasons"/>.</param>
/// <param name="Detail">The field, what was found and what would be right.</param>
internal readonly record struct Fault(string Reason, string Detail);
