namespace GaitWatch.Gait;

/// <summary>One value for each of the four legs.</summary>
/// <param name="Lf">Left fore.</param>
/// <param name="Rf">Right fore.</param>
/// <param name="Lh">Left hind.</param>
/// <param name="Rh">Right hind.</param>
/// <typeparam name="T">What is kept per leg; its unit stands in the name of the member that holds this.</typeparam>
public readonly record struct PerLeg<T>(T Lf, T Rf, T Lh, T Rh)
{
    /// <summary>The value of one leg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the four legs.</exception>
    public T this[Leg leg] => leg switch
    {
        Leg.Lf => Lf,
        Leg.Rf => Rf,
        Leg.Lh => Lh,
        Leg.Rh => Rh,
        _ => throw new ArgumentOutOfRangeException(nameof(leg), leg, "A leg is one of Lf, Rf, Lh, Rh."),
    };

    /// <summary>Applies a function to each leg's value.</summary>
    public PerLeg<TOut> Select<TOut>(Func<T, TOut> map) => new(map(Lf), map(Rf), map(Lh), map(Rh));

    /// <summary>The four values with left and right exchanged: what a mirror would show.</summary>
    public PerLeg<T> Mirrored() => new(Rf, Lf, Rh, Lh);
}

/// <summary>Ways to make a <see cref="PerLeg{T}"/>.</summary>
public static class PerLeg
{
    /// <summary>Calls a function once for each leg, in the order of the wire contract.</summary>
    public static PerLeg<T> From<T>(Func<Leg, T> make) => new(make(Leg.Lf), make(Leg.Rf), make(Leg.Lh), make(Leg.Rh));
}
