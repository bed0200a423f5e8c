using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>A flag on a cow who had a foot treated a while before: it has come back, or the other leg of the pair has gone lame too.</summary>
/// <param name="FindingId">The finding that treated it.</param>
/// <param name="Foot">The treated foot.</param>
/// <param name="TreatedAt">When.</param>
/// <param name="IsRelapse">Whether it is the treated leg; else the opposite one.</param>
public sealed record AfterTreatment(string FindingId, Leg Foot, DateTimeOffset TreatedAt, bool IsRelapse)
{
    /// <summary>On the wire: <c>relapse</c> or <c>opposite-leg</c>.</summary>
    public string WireName => IsRelapse ? "relapse" : "opposite-leg";

    /// <summary>The treatment that a flag comes after; null when there is none. Of several the treated leg's, then the newest.</summary>
    /// <param name="alert">The alert.</param>
    /// <param name="feet">Treated feet of that cow.</param>
    /// <param name="options">How long a foot is followed: a flag later than that is another trouble.</param>
    public static AfterTreatment? Of(Alert alert, IEnumerable<TreatedFoot> feet, RecoveryOptions options) => feet
        .Where(foot => foot.Cow == alert.Cow && alert.RaisedAt > foot.TreatedAt && alert.RaisedAt <= foot.TreatedAt.AddDays(options.FollowedDays))
        .Select(foot => (Foot: foot, IsRelapse: IsOn(alert, foot.Foot)))
        .Where(one => one.IsRelapse || (alert.Pattern == AlertPattern.OneLeg && alert.Leg == one.Foot.Foot.Opposite()))
        .OrderByDescending(one => one.IsRelapse).ThenByDescending(one => one.Foot.TreatedAt)
        .Select(one => new AfterTreatment(one.Foot.FindingId, one.Foot.Foot, one.Foot.TreatedAt, one.IsRelapse))
        .FirstOrDefault();

    /// <summary>In plain words.</summary>
    /// <param name="calendar">The farm's days.</param>
    /// <remarks>Thomas H.J. et al. 2016, Vet Rec 178:116: of cows lame for more than two weeks 38 % were lame on the opposite leg too.</remarks>
    public string InWords(FarmCalendar calendar)
    {
        var when = string.Create(CultureInfo.InvariantCulture, $"{Foot.InWords()} was treated on {calendar.DayOf(TreatedAt):yyyy-MM-dd}");
        return IsRelapse
            ? $"A relapse: the {when}."
            : $"The opposite leg: the {when}, and long lame cows often go lame on the other one (38 % in a trial). Look at both.";
    }

    private static bool IsOn(Alert alert, Leg foot) => alert.Pattern switch
    {
        AlertPattern.BothHind => !foot.IsFore(),
        AlertPattern.BothFore => foot.IsFore(),
        _ => alert.Leg == foot,
    };
}
