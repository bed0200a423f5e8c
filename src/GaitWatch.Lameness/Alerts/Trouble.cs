namespace GaitWatch.Lameness;

/// <summary>One open alert with what it is measured against: her normal from before onset, which stays as it is until the alert is closed.</summary>
internal sealed class Trouble
{
    /// <summary>Change of the drop, points of percent, that is worth telling anew.</summary>
    private const double TellingPoints = 5;

    /// <summary>At most one telling in so long; a worsening that changes the urgency does not wait.</summary>
    private static readonly TimeSpan _quiet = TimeSpan.FromHours(20);

    /// <summary>
    /// Back to normal: the 95 % interval of the drop ends below this, percent, and the drop itself below half of it, for
    /// <see cref="_normalFor"/> and <see cref="NormalPassages"/> passages; as she is followed, or as the passages of the last
    /// <see cref="MeanDays"/> days or so are on average, which tells better where single passages scatter widely.
    /// </summary>
    private const double NormalUpperPercent = 5;
    private const long NormalPassages = 4;
    private const double MeanDays = 7;
    private static readonly TimeSpan _normalFor = TimeSpan.FromHours(40);

    /// <summary>
    /// After so long, once somebody looked at the foot, her normal is taken as it is known: it will not be known better, and a flag from a cow's first
    /// weeks, on a normal hardly known, would stay for good.
    /// </summary>
    private static readonly TimeSpan _normalStands = TimeSpan.FromDays(60);

    private Average _average;
    private DateTimeOffset _toldAt;
    private double _toldPercent;
    private DateTimeOffset? _normalSince;
    private long _normalCount;

    public Trouble(Alert alert, Vector3 normal, Matrix3 normalCov, Vector3 design)
    {
        (Alert, Normal, NormalCov, Design) = (alert, normal, normalCov, design);
        (_toldAt, _toldPercent, RaisedPercent) = (alert.RaisedAt, alert.LoadDropPercent, alert.LoadDropPercent);
    }

    /// <summary>The alert as last told.</summary>
    public Alert Alert { get; private set; }

    /// <summary>Her normal from before onset, balances.</summary>
    public Vector3 Normal { get; }

    /// <summary>Its uncertainty.</summary>
    public Matrix3 NormalCov { get; }

    /// <summary>The way it moved her balances, at the size it was designed for.</summary>
    public Vector3 Design { get; }

    /// <summary>The drop with which it was raised, percent.</summary>
    public double RaisedPercent { get; private init; }

    /// <summary>The drop at her newest passage as a multiple of that with which it was raised.</summary>
    public double Standing { get; private set; } = 1;

    /// <summary>How far the leg lies below its normal.</summary>
    public LoadDrop DropOf(in BaselineFilter now) => LoadDrop.Between(Normal, now.Level, NormalCov + now.LevelCov, Alert.Leg);

    /// <summary>Takes a passage into the average of her newest.</summary>
    /// <param name="value">Her balances, common movement taken off.</param>
    /// <param name="spread">How passages scatter around her level, those of one day counted as the fewer they are.</param>
    /// <param name="at">When.</param>
    public void Take(Vector3 value, in Matrix3 spread, DateTimeOffset at)
    {
        var normal = Balances.FromVector(Normal).ToShares();
        var deviation = Math.Sqrt(spread.Quadratic(LoadDrop.LogShareGradient(normal, Alert.Leg)));
        var log = Math.Log(Balances.FromVector(value).ToShares()[Alert.Leg] / normal[Alert.Leg]);
        var kept = _average.Weight > 0 ? Math.Exp(-(at.UtcTicks - _average.Ticks) / (MeanDays * TimeSpan.TicksPerDay)) : 0;
        // One stumble does not move an average: what lies far from it is taken at the edge.
        if (_average.Weight > 3)
            log = Math.Clamp(log, _average.Log - (3 * deviation), _average.Log + (3 * deviation));
        var weight = (kept * _average.Weight) + 1;
        _average = new Average(
            _average.Log + ((log - _average.Log) / weight), weight, (kept * kept * _average.Squares) + (deviation * deviation), at.UtcTicks);
    }

    /// <summary>Looks at her present level after a passage; returns what is worth telling, or null.</summary>
    /// <param name="now">Her level.</param>
    /// <param name="at">When she crossed.</param>
    /// <param name="isLifted">
    /// Whether another leg went lame after this one: what that leg gives up comes onto this one, which proves nothing of it. Only that it is worse, in spite
    /// of that, is told meanwhile.
    /// </param>
    /// <param name="zone">The farm's time zone.</param>
    public AlertChange? Look(in BaselineFilter now, DateTimeOffset at, bool isLifted, TimeZoneInfo zone)
    {
        var drop = DropOf(now);
        Standing = Math.Clamp(drop.Percent / Math.Max(RaisedPercent, 1), 0, 9);
        if (isLifted)
            (_average, _normalSince, _normalCount) = (default, null, 0);
        else if (IsNormal(drop, at) is { } normal)
            return Close(at, AlertCloseReason.LoadNormal, normal, zone);
        var urgency = UrgencyRule.Of(drop.Percent, (at - Alert.OnsetAt).TotalDays);
        // An urgency once told goes down only when the alert closes: a foot that was bad on Monday wants looking at.
        urgency = (Urgency)Math.Min((int)urgency, (int)Alert.Urgency);
        var worse = urgency < Alert.Urgency || (drop.Lower > _toldPercent && drop.Percent > _toldPercent + (2 * TellingPoints));
        var moved = Math.Abs(drop.Percent - _toldPercent) >= TellingPoints && (_toldPercent < drop.Lower || _toldPercent > drop.Upper);
        if (!worse && (isLifted || !(moved && at - _toldAt >= _quiet)))
            return null;
        (_toldAt, _toldPercent) = (at, drop.Percent);
        return Tell(at, worse ? AlertChangeKind.Worsened : AlertChangeKind.Updated, Alert with { Urgency = urgency }, drop, zone);
    }

