using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Benchmarks;

/// <summary>
/// Flags of a rule that says at every crossing how strongly it speaks against a leg: one while the rule goes on speaking, another after a week's silence.
/// </summary>
internal sealed class FlagBook
{
    private const double SilentDays = 7;
    private readonly Dictionary<(int Cow, Leg Leg), double> _last = [];

    /// <summary>The flags, by time.</summary>
    public List<Flag> Flags { get; } = [];

    /// <summary>The rule speaks against a leg.</summary>
    public void Speak(int cow, Leg leg, double day)
    {
        if (!_last.TryGetValue((cow, leg), out var before) || day - before > SilentDays)
            Flags.Add(new Flag(cow, AlertPattern.OneLeg, leg, day));
        _last[(cow, leg)] = day;
    }
}
