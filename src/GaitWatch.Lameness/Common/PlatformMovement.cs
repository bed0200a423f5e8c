namespace GaitWatch.Lameness;

/// <summary>
/// What moves everybody on one platform: slow drift of its level, and what one session has in common (floor, temperature, mood). A cow
/// is not lame because the floor is wet. The session's part is a robust mean of the cows' residuals (<see cref="SessionMean"/>), shrunk towards none while few have crossed.
/// </summary>
/// <remarks>
/// Drift of the level is a scalar Kalman filter for each balance, fed once a session. Nothing looks ahead: a passage is judged by those before it, and judged again
/// by its whole session when the same cow comes next.
/// </remarks>
internal sealed class PlatformMovement
{
    /// <summary>A longer pause between crossings starts a session.</summary>
    private static readonly long _pauseTicks = TimeSpan.FromMinutes(45).Ticks;

    /// <summary>So does a session that has lasted this long: the floor dries, the platform warms.</summary>
    private static readonly long _longestTicks = TimeSpan.FromHours(5).Ticks;

    /// <summary>Sudden faults are looked for in the last so many crossings.</summary>
    private const int Recent = 8;

    /// <summary>Sessions remembered, for cows whose last passage is judged again.</summary>
    private const int Remembered = 48;

    /// <summary>Standard errors and balance units beyond which a movement is more than floor and mood.</summary>
    private const double TroubleErrors = 5;
    private const double TroubleSize = 0.03;

    /// <summary>Sessions in trouble after which a steady new level is taken as the platform's own.</summary>
    private const int SessionsToAccept = 14;

    /// <summary>Variance a day by which a platform's level drifts (half a per cent of a balance).</summary>
    private const double LevelDriftPerDay = 0.005 * 0.005;

    /// <summary>Variance of a session's part before any is seen (one per cent of a balance), and the least believed.</summary>
    private const double FirstSessionVariance = 0.01 * 0.01;
    private const double LeastSessionVariance = 0.002 * 0.002;

    /// <summary>Crossings that the expected unrest of a session counts for, and how far unrest is believed.</summary>
    private const double UnrestPrior = 12;
    private const double LeastUnrest = 0.6;
    private const double MostUnrest = 5;

    private SessionResiduals _x = new();
    private SessionResiduals _y = new();
    private SessionResiduals _z = new();
    private readonly List<Session> _past = new(Remembered);
    private Vector3 _level;
    private Vector3 _levelVariance;
    private Vector3 _sessionVariance = new(FirstSessionVariance, FirstSessionVariance, FirstSessionVariance);
    private long _startTicks;
    private long _lastTicks;
    private long _number;
    private int _crossed;
    private int _troubledSessions;
    private bool _trouble;
    private double _unrest = 1;
    private Session? _current;

    /// <param name="isFirst">The herd's first platform is the measure of all: its level starts as known, another's has to be learnt.</param>
    public PlatformMovement(bool isFirst)
    {
        var unknown = isFirst ? 0 : 0.15 * 0.15;
        _levelVariance = new Vector3(unknown, unknown, unknown);
    }

    /// <summary>Cows that have crossed in it.</summary>
    public int Cows => _crossed;

    /// <summary>When the platform was last crossed, UTC ticks.</summary>
    public long LastTicks => _lastTicks;

    /// <summary>The newest crossing; null before the first.</summary>
    public Crossed? Newest { get; set; }

    /// <summary>Whether the platform lies.</summary>
    public bool IsTrouble => _trouble;

    /// <summary>The common movement as it stands.</summary>
    public Session Current => _current ??= Now;

    private Session Now
    {
        get
        {
            if (_number == 0)
                return new Session(0, Vector3.Zero, Matrix3.Zero, 1, false);
            var prior = _trouble ? new Vector3(1, 1, 1) : _sessionVariance;
            var ((x, xv), (y, yv), (z, zv)) = (_x.Shrunk(prior.X), _y.Shrunk(prior.Y), _z.Shrunk(prior.Z));
            var cov = Matrix3.Diagonal(_levelVariance.X + xv, _levelVariance.Y + yv, _levelVariance.Z + zv);
            return new Session(_number, _level + new Vector3(x, y, z), cov, _unrest, _trouble);
        }
    }

    /// <summary>Tells the platform that a cow is about to be judged; starts a session when the last is over.</summary>
    public void Enter(long ticks)
    {
        if (_number > 0 && ticks - _lastTicks <= _pauseTicks && ticks - _startTicks <= _longestTicks)
        {
            _lastTicks = ticks;
            return;
        }

        if (_number > 0)
            Close();
        _current = null;
        var days = _number == 0 ? 0 : Math.Min((ticks - _lastTicks) / (double)TimeSpan.TicksPerDay, 30);
        var drift = LevelDriftPerDay * days;
        _levelVariance += new Vector3(drift, drift, drift);
        (_startTicks, _lastTicks) = (ticks, ticks);
        _number++;
        (_crossed, _trouble) = (0, false);
        _x.Clear();
        _y.Clear();
        _z.Clear();
        // Of the last session's unrest half is expected again: floors stay wet for a day, not for a week.
        _unrest = Math.Sqrt(_unrest);
    }

