namespace GaitWatch.Lameness;

/// <summary>
/// Running scatter matrix of zero-mean vectors with heavy tails: the covariance-like scale of a t distribution, by stochastic
/// expectation-maximisation. A vector far out counts little.
/// </summary>
/// <remarks>Weights (dof + 3) / (dof + d squared): Lange K.L., Little R.J.A., Taylor J.M.G. 1989, J Am Stat Assoc 84:881-896.</remarks>
internal struct Scatter
{
    /// <summary>The scale matrix.</summary>
    public Matrix3 Value;

    /// <summary>How many vectors it rests on, the prior's included.</summary>
    public double Count;

    public Scatter(Matrix3 prior, double priorCount) => (Value, Count) = (prior, priorCount);

    /// <summary>Takes in one vector.</summary>
    /// <param name="v">The vector.</param>
    /// <param name="tails">Degrees of freedom.</param>
    /// <param name="memory">How many of the newest vectors count, about.</param>
    public void Add(Vector3 v, double tails, double memory)
    {
        Count = Math.Min(Count + 1, memory);
        var weight = (tails + 3) / (tails + Value.Inverse().Quadratic(v));
        Value = ((1 - (1 / Count)) * Value) + (weight / Count * Matrix3.Outer(v, v));
    }
}
