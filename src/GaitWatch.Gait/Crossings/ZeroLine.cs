using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>What each cell would read without the load during a crossing: a straight line between the empties on both sides.</summary>
internal sealed class ZeroLine
{
    /// <summary>How much of an empty stretch is read, seconds: devices promise 0.5 s of it.</summary>
    private const double ReadSeconds = 0.4;

    /// <summary>Kept away from the load, seconds: the first milliseconds of a footfall, the last ringing after a lift.</summary>
    private const double GuardSeconds = 0.05;

    private readonly int _origin;
    private readonly double[] _start;
    private readonly double[] _slope;
    private readonly double _samples;

    /// <param name="origin">Sample from which the line is counted, so that it does not depend on where the recording begins.</param>
    /// <param name="start">Zero of each cell there, kg.</param>
    /// <param name="slope">Its change a sample, kg.</param>
    /// <param name="samples">From the one empty to the other.</param>
    private ZeroLine(int origin, double[] start, double[] slope, double samples = 0)
    {
        _origin = origin;
        _start = start;
        _slope = slope;
        _samples = samples;
    }

    /// <summary>The zero of a cell at a sample, kg.</summary>
    public double At(int cell, int index) => _start[cell] + (_slope[cell] * (index - _origin));

    /// <summary>By how much a cell's zero changed from the one empty to the other, kg; 0 where only one was seen.</summary>
    public double Change(int cell) => _slope[cell] * _samples;

    /// <summary>
    /// The line for a load. With an empty stretch on one side only it is level; with none it is the zero last known, and with
    /// that unknown too there is no line.
    /// </summary>
    public static ZeroLine? For(Stretch stretch, SampleRange? before, SampleRange? after, ZeroLevels? lastKnown)
    {
        var cells = stretch.SamplesKg.Length;
        var left = before is { } b ? Read(stretch, NearEnd(stretch, b)) : null;
        var right = after is { } a ? Read(stretch, NearStart(stretch, a)) : null;
        if (left is null && right is null)
            return lastKnown is { } known && known.Kg.Length == cells ? new ZeroLine(0, [.. known.Kg], new double[cells]) : null;
        if (left is null || right is null)
            return new ZeroLine(0, (left ?? right)!, new double[cells]);
        var origin = before!.Value.End;
        var from = Middle(NearEnd(stretch, before.Value)) - origin;
        var to = Middle(NearStart(stretch, after!.Value)) - origin;
        var slope = new double[cells];
        for (var cell = 0; cell < cells; cell++)
        {
            slope[cell] = (right[cell] - left[cell]) / (to - from);
            left[cell] -= slope[cell] * from;
        }

        return new ZeroLine(origin, left, slope, to - from);
    }

    /// <summary>The zero of a whole empty stretch.</summary>
    public static ZeroLevels LevelsOf(Stretch stretch, SampleRange empty)
    {
        var guard = Math.Min((int)(GuardSeconds * stretch.Hz), (empty.Count - 1) / 2);
        var inner = new SampleRange(empty.Start + guard, empty.End - guard);
        return new ZeroLevels(stretch.TimeAt(Middle(inner)), ImmutableArray.Create(Read(stretch, inner)));
    }

    private static double Middle(SampleRange range) => 0.5 * (range.Start + range.End - 1);

    private static SampleRange NearEnd(Stretch stretch, SampleRange empty)
    {
        var guard = Math.Min((int)(GuardSeconds * stretch.Hz), empty.Count / 3);
        var end = empty.End - guard;
        return new SampleRange(Math.Max(empty.Start, end - Math.Max(1, (int)(ReadSeconds * stretch.Hz))), end);
    }

    private static SampleRange NearStart(Stretch stretch, SampleRange empty)
    {
        var guard = Math.Min((int)(GuardSeconds * stretch.Hz), empty.Count / 3);
        var start = empty.Start + guard;
        return new SampleRange(start, Math.Min(empty.End, start + Math.Max(1, (int)(ReadSeconds * stretch.Hz))));
    }

    private static double[] Read(Stretch stretch, SampleRange range)
    {
        var levels = new double[stretch.SamplesKg.Length];
        for (var cell = 0; cell < levels.Length; cell++)
        {
            var sum = 0.0;
            foreach (var kg in stretch.SamplesKg[cell].AsSpan(range.Start, range.Count))
                sum += kg;
            levels[cell] = sum / range.Count;
        }

        return levels;
    }
}
