using GaitWatch.Gait;

namespace GaitWatch.Benchmarks;

/// <summary>One trouble as it truly was.</summary>
/// <param name="Cow">The cow's place in the herd's list.</param>
/// <param name="Leg">The sore leg; of a pair the first drawn.</param>
/// <param name="IsPaired">Whether both hind legs are sore at once.</param>
/// <param name="OnsetDay">When it begins, days from the history's first.</param>
/// <param name="RampDays">Days from onset to plateau.</param>
/// <param name="PlateauDrop">Fraction of the leg's load given up when full.</param>
/// <param name="HealingDay">Day from which it heals; infinite when it does not.</param>
/// <param name="HealedDay">Day on which the drop has come down to 1 %; infinite when it never does.</param>
/// <param name="TreatedDay">Day on which the foot is first treated; infinite when it is not.</param>
/// <param name="DropAt">Fraction given up on a day.</param>
/// <param name="IsJudged">Whether it counts: begun after the herd's learning, in a cow known for three weeks, that crosses on, not lame already.</param>
internal sealed record TrueTrouble(
    int Cow, Leg Leg, bool IsPaired, double OnsetDay, double RampDays, double PlateauDrop, double HealingDay, double HealedDay, double TreatedDay, Func<double, double> DropAt, bool IsJudged)
{
    /// <summary>Whether it is going on.</summary>
    public bool IsOn(double day) => day >= OnsetDay && day < HealedDay;

    /// <summary>Whether a leg is sore of it.</summary>
    public bool IsSore(Leg leg) => leg == Leg || (IsPaired && leg == Leg.Opposite());
}
