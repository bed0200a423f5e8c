namespace GaitWatch.Gait;

/// <summary>How fast she went, from where and when her feet came down.</summary>
internal static class WalkingSpeed
{
    /// <summary>
    /// The slope of place over time through the middles of the stances, one line for the fore feet and a parallel one for the hind
    /// feet (which land where the fore feet stood), metres per second; null when no two footfalls of a pair are known.
    /// </summary>
    public static double? Of(IReadOnlyList<FootOnPlate> feet, double step)
    {
        double xt = 0, tt = 0;
        foreach (var fore in (ReadOnlySpan<bool>)[true, false])
        {
            double count = 0, meanX = 0, meanT = 0;
            foreach (var foot in feet)
            {
                if (foot.IsFore != fore)
                    continue;
                count++;
                meanX += foot.Line.Middle;
                meanT += foot.Middle * step;
            }

            if (count < 2)
                continue;
            meanX /= count;
            meanT /= count;
            foreach (var foot in feet)
            {
                if (foot.IsFore != fore)
                    continue;
                var t = (foot.Middle * step) - meanT;
                xt += t * (foot.Line.Middle - meanX);
                tt += t * t;
            }
        }

        return tt > 0.01 ? xt / tt : null;
    }
}
