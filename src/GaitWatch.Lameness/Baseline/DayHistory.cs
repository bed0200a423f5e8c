namespace GaitWatch.Lameness;

/// <summary>
/// A sound cow's newest passage and the first of each of her last days, baseline not taken off: their differences at several distances teach the
/// herd's noise.
/// </summary>
internal sealed class DayHistory
{
    private const int Days = 65;
    private readonly int[] _day = new int[Days];
    private readonly SmallVector[] _value = new SmallVector[Days];
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
        var scale = 1 / Math.Sqrt(noiseLevel);
        if (day == _lastDay)
        {
            herd.Noise.Add(0, scale * (value - _last), herd.TailsDof);
        }
        else
        {
            for (var i = 1; i < HerdNoise.Lags.Length; i++)
            {
                var then = day - HerdNoise.Lags[i];
                if (then >= 0 && _day[then % Days] == then)
                    herd.Noise.Add(i, scale * (value - _value[then % Days].Wide), herd.TailsDof);
            }

            (_day[day % Days], _value[day % Days]) = ((int)day, SmallVector.Of(value));
        }

        (_lastDay, _last) = (day, value);
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
        history._lastDay = reader.ReadInt64();
        history._last = reader.Take<Vector3>();
        return history;
    }
}
