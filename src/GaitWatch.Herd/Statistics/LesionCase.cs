using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>A new case: a lesion found in a foot that did not have it a while ago.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="Foot">The foot.</param>
/// <param name="Lesion">The lesion.</param>
/// <param name="Zone">Where on the claw map; null when not said.</param>
/// <param name="At">When it was found first.</param>
/// <param name="Pen">Her pen then; null when not said.</param>
/// <param name="MakesLame">Whether it is of the kind, and as bad, that it makes a cow lame.</param>
public sealed record LesionCase(string Cow, Leg Foot, Lesion Lesion, int? Zone, DateTimeOffset At, string? Pen, bool MakesLame)
{
    /// <summary>The same lesion of the same foot looked at again within so long is the same case: as long as a recovery is under way.</summary>
    public static TimeSpan SameCase => FootWork.UnderWay;

    /// <summary>The cases that begin in some findings, oldest first. Feet in which nothing was found are no cases.</summary>
    /// <param name="findings">Findings, in any order, also from before the time of interest: they tell what is not new.</param>
    /// <param name="register">Who was in which pen.</param>
    public static IEnumerable<LesionCase> Of(IEnumerable<Finding> findings, HerdRegister register) => findings
        .Where(finding => finding.Lesion != Lesion.None)
        .GroupBy(finding => (finding.Cow, finding.Foot, finding.Lesion))
        .SelectMany(ofFoot => OfFoot([.. ofFoot.Order(Finding.ByTime)], register))
        .OrderBy(found => found.At).ThenBy(found => found.Cow, NaturalOrder.Comparer).ThenBy(found => found.Foot).ThenBy(found => found.Lesion);

    private static IEnumerable<LesionCase> OfFoot(Finding[] findings, HerdRegister register)
    {
        for (var i = 0; i < findings.Length; i++)
        {
            var (first, before) = (findings[i], i == 0 ? null : findings[i - 1]);
            if (before is null || first.At - before.At > SameCase)
            {
                yield return new LesionCase(
                    first.Cow, first.Foot, first.Lesion, first.Zone, first.At, register.At(first.Cow, first.At)?.Pen, LameLesion.Explains(first));
            }
        }
    }
}
