namespace GaitWatch.Gait;

/// <summary>
/// Stride time over the strides done: straight pieces between knots half a stride apart. Time is its integral, so every time that is
/// seen is linear in the stride times at the knots.
/// </summary>
internal sealed class PaceCourse
{
    /// <summary>Strides between knots.</summary>
    public const double Spacing = 0.5;

    /// <summary>
    /// A course over more knots than this is no walk over a platform: over 6 m a cow takes ten short strides at most, with those before
    /// the first contact and after the last. It bounds the work, too.
    /// </summary>
    private const int MostKnots = 32;

    private readonly double _first;
    private readonly double[] _stride;
    private readonly double[] _seconds;

    private PaceCourse(double first, double[] stride)
    {
        _first = first;
        _stride = stride;
        _seconds = new double[stride.Length];
        for (var k = 1; k < stride.Length; k++)
            _seconds[k] = _seconds[k - 1] + (0.5 * Spacing * (stride[k - 1] + stride[k]));
        var atOrigin = Seconds(_first, 0);
        for (var k = 0; k < stride.Length; k++)
            _seconds[k] -= atOrigin;
    }

    /// <summary>Number of knots.</summary>
    public int Knots => _stride.Length;

    /// <summary>Strides done at the first knot; at 0 the time is 0.</summary>
    public double First => _first;

    /// <summary>Mean of the stride times at the knots, seconds.</summary>
    public double Mean => _stride.Sum() / _stride.Length;

    /// <summary>An even pace.</summary>
    /// <param name="from">Strides done at the beginning, below 0.</param>
    /// <param name="to">Strides done at the end, above 0.</param>
    /// <param name="strideSeconds">Its stride time.</param>
    /// <returns>Null when it is too long.</returns>
    public static PaceCourse? Even(double from, double to, double strideSeconds)
    {
        var first = Spacing * Math.Floor(from / Spacing);
        var knots = (to - first) / Spacing;
        if (!(knots < MostKnots - 2))
            return null;
        var stride = new double[(int)Math.Ceiling(knots) + 1];
        Array.Fill(stride, strideSeconds);
        return new PaceCourse(first, stride);
    }

    /// <summary>The same knots with other stride times; null when these are no walk's.</summary>
    public PaceCourse? With(ReadOnlySpan<double> stride)
    {
        var mean = 0.0;
        foreach (var seconds in stride)
            mean += seconds / stride.Length;
        if (!(mean is > 0.2 and < 10))
            return null;
        foreach (var seconds in stride)
        {
            if (!(seconds > 0.3 * mean && seconds < 3 * mean))
                return null;
        }

        return new PaceCourse(_first, stride.ToArray());
    }

    /// <summary>Adds to a row over the knots what the time from one stride number to another takes of each.</summary>
    public void AddTime(Span<double> row, double from, double to, double factor)
    {
        if (to < from)
        {
            AddTime(row, to, from, -factor);
            return;
        }

        var last = row.Length - 1;
        var (a, b) = ((from - _first) / Spacing, (to - _first) / Spacing);
        // Beyond the knots the end's stride time holds.
        if (a < 0)
        {
            row[0] += factor * Spacing * (Math.Min(b, 0) - a);
            a = 0;
        }

        if (b > last)
        {
            row[last] += factor * Spacing * (b - Math.Max(a, last));
            b = last;
        }

        while (a < b)
        {
            var k = Math.Min((int)a, last - 1);
            var end = Math.Min(b, k + 1);
            var (u, v) = (a - k, end - k);
            var rising = 0.5 * ((v * v) - (u * u));
            row[k + 1] += factor * Spacing * rising;
            row[k] += factor * Spacing * (v - u - rising);
            a = k + 1;
        }
    }

    /// <summary>The time that a row over the knots stands for, seconds.</summary>
    public double Sum(ReadOnlySpan<double> row)
    {
        var seconds = 0.0;
        for (var k = 0; k < row.Length; k++)
            seconds += row[k] * _stride[k];
        return seconds;
    }

    /// <summary>Strides done at a time.</summary>
    public double StridesAt(double seconds)
    {
        var last = _stride.Length - 1;
        if (seconds <= _seconds[0])
            return _first + ((seconds - _seconds[0]) / _stride[0]);
        if (seconds >= _seconds[last])
            return _first + (Spacing * last) + ((seconds - _seconds[last]) / _stride[last]);
        var k = Array.BinarySearch(_seconds, seconds);
        if (k >= 0)
            return _first + (Spacing * k);
        k = ~k - 1;
        // seconds into the piece = Spacing (p u + (q - p) u^2 / 2), with u from 0 to 1.
        var (p, bend, into) = (_stride[k], _stride[k + 1] - _stride[k], (seconds - _seconds[k]) / Spacing);
        var u = 2 * into / (p + Math.Sqrt((p * p) + (2 * bend * into)));
        return _first + (Spacing * (k + u));
    }

    /// <summary>The time from one stride number to another, seconds.</summary>
    public double Seconds(double from, double to)
    {
        Span<double> row = stackalloc double[_stride.Length];
        row.Clear();
        AddTime(row, from, to, 1);
        return Sum(row);
    }
}
