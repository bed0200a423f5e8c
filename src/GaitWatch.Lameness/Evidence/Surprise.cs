namespace GaitWatch.Lameness;

/// <summary>How a passage compares with what was expected of the cow.</summary>
/// <param name="Expected">Her baseline with the herd's common movement, balances.</param>
/// <param name="Value">Passage less expectation.</param>
/// <param name="Cov">Scale of <paramref name="Value"/>, everything unexplained included.</param>
/// <param name="Noise">The passage's own part of <paramref name="Cov"/>.</param>
/// <param name="Inverse">Inverse of <paramref name="Cov"/>.</param>
/// <param name="Distance">Squared Mahalanobis distance of <paramref name="Value"/>.</param>
internal readonly record struct Surprise(Vector3 Expected, Vector3 Value, Matrix3 Cov, Matrix3 Noise, Matrix3 Inverse, double Distance);
