using GaitWatch.Lameness;

namespace GaitWatch.Web;

/// <summary>
/// Where everything of a treated foot's chart lies: days since treatment along it, up it how far the foot's load is from her
/// normal, her normal being the line at 0.
/// </summary>
public sealed class RecoveryChart
{
    internal const double Width = 320;
    internal const double Height = 168;
    internal const double Top = 16;
    internal const double Bottom = 126;
    internal const double MarksAt = 140;
    private const double Left = 44;
    private const double Right = 312;

    // Judged at 35 days: a week beyond is shown, so that the way there is seen.
    private const double LeastDays = 42;

    private readonly RecoveryAssessment _recovery;

    internal RecoveryChart(RecoveryAssessment recovery, PageContext page)
    {
        _recovery = recovery;
        Treated = recovery.TreatedAt;
        ExpectedDay = recovery.ExpectedNormalOn is { } expected ? expected.DayNumber - page.Calendar.DayOf(recovery.TreatedAt).DayNumber : null;
        LastDay = Math.Max(LeastDays, Math.Max(recovery.Days.IsEmpty ? 0 : recovery.Days[^1].DaysSinceTreatment, (ExpectedDay ?? 0) + 3));
        var drops = recovery.Days.Select(day => day.DropPercent).Append(recovery.DropPercentAtTreatment ?? 0).ToArray();
        var band = recovery.BandPercent ?? 0;
        Loads = new ValueAxis(-1.08 * Math.Max(12, drops.Max()), Math.Max(1.4 * band, Math.Max(4, -1.08 * drops.Min())), Bottom, Top);
    }

    internal ValueAxis Loads { get; }

    internal DateTimeOffset Treated { get; }

    internal double LastDay { get; }

    internal int? ExpectedDay { get; }

    internal static double Begin => Left;

    internal static double End => Right;

    internal double At(double days) => Left + (Math.Clamp(days, 0, LastDay) / LastDay * (Right - Left));

    internal IEnumerable<int> DayTicks()
    {
        var step = LastDay > 90 ? 28 : 14;
        for (var day = 0; day <= LastDay; day += step)
            yield return day;
    }

    internal IEnumerable<int> LoadTicks()
    {
        var step = Loads.High - Loads.Low > 40 ? 20 : 10;
        for (var drop = 0; -drop >= Loads.Low; drop += step)
            yield return -drop;
    }

    internal string Band() => _recovery.BandPercent is { } band
        ? new SvgPath().Move(Left, Loads.At(band)).Line(Right, Loads.At(band)).Line(Right, Loads.At(-band)).Line(Left, Loads.At(-band)).Close().ToString()
        : "";

    /// <summary>Days that prove nothing, as a block or wrap still changes her walk, are drawn hollow.</summary>
    internal string Dots(bool masked) => _recovery.Days.Where(day => (day.IsMasked || day.IsSettling) == masked)
        .Aggregate(new SvgPath(), (path, day) => path.Dot(At(day.DaysSinceTreatment), Loads.At(-day.DropPercent))).ToString();

    internal string Fit()
    {
        if (_recovery.Curve is not { } curve || _recovery.Days.IsEmpty)
            return "";
        // As far as she was measured, and on to the day she is expected to be there.
        var end = Math.Max(_recovery.Days[^1].DaysSinceTreatment, ExpectedDay ?? 0);
        var path = new SvgPath();
        const int parts = 40;
        for (var i = 0; i <= parts; i++)
        {
            var day = end * i / parts;
            _ = i == 0 ? path.Move(At(day), Loads.At(-curve.At(day))) : path.Line(At(day), Loads.At(-curve.At(day)));
        }

        return path.ToString();
    }

    /// <summary>Times with a block, or with a wrap, on the foot.</summary>
    internal IEnumerable<(string What, double From, double To)> Worn(DateTimeOffset until) =>
        CareSpans.Of(_recovery.Marks, until).Select(span => (span.What, At((span.From - Treated).TotalDays), At((span.To - Treated).TotalDays)));

    internal string Readings() => string.Join('|', _recovery.Days.Select(day =>
        $"{SvgPath.Number(At(day.DaysSinceTreatment))} {SvgPath.Number(Loads.At(-day.DropPercent))} {RecoveryTexts.Day(day)}"));

    internal string Newest() => _recovery.Days.IsEmpty ? RecoveryTexts.NotMeasured : RecoveryTexts.Day(_recovery.Days[^1]);
}
