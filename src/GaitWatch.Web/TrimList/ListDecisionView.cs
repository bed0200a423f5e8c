using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>What a person decided about a cow and a visit.</summary>
/// <param name="Visit">The visit's day.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Hand"><c>pinned</c>, <c>removed</c>, or <c>as-rule</c> where an earlier decision was taken back.</param>
/// <param name="Reason">Why.</param>
/// <param name="Foot">The foot to lift first.</param>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
internal sealed record ListDecisionView(DateOnly Visit, string Cow, string Hand, string Reason, string? Foot, string By, DateTimeOffset At)
{
    public static ListDecisionView Of(TrimListHandWrite write) =>
        new(write.Visit, write.Cow, write.Hand.WireName(), write.Reason, write.Foot?.WireName(), write.By, write.At);
}
