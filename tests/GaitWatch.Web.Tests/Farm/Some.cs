using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

/// <summary>Makes what a test does not care about.</summary>
internal static class Some
{
    public const string Platform = "parlour-exit";

    /// <summary>A morning in the farm's summer time: 07:30 at the farm.</summary>
    public static readonly DateTimeOffset Now = new(2026, 6, 10, 5, 30, 0, TimeSpan.Zero);

    public static Eid Tag(int number) => Eid.Parse($"982{number:D12}");

    public static CowRegistration Cow(string cow, int tag, string? pen = "2") =>
        new(cow, Now.AddDays(-400)) { Eid = Tag(tag), Pen = pen, Parity = 2, CalvedOn = new DateOnly(2026, 3, 1), EnteredAt = Now.AddDays(-400) };

    public static DevicePassage Passage(string id, int? tag, DateTimeOffset at, double lf = 170, double rf = 170, double lh = 140, double rh = 140) =>
        new(id, tag is { } number ? Tag(number) : null, at, at.AddSeconds(4), new PerLeg<double>(lf, rf, lh, rh));

    public static Alert Alert(
        string cow, Leg leg = Leg.Rh, DateTimeOffset? raisedAt = null, double drop = 14.2, Urgency urgency = Urgency.Today,
        AlertPattern pattern = AlertPattern.OneLeg, DateTimeOffset? onsetAt = null)
    {
        var at = raisedAt ?? Now.AddHours(-13);
        return new Alert
        {
            Id = $"{cow}.{pattern.WireName()}.{leg.WireName()}.{at.UtcDateTime:yyyyMMddHHmmss}",
            Cow = cow,
            Pattern = pattern,
            Leg = leg,
            LegProbability = PerLeg.From(l => l == leg ? 0.94 : 0.02),
            RaisedAt = at,
            OnsetAt = onsetAt ?? at.AddDays(-4),
            LoadDropPercent = drop,
            LoadDropLowerPercent = drop - 3,
            LoadDropUpperPercent = drop + 3,
            Urgency = urgency,
            State = AlertState.Open,
            Explanation = $"Her {leg.InWords()} foot has carried less than her own normal for four days.",
        };
    }
}
