using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Web;

/// <summary>Where the force curves of one leg lie: seconds since first contact along it, force up it.</summary>
public sealed class PassageChart
{
    internal const double Width = 400;
    internal const double Height = 140;
    internal const double Top = 24;
    internal const double Bottom = 116;
    internal const double Left = 42;
    internal const double Right = 394;

    // A reading every so many samples: more would only make the page heavy.
    private const int SamplesAReading = 5;

    private readonly DateTimeOffset _begin;
    private readonly double _seconds;
    private readonly double _mostKg;

    private PassageChart(Leg leg, ImmutableArray<FootfallView> footfalls, DateTimeOffset begin, double seconds, double mostKg)
    {
        Leg = leg;
        Footfalls = footfalls;
        _begin = begin;
        _seconds = seconds;
        _mostKg = mostKg;
    }

    internal Leg Leg { get; }

    internal ImmutableArray<FootfallView> Footfalls { get; }

    /// <summary>The four legs, drawn to one scale.</summary>
    internal static ImmutableArray<PassageChart> Of(CurvesView curves)
    {
        var seconds = Math.Max(1, curves.Footfalls.Select(fall => (fall.Lift - curves.StartedAt).TotalSeconds).DefaultIfEmpty(1).Max());
        var most = 1.08 * Math.Max(100, curves.Footfalls.SelectMany(fall => fall.CurveKg).DefaultIfEmpty(100).Max());
        return [.. Legs.All.Select(leg => new PassageChart(leg, [.. curves.Footfalls.Where(fall => fall.Leg == leg.WireName())], curves.StartedAt, seconds, most))];
    }

    internal double At(double seconds) => Left + (seconds / _seconds * (Right - Left));

    internal double Up(double kg) => Bottom - (Math.Clamp(kg, 0, _mostKg) / _mostKg * (Bottom - Top));

    internal string Curve(FootfallView fall)
    {
        var path = new SvgPath();
        var start = (fall.Contact - _begin).TotalSeconds;
        for (var i = 0; i < fall.CurveKg.Count; i++)
            _ = i == 0 ? path.Move(At(start), Up(fall.CurveKg[0])) : path.Line(At(start + (i / fall.Hz)), Up(fall.CurveKg[i]));
        return path.ToString();
    }

    internal IEnumerable<int> SecondTicks() => Enumerable.Range(0, (int)_seconds + 1);

    /// <summary>Round figures in the reader's unit, with their place.</summary>
    internal IEnumerable<(double Figure, double Y)> ForceTicks()
    {
        var most = Figures.InUnit(_mostKg);
        var step = most > 800 ? 400 : most > 400 ? 200 : 100;
        for (var figure = 0; figure <= most; figure += step)
            yield return (figure, Up(figure * (_mostKg / most)));
    }

    internal string Readings() => string.Join('|', Footfalls.SelectMany(fall => fall.CurveKg.Select((kg, i) => (Kg: kg, Index: i, At: (fall.Contact - _begin).TotalSeconds + (i / fall.Hz))))
        .Where(sample => sample.Index % SamplesAReading == 0).OrderBy(sample => sample.At)
        .Select(sample => $"{SvgPath.Number(At(sample.At))} {SvgPath.Number(Up(sample.Kg))} {PassageTexts.Reading(sample.At, sample.Kg)}"));
}
