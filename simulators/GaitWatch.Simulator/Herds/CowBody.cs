namespace GaitWatch.Simulator;

/// <summary>Her weight and how it rests on her legs over lactation and pregnancy, soreness apart.</summary>
internal static class CowBody
{
    /// <summary>Of the foetus's weight 52 % rests in front: Chapinal N. et al. 2009, J Dairy Sci 92:581-588.</summary>
    public const double ForeOfCalf = 0.52;

    /// <summary>Milk is carried mainly by the hind legs (same source); the figure is invented.</summary>
    public const double ForeOfMilk = 0.15;

    /// <summary>Pregnancy of a dairy cow, days: about 280, common practice.</summary>
    public const int PregnancyDays = 280;

    /// <summary>Calf, fluids and womb at term, kg (invented, order of magnitude), growing by 1.8 % a day.</summary>
    public static double CalfKg(int? daysToCalving) =>
        daysToCalving is { } days and > 0 and <= PregnancyDays ? 70 * Math.Exp(-0.018 * days) : 0;

    /// <summary>
    /// Milk a day, kg, by Wood's curve (Wood P.D.P. 1967, Nature 216:164: y = a t^b e^(-ct)) with b 0.2, c 0.0036, so the peak is on
    /// day b / c = 56.
    /// </summary>
    public static double MilkKgPerDay(double peakKg, int daysInMilk)
    {
        const double b = 0.2, c = 0.0036;
        var t = Math.Max(1, daysInMilk);
        var atPeak = Math.Pow(b / c, b) * Math.Exp(-b);
        return peakKg * Math.Pow(t, b) * Math.Exp(-c * t) / atPeak;
    }

    /// <summary>Weight and shares without milk at the moment of a crossing.</summary>
    public static (double WeightKg, PerFoot<double> Shares) Without(SimulatedCow cow, int day)
    {
        var dim = cow.DaysInMilkOn(day);
        // She milks off her back for two months, about 7 %, and wins it back (common practice, figure invented).
        var loss = 0.07 * Math.Min(1, dim / 60.0) * (1 - Math.Clamp((dim - 80) / 180.0, 0, 1));
        var weight = cow.WeightKg * (1.02 - loss);
        // Udder and belly change over the lactation: a slow shift of up to 1 % of her weight from the hind to the fore legs (invented).
        var shares = cow.Shares.Carrying(weight, 0, 0);
        var shift = 0.01 * Math.Clamp(dim / 300.0, 0, 1);
        var fore = shares.Lf + shares.Rf;
        shares = LoadShares.Of(fore + shift, shares.Lf / fore, shares.Lh / (1 - fore));
        var calf = CalfKg(cow.DaysToCalvingOn(day));
        return calf > 0 ? (weight + calf, shares.Carrying(weight, calf, ForeOfCalf)) : (weight, shares);
    }

    /// <summary>
    /// How much more she shifts about on her legs when heavy in calf: what falls by about 30 % after calving (Chapinal 2009) was
    /// 1 / 0.7 before it. Grows over the last 100 days.
    /// </summary>
    public static double CalfUnrest(int? daysToCalving) =>
        daysToCalving is { } days and < 100 ? 1 + (1 / 0.7 - 1) * (1 - days / 100.0) : 1;
}