    /// <summary>The foot was looked at; null when that is known already.</summary>
    public AlertChange? Examine(in BaselineFilter now, DateTimeOffset at, TimeZoneInfo zone) => Alert.State == AlertState.Examined
        ? null
        : Tell(at, AlertChangeKind.Updated, Alert with { State = AlertState.Examined }, DropOf(now), zone);

    /// <summary>Closes the alert.</summary>
    public AlertChange Close(DateTimeOffset at, AlertCloseReason reason, LoadDrop drop, TimeZoneInfo zone) =>
        Tell(at, AlertChangeKind.Closed, Alert with { State = AlertState.Closed, ClosedAt = at, CloseReason = reason }, drop, zone);

    private LoadDrop? IsNormal(LoadDrop followed, DateTimeOffset at)
    {
        var averaged = Averaged(Alert.State == AlertState.Examined && at - Alert.RaisedAt >= _normalStands ? Matrix3.Zero : NormalCov);
        if (!IsNormal(followed) && !IsNormal(averaged))
        {
            (_normalSince, _normalCount) = (null, 0);
            return null;
        }

        _normalSince ??= at;
        _normalCount++;
        return at - _normalSince < _normalFor || _normalCount < NormalPassages ? null : IsNormal(averaged) ? averaged : followed;
    }

    private static bool IsNormal(LoadDrop drop) => drop.Upper <= NormalUpperPercent && drop.Percent <= NormalUpperPercent / 2;

    private LoadDrop Averaged(in Matrix3 normalCov)
    {
        var normal = Balances.FromVector(Normal).ToShares();
        var own = _average.Weight > 0 ? _average.Squares / (_average.Weight * _average.Weight) : 1;
        var deviation = 1.96 * Math.Sqrt(own + normalCov.Quadratic(LoadDrop.LogShareGradient(normal, Alert.Leg)));
        return new LoadDrop(
            100 * (1 - Math.Exp(_average.Log)), 100 * (1 - Math.Exp(_average.Log + deviation)), 100 * (1 - Math.Exp(_average.Log - deviation)),
            normal[Alert.Leg], normal[Alert.Leg] * Math.Exp(_average.Log));
    }

    /// <summary>Weighted mean of the logarithm of the leg's share over its normal.</summary>
    private readonly record struct Average(double Log, double Weight, double Squares, long Ticks);

    private AlertChange Tell(DateTimeOffset at, AlertChangeKind kind, Alert alert, LoadDrop drop, TimeZoneInfo zone)
    {
        Alert = alert with
        {
            LoadDropPercent = drop.Percent,
            LoadDropLowerPercent = drop.Lower,
            LoadDropUpperPercent = drop.Upper,
        };
        if (kind != AlertChangeKind.Closed)
            Alert = Alert with { Explanation = AlertText.Of(Alert, drop, zone) };
        return new AlertChange(at, kind, Alert);
    }

    public void Save(BinaryWriter writer)
    {
        AlertBytes.Save(writer, Alert);
        writer.Put(Normal);
        writer.Put(NormalCov);
        writer.Put(Design);
        writer.Write(RaisedPercent);
        writer.Write(Standing);
        writer.Write(_toldAt.UtcTicks);
        writer.Write(_toldPercent);
        writer.Write(_normalSince?.UtcTicks ?? -1);
        writer.Write(_normalCount);
        writer.Put(_average);
    }

    public static Trouble Load(BinaryReader reader)
    {
        var alert = AlertBytes.Load(reader);
        var trouble = new Trouble(alert, reader.Take<Vector3>(), reader.Take<Matrix3>(), reader.Take<Vector3>())
        {
            RaisedPercent = reader.ReadDouble(),
            Standing = reader.ReadDouble(),
            _toldAt = new DateTimeOffset(reader.ReadInt64(), TimeSpan.Zero),
            _toldPercent = reader.ReadDouble(),
        };
        var since = reader.ReadInt64();
        trouble._normalSince = since < 0 ? null : new DateTimeOffset(since, TimeSpan.Zero);
        trouble._normalCount = reader.ReadInt64();
        trouble._average = reader.Take<Average>();
        return trouble;
    }
}
