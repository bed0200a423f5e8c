using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>A cow with a treated foot that has stopped crossing: silence is no recovery.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="Foot">The treated foot.</param>
/// <param name="LastSeenAt">When she last crossed.</param>
public sealed record MissingCow(string Cow, Leg Foot, DateTimeOffset LastSeenAt)
{
    internal static IEnumerable<MissingCow> Of(
        IEnumerable<RecoveryAssessment> recoveries, IReadOnlyDictionary<string, CowView> cows, DateTimeOffset newest, TimeSpan crossesWithin) => recoveries
        .Where(foot => foot.Status != RecoveryStatus.Recovered)
        .Select(foot => (Foot: foot, Cow: cows.GetValueOrDefault(foot.Cow)))
        // A dry cow crosses no platform, and one that has left never will.
        .Where(foot => foot.Cow is { DriedOffOn: null, LeftOn: null, LastSeenAt: { } seen } && newest - seen > crossesWithin)
        .GroupBy(foot => foot.Foot.Cow)
        .Select(ofCow => ofCow.MaxBy(foot => foot.Foot.TreatedAt))
        .Select(foot => new MissingCow(foot.Foot.Cow, foot.Foot.Foot, foot.Cow!.LastSeenAt!.Value))
        .OrderBy(cow => cow.LastSeenAt);
}
