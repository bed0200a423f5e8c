namespace GaitWatch.Lameness;

/// <summary>A sound cow's passage less what she alone explains.</summary>
/// <param name="Value">Balances.</param>
/// <param name="Variance">Its variances.</param>
internal readonly record struct Residual(Vector3 Value, Vector3 Variance);
