namespace GaitWatch.Gait;

/// <summary>A run of samples, from <paramref name="Start"/> up to and without <paramref name="End"/>.</summary>
internal readonly record struct SampleRange(int Start, int End)
{
    /// <summary>Number of samples.</summary>
    public int Count => End - Start;
}

/// <summary>Finds where nothing stands on the platform, from the samples alone.</summary>
/// <remarks>
/// A sample belongs to an empty stretch when some window of 0.2 s around it is quiet: in every cell the spread is that of
/// noise and the mean is what an offset may be. A standing animal fails the mean, a walking one both. Whether a window is
/// quiet depends on its own samples only, and the sums are kept in whole numbers, so the answer is the same to the last bit
/// whatever else the recording holds.
/// </remarks>
internal static class EmptyStretches
{
    /// <summary>Long enough to tell noise from load at 50 Hz (10 samples), short enough to fit between two cows that follow each other.</summary>
    private const double WindowSeconds = 0.2;

    /// <summary>Three times the spread of a noisy cell (0.8 kg); a foot passes it within some milliseconds of landing.</summary>
    private const double QuietKg = 2.5;

    /// <summary>Below this a spread is noise of whatever colour.</summary>
    private const double SurelyQuietKg = 0.9;

    /// <summary>
    /// Above that it must be noise by its course too: the variance at most this many times half the mean square of successive
    /// differences (1 for white noise; von Neumann J. 1941, Ann Math Stat 12:367-395). What a light animal does to a cell is slow.
    /// </summary>
    private const int CourseRatio = 3;

    /// <summary>
    /// A plate that still rings after a lift swings fast about its zero: the two halves of the window have the same mean within this, kg.
    /// </summary>
    private const double HalvesKg = 1.0;

    /// <summary>The largest offset a cell may have (15 kg) and a margin for its drift.</summary>
    private const double LargestOffsetKg = 20;

    /// <summary>Readings are counted in 1/256 kg.</summary>
    private const int Unit = 256;

    /// <summary>Beyond this a reading is only known to be large, kg: it keeps the sums of squares within 64 bits.</summary>
    private const float Ceiling = 2000;

    /// <summary>The empty stretches, in order, never touching each other.</summary>
    public static List<SampleRange> Find(Stretch stretch) => Believable.Among(Quiet(stretch), stretch);

    private static List<SampleRange> Quiet(Stretch stretch)
    {
        var window = Math.Min(Math.Max(3, (int)Math.Round(WindowSeconds * stretch.Hz)), stretch.Count);
        var cells = stretch.SamplesKg;
        var sum = new long[cells.Length];
        var squares = new long[cells.Length];
        var meanLimit = (long)(LargestOffsetKg * Unit) * window;
        var spreadLimit = (long)(QuietKg * Unit * QuietKg * Unit) * window * window;
        var surelyLimit = (long)(SurelyQuietKg * Unit * SurelyQuietKg * Unit) * window * window;
        var steps = new long[cells.Length];
        var later = new long[cells.Length];
        var half = window / 2;
        // The means of two halves of unequal length are compared by their sums, each times the other's length.
        var halvesLimit = (long)(HalvesKg * Unit) * half * (window - half);
        var found = new List<SampleRange>();
        var lastQuiet = -2;
        for (var i = 0; i < stretch.Count; i++)
        {
            var quiet = i >= window - 1;
            for (var cell = 0; cell < cells.Length; cell++)
            {
                var entering = Count(cells[cell][i]);
                sum[cell] += entering;
                squares[cell] += entering * entering;
                later[cell] += entering;
                if (i >= half)
                    later[cell] -= Count(cells[cell][i - half]);
                if (i > 0)
                    steps[cell] += Square(entering - Count(cells[cell][i - 1]));
                if (i >= window)
                {
                    var leaving = Count(cells[cell][i - window]);
                    sum[cell] -= leaving;
                    squares[cell] -= leaving * leaving;
                    steps[cell] -= Square(Count(cells[cell][i - window + 1]) - leaving);
                }

                if (!quiet)
                    continue;
                var spread = (window * squares[cell]) - (sum[cell] * sum[cell]);
                quiet = Math.Abs(sum[cell]) <= meanLimit
                    && (spread <= surelyLimit || (spread <= spreadLimit
                        && (2 * spread <= CourseRatio * (long)window * window * steps[cell] / (window - 1)
                            || Math.Abs((later[cell] * (window - half)) - ((sum[cell] - later[cell]) * half)) <= halvesLimit)));
            }

            if (!quiet)
                continue;
            var start = i - window + 1;
            // Where the quiet was broken a new stretch begins, be it only a step of the zero that parts the two.
            if (lastQuiet == i - 1)
                found[^1] = found[^1] with { End = i + 1 };
            else
                found.Add(new SampleRange(found.Count > 0 ? Math.Max(start, found[^1].End) : start, i + 1));
            lastQuiet = i;
        }

        return found;
    }

    private static long Square(long value) => value * value;

    private static long Count(float kg) => (long)MathF.Round(Math.Clamp(kg, -Ceiling, Ceiling) * Unit);
}
