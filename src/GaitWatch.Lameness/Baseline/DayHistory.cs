namespace GaitWatch.Lameness;

/// <summary>
/// A sound cow's newest passage, the first of each of her last days and each day's mean, baseline not taken off. Differences of the first at several distances teach the
/// herd's noise; the means tell when a change began.
/// </summary>
internal sealed class DayHistory
{
    private const int Days = 65;
    private readonly int[] _day = new int[Days];
    private readonly SmallVector[] _value = new SmallVector[Days];
    private readonly SmallVector[] _mean = new SmallVector[Days];
    private readonly byte[] _count = new byte[Days];
    private long _lastDay = -1;
    private Vector3 _last;

    public DayHistory() => Array.Fill(_day, -1);

    /// <summary>Balances to a ten-thousandth: far finer than any passage, in a quarter of the memory.</summary>
    private readonly record struct SmallVector(Half X, Half Y, Half Z)
    {
        public static SmallVector Of(Vector3 v) => new((Half)v.X, (Half)v.Y, (Half)v.Z);

        public Vector3 Wide => new((double)X, (double)Y, (double)Z);
    }

    /// <summary>Takes in a passage, common movement taken off, and hands the herd the differences it makes.</summary>
    public void Add(HerdModel herd, Vector3 value, long day, double noiseLevel)
    {
        var place = day % Days;
        var scale = 1 / Math.Sqrt(noiseLevel);
        if (day == _lastDay)
        {
            herd.Noise.Add(0, scale * (value - _last), herd.TailsDof);
            _count[place]++;
            var mean = _mean[place].Wide;
            _mean[place] = SmallVector.Of(mean + (1.0 / _count[place] * (value - mean)));
        }
        else
        {
            for (var i = 1; i < HerdNoise.Lags.Length; i++)
            {
                var then = day - HerdNoise.Lags[i];
                if (then >= 0 && _day[then % Days] == then)
                    herd.Noise.Add(i, scale * (value - _value[then % Days].Wide), herd.TailsDof);
            }

            (_day[place], _value[place], _mean[place], _count[place]) = ((int)day, SmallVector.Of(value), SmallVector.Of(value), 1);
        }

        (_lastDay, _last) = (day, value);
    }

    /// <summary>The days' means, oldest first, a passage that is not among them taken in.</summary>
    public List<DayMean> MeansWith(Vector3 value, long day)
    {
        var means = new List<DayMean>(Days + 1);
        for (var then = day - Days + 1; then < day; then++)
        {
            if (_day[then % Days] == then)
                means.Add(new DayMean(then, _mean[then % Days].Wide, _count[then % Days]));
        }

        var (mean, count) = _day[day % Days] == day ? (_mean[day % Days].Wide, _count[day % Days]) : (Vector3.Zero, 0);
        means.Add(new DayMean(day, mean + (1.0 / (count + 1) * (value - mean)), count + 1));
        return means;
    }

    /// <summary>Forgets all: what comes next is not comparable with what was.</summary>
    public void Clear()
    {
        Array.Fill(_day, -1);
        _lastDay = -1;
    }

    public void Save(BinaryWriter writer)
    {
        foreach (var d in _day)
            writer.Write(d);
        foreach (var v in _value)
            writer.Put(v);
        foreach (var m in _mean)
            writer.Put(m);
        writer.Write(_count);
        writer.Write(_lastDay);
        writer.Put(_last);
    }

    public static DayHistory Load(BinaryReader reader)
    {
        var history = new DayHistory();
        for (var i = 0; i < Days; i++)
            history._day[i] = reader.ReadInt32();
        for (var i = 0; i < Days; i++)
            history._value[i] = reader.Take<SmallVector>();
        for (var i = 0; i < Days; i++)
            history._mean[i] = reader.Take<SmallVector>();
        reader.BaseStream.ReadExactly(history._count);
        history._lastDay = reader.ReadInt64();
        history._last = reader.Take<Vector3>();
        return history;
    }
}

/// <summary>A cow's day.</summary>
/// <param name="Day">Farm day, days since 1 January of year 1.</param>
/// <param name="Mean">Mean of her passages, balances, the common movement taken off.</param>
/// <param name="Count">How many there were.</param>
internal readonly record struct DayMean(long Day, Vector3 Mean, int Count);