    /// <summary>Takes in a sound cow's passage less what she alone explains.</summary>
    /// <param name="residual">Balances less her own expected balances.</param>
    /// <param name="spread">Covariance of such a residual.</param>
    /// <param name="usual">The same of a usual cow of the herd.</param>
    /// <param name="distance">Her squared distance from what was expected of her, over its mean: 1 as expected, what lies far out counted little.</param>
    public void Add(Vector3 residual, in Matrix3 spread, in Matrix3 usual, double distance)
    {
        _current = null;
        _crossed++;
        _unrest = Math.Clamp(_unrest * (1 + ((distance - 1) / (UnrestPrior + Math.Min(_crossed, SessionResiduals.Kept)))), LeastUnrest, MostUnrest);
        var own = residual - _level;
        _x.Add(own.X, spread.Xx, usual.Xx);
        _y.Add(own.Y, spread.Yy, usual.Yy);
        _z.Add(own.Z, spread.Zz, usual.Zz);
        if (_trouble || _crossed < Recent)
            return;
        // A median of few, by what a usual cow's scatter makes of it.
        const double few = Math.PI / 2 / Recent;
        _trouble = IsMore(new Vector3(_x.Recent(Recent), _y.Recent(Recent), _z.Recent(Recent)), few * usual.DiagonalVector)
            || IsMore(new Vector3(_x.Mean, _y.Mean, _z.Mean), new Vector3(_x.Variance, _y.Variance, _z.Variance));
    }

    /// <summary>The session of a number as it is known now; null when it is too long ago.</summary>
    public Session? Find(long number)
    {
        if (number == _number)
            return Current;
        var back = _past.Count - (int)Math.Min(_number - number, int.MaxValue);
        return back >= 0 && back < _past.Count ? _past[back] : null;
    }

    /// <summary>Median of the recent crossings where there are enough, of the session else: what a person is told.</summary>
    public Vector3 Told => _crossed == 0 ? _level : _trouble && _crossed >= Recent
        ? _level + new Vector3(_x.Recent(Recent), _y.Recent(Recent), _z.Recent(Recent))
        : Current.Movement;

    private void Close()
    {
        _past.Add(Current);
        if (_past.Count > Remembered)
            _past.RemoveAt(0);
        if (_crossed < Recent)
            return;
        _troubledSessions = _trouble ? _troubledSessions + 1 : 0;
        if (_trouble && _troubledSessions < SessionsToAccept)
            return;
        if (_trouble)
            (_levelVariance, _troubledSessions) = (new Vector3(1, 1, 1), 0);
        Follow(_x.Mean, _x.Variance, _level.X, _levelVariance.X, _sessionVariance.X, out var x, out var xv, out var xs);
        Follow(_y.Mean, _y.Variance, _level.Y, _levelVariance.Y, _sessionVariance.Y, out var y, out var yv, out var ys);
        Follow(_z.Mean, _z.Variance, _level.Z, _levelVariance.Z, _sessionVariance.Z, out var z, out var zv, out var zs);
        (_level, _levelVariance, _sessionVariance) = (new Vector3(x, y, z), new Vector3(xv, yv, zv), new Vector3(xs, ys, zs));
    }

    private static void Follow(
        double median, double medianVariance, double level, double levelVariance, double sessionVariance,
        out double newLevel, out double newLevelVariance, out double newSessionVariance)
    {
        const double learning = 1.0 / 40;
        var all = levelVariance + sessionVariance + medianVariance;
        var gain = levelVariance / all;
        newLevel = level + (gain * median);
        newLevelVariance = (1 - gain) * levelVariance;
        var seen = Math.Min(median * median, 9 * all) - medianVariance - levelVariance;
        newSessionVariance = Math.Max(sessionVariance + (learning * (seen - sessionVariance)), LeastSessionVariance);
    }

    private bool IsMore(Vector3 median, Vector3 variance) =>
        IsMore(median.X, variance.X + _sessionVariance.X + _levelVariance.X)
        || IsMore(median.Y, variance.Y + _sessionVariance.Y + _levelVariance.Y)
        || IsMore(median.Z, variance.Z + _sessionVariance.Z + _levelVariance.Z);

    private static bool IsMore(double median, double variance) =>
        Math.Abs(median) > TroubleSize && median * median > TroubleErrors * TroubleErrors * variance;

    public void Save(BinaryWriter writer)
    {
        writer.Put(_level);
        writer.Put(_levelVariance);
        writer.Put(_sessionVariance);
        writer.Write(_startTicks);
        writer.Write(_lastTicks);
        writer.Write(_number);
        writer.Write(_crossed);
        writer.Write(_troubledSessions);
        writer.Write(_trouble);
        writer.Write(_unrest);
        _x.Save(writer);
        _y.Save(writer);
        _z.Save(writer);
        writer.PutAll(_past);
        Crossed.Save(writer, Newest);
    }

    public static PlatformMovement Load(BinaryReader reader)
    {
        var p = new PlatformMovement(true)
        {
            _level = reader.Take<Vector3>(),
            _levelVariance = reader.Take<Vector3>(),
            _sessionVariance = reader.Take<Vector3>(),
            _startTicks = reader.ReadInt64(),
            _lastTicks = reader.ReadInt64(),
            _number = reader.ReadInt64(),
            _crossed = reader.ReadInt32(),
            _troubledSessions = reader.ReadInt32(),
            _trouble = reader.ReadBoolean(),
            _unrest = reader.ReadDouble(),
        };
        (p._x, p._y, p._z) = (SessionResiduals.Load(reader), SessionResiduals.Load(reader), SessionResiduals.Load(reader));
        reader.TakeAll(p._past, Remembered);
        p.Newest = Crossed.Load(reader);
        return p;
    }
}
