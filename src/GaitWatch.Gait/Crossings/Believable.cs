namespace GaitWatch.Gait;

/// <summary>Tells quiet stretches in which the platform is empty from those in which something light stands still on it.</summary>
/// <remarks>
/// A foot half over an edge, a dog or a person at rest can be as quiet and, with an offset the other way, as light as an empty
/// plate. What gives them away is that the level comes and goes: it is brief and unlike that of the long quiet stretches
/// beside it, or it lies above the levels before and after it, which are alike.
/// </remarks>
internal static class Believable
{
    /// <summary>Devices send half a second of empty plate; what is quiet for so long stands for itself, seconds.</summary>
    private const double LongSeconds = 0.4;

    /// <summary>Zeros of neighbouring empties agree within this, kg a cell, but for a step.</summary>
    private const double AlikeKg = 3;

    /// <summary>What lies so much above both neighbours carries something, kg a plate.</summary>
    private const double RaisedKg = 6;

    /// <summary>The stretches that are believed to be empty.</summary>
    public static List<SampleRange> Among(List<SampleRange> quiet, Stretch stretch)
    {
        var longest = (int)(LongSeconds * stretch.Hz);
        if (quiet.Count < 2)
            return quiet;
        var levels = quiet.ConvertAll(range => Levels(stretch, range));
        var believed = new List<SampleRange>();
        var anyLong = quiet.Exists(range => range.Count >= longest);
        for (var k = 0; k < quiet.Count; k++)
        {
            if (quiet[k].Count >= longest ? !IsRaised(levels, k) : !anyLong || IsLikeALong(k))
                believed.Add(quiet[k]);
        }

        return believed;

        bool IsLikeALong(int k)
        {
            var before = quiet.FindLastIndex(k, range => range.Count >= longest);
            var after = quiet.FindIndex(k, range => range.Count >= longest);
            return (before >= 0 && Difference(levels[k], levels[before]) < AlikeKg)
                || (after >= 0 && Difference(levels[k], levels[after]) < AlikeKg);
        }
    }

    private static bool IsRaised(List<double[]> levels, int k) =>
        k > 0 && k + 1 < levels.Count && Difference(levels[k - 1], levels[k + 1]) < AlikeKg
        && Sum(levels[k]) > Math.Max(Sum(levels[k - 1]), Sum(levels[k + 1])) + RaisedKg;

    private static double Difference(double[] a, double[] b)
    {
        var largest = 0.0;
        for (var cell = 0; cell < a.Length; cell++)
            largest = Math.Max(largest, Math.Abs(a[cell] - b[cell]));
        return largest;
    }

    private static double Sum(double[] levels)
    {
        var sum = 0.0;
        foreach (var level in levels)
            sum += level;
        return sum;
    }

    private static double[] Levels(Stretch stretch, SampleRange range)
    {
        var levels = new double[stretch.SamplesKg.Length];
        for (var cell = 0; cell < levels.Length; cell++)
        {
            foreach (var kg in stretch.SamplesKg[cell].AsSpan(range.Start, range.Count))
                levels[cell] += kg / range.Count;
        }

        return levels;
    }
}
