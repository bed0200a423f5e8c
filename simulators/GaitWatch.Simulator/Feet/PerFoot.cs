namespace GaitWatch.Simulator;

/// <summary>One value for each foot.</summary>
/// <param name="Lf">Left fore.</param>
/// <param name="Rf">Right fore.</param>
/// <param name="Lh">Left hind.</param>
/// <param name="Rh">Right hind.</param>
public readonly record struct PerFoot<T>(T Lf, T Rf, T Lh, T Rh)
{
    /// <summary>The value of one foot.</summary>
    public T this[Foot foot] => foot switch
    {
        Foot.Lf => Lf,
        Foot.Rf => Rf,
        Foot.Lh => Lh,
        _ => Rh,
    };

    /// <summary>The same with each value put through <paramref name="map"/>.</summary>
    public PerFoot<TOut> Select<TOut>(Func<T, TOut> map) => new(map(Lf), map(Rf), map(Lh), map(Rh));

    /// <summary>The four in order.</summary>
    public IEnumerable<T> Values() => [Lf, Rf, Lh, Rh];
}

/// <summary>Makes <see cref="PerFoot{T}"/> values.</summary>
public static class PerFoot
{
    /// <summary>One value for each foot, computed from the foot.</summary>
    public static PerFoot<T> From<T>(Func<Foot, T> of) => new(of(Foot.Lf), of(Foot.Rf), of(Foot.Lh), of(Foot.Rh));
}
