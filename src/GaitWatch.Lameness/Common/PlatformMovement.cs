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

    /// <summary>Residuals kept of a session; with more the oldest gives way.</summary>
    private const int Kept = 64;

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

    private readonly List<Residual> _residuals = new(Kept);
    private readonly List<Session> _past = new(Remembered);
    private Vector3 _level;
    private Vector3 _levelVariance;
    private Vector3 _sessionVariance = new(FirstSessionVariance, FirstSessionVariance, FirstSessionVariance);
    private Vector3 _mean;
    private Vector3 _meanVariance;
    private long _startTicks;
    private long _lastTicks;
    private long _number;
    private int _next;
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
            var (x, xv) = SessionMean.Shrunk(_residuals, r => (r.Value.X, r.Variance.X), prior.X);
            var (y, yv) = SessionMean.Shrunk(_residuals, r => (r.Value.Y, r.Variance.Y), prior.Y);
            var (z, zv) = SessionMean.Shrunk(_residuals, r => (r.Value.Z, r.Variance.Z), prior.Z);
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
        _residuals.Clear();
        (_next, _crossed, _trouble) = (0, 0, false);
        // Of the last session's unrest half is expected again: floors stay wet for a day, not for a week.
        _unrest = Math.Sqrt(_unrest);
        (_mean, _meanVariance) = (Vector3.Zero, new Vector3(1e6, 1e6, 1e6));
    }

    /// <summary>Takes in a sound cow's passage less what she alone explains.</summary>
    /// <param name="residual">Balances less her own expected balances.</param>
    /// <param name="spread">Covariance of such a residual.</param>
    /// <param name="distance">Her squared distance from what was expected of her, over its mean: 1 as expected, what lies far out counted little.</param>
    public void Add(Vector3 residual, in Matrix3 spread, double distance)
    {
        _current = null;
        _crossed++;
        _unrest = Math.Clamp(_unrest * (1 + ((distance - 1) / (UnrestPrior + Math.Min(_crossed, Kept)))), LeastUnrest, MostUnrest);
        var own = new Residual(residual - _level, spread.DiagonalVector);
        if (_residuals.Count < Kept)
            _residuals.Add(own);
        else
            _residuals[_next] = own;
        _next = (_next + 1) % Kept;
        var count = _residuals.Count;
        if (count < Recent)
            return;
        var ((x, xv), (y, yv), (z, zv)) = (
            SessionMean.Of(_residuals, r => (r.Value.X, r.Variance.X)), SessionMean.Of(_residuals, r => (r.Value.Y, r.Variance.Y)), SessionMean.Of(_residuals, r => (r.Value.Z, r.Variance.Z)));
        (_mean, _meanVariance) = (new Vector3(x, y, z), new Vector3(xv, yv, zv));
        if (_trouble)
            return;
        var recent = Median(Recent, count < Kept ? count - Recent : _next - Recent);
        _trouble = IsMore(recent, Math.PI / 2 / Recent * (count * _meanVariance)) || IsMore(_mean, _meanVariance);
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
    public Vector3 Told => _crossed == 0 ? _level : _trouble && _residuals.Count >= Recent
        ? _level + Median(Recent, _residuals.Count < Kept ? _residuals.Count - Recent : _next - Recent)
        : Current.Movement;

    private void Close()
    {
        _past.Add(Current);
        if (_past.Count > Remembered)
            _past.RemoveAt(0);
        if (_residuals.Count < Recent)
            return;
        _troubledSessions = _trouble ? _troubledSessions + 1 : 0;
        if (_trouble && _troubledSessions < SessionsToAccept)
            return;
        if (_trouble)
            (_levelVariance, _troubledSessions) = (new Vector3(1, 1, 1), 0);
        Follow(_mean.X, _meanVariance.X, _level.X, _levelVariance.X, _sessionVariance.X, out var x, out var xv, out var xs);
        Follow(_mean.Y, _meanVariance.Y, _level.Y, _levelVariance.Y, _sessionVariance.Y, out var y, out var yv, out var ys);
        Follow(_mean.Z, _meanVariance.Z, _level.Z, _levelVariance.Z, _sessionVariance.Z, out var z, out var zv, out var zs);
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

    /// <summary>Median of each balance over <paramref name="count"/> residuals from a place in the ring on.</summary>
    private Vector3 Median(int count, int from)
    {
        Span<double> x = stackalloc double[Kept];
        Span<double> y = stackalloc double[Kept];
        Span<double> z = stackalloc double[Kept];
        for (var i = 0; i < count; i++)
        {
            var r = _residuals[(from + i + Kept) % Kept].Value;
            (x[i], y[i], z[i]) = (r.X, r.Y, r.Z);
        }

        return new Vector3(Middle(x[..count]), Middle(y[..count]), Middle(z[..count]));
    }

    private static double Middle(Span<double> values)
    {
        values.Sort();
        var half = values.Length / 2;
        return values.Length % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
    }

    public void Save(BinaryWriter writer)
    {
        writer.Put(_level);
        writer.Put(_levelVariance);
        writer.Put(_sessionVariance);
        writer.Put(_mean);
        writer.Put(_meanVariance);
        writer.Write(_startTicks);
        writer.Write(_lastTicks);
        writer.Write(_number);
        writer.Write(_next);
        writer.Write(_crossed);
        writer.Write(_troubledSessions);
        writer.Write(_trouble);
        writer.Write(_unrest);
        writer.PutAll(_residuals);
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
            _mean = reader.Take<Vector3>(),
            _meanVariance = reader.Take<Vector3>(),
            _startTicks = reader.ReadInt64(),
            _lastTicks = reader.ReadInt64(),
            _number = reader.ReadInt64(),
            _next = reader.ReadInt32(),
            _crossed = reader.ReadInt32(),
            _troubledSessions = reader.ReadInt32(),
            _trouble = reader.ReadBoolean(),
            _unrest = reader.ReadDouble(),
        };
        reader.TakeAll(p._residuals, Kept);
        reader.TakeAll(p._past, Remembered);
        p.Newest = Crossed.Load(reader);
        return p;
    }
}
