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
    /// <see cref="_normalFor"/> and <see cref="NormalPassages"/> passages.
    /// </summary>
    private const double NormalUpperPercent = 5;
    private const long NormalPassages = 4;
    private static readonly TimeSpan _normalFor = TimeSpan.FromHours(40);

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
    public LoadDrop DropOf(in BaselineFilter now) => LoadDrop.Between(Normal, now.Mean, NormalCov + now.MeanCov, Alert.Leg);

    /// <summary>Looks at her present level after a passage; returns what is worth telling, or null.</summary>
    public AlertChange? Look(in BaselineFilter now, DateTimeOffset at, TimeZoneInfo zone)
    {
        var drop = DropOf(now);
        Standing = Math.Clamp(drop.Percent / Math.Max(RaisedPercent, 1), 0, 9);
        if (IsNormal(drop, at))
            return Close(at, AlertCloseReason.LoadNormal, drop, zone);
        var urgency = UrgencyRule.Of(drop.Percent, (at - Alert.OnsetAt).TotalDays);
        // An urgency once told goes down only when the alert closes: a foot that was bad on Monday wants looking at.
        urgency = (Urgency)Math.Min((int)urgency, (int)Alert.Urgency);
        var worse = urgency < Alert.Urgency || (drop.Lower > _toldPercent && drop.Percent > _toldPercent + (2 * TellingPoints));
        var moved = Math.Abs(drop.Percent - _toldPercent) >= TellingPoints && (_toldPercent < drop.Lower || _toldPercent > drop.Upper);
        if (!worse && !(moved && at - _toldAt >= _quiet))
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

    private bool IsNormal(LoadDrop drop, DateTimeOffset at)
    {
        if (drop.Upper > NormalUpperPercent || drop.Percent > NormalUpperPercent / 2)
        {
            (_normalSince, _normalCount) = (null, 0);
            return false;
        }

        _normalSince ??= at;
        _normalCount++;
        return at - _normalSince >= _normalFor && _normalCount >= NormalPassages;
    }

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
        return trouble;
    }
}
