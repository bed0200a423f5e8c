using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Benchmarks;

/// <summary>A passage with the truth behind it, as the oracle and the plain rules need it.</summary>
/// <param name="Cow">Place in the herd's list of the cow whose tag was read.</param>
/// <param name="Day">When, days from the history's first.</param>
/// <param name="Shares">What was measured.</param>
/// <param name="Seen">The same in balances.</param>
/// <param name="Sound">What the platform would have told of her were she sound and without scatter, balances.</param>
/// <param name="Level">Her scatter over that of a usual cow, standard deviations.</param>
/// <param name="IsHers">Whether the tag is her own.</param>
internal readonly record struct Crossing(int Cow, double Day, PerLeg<float> Shares, Balances Seen, Balances Sound, float Level, bool IsHers);
