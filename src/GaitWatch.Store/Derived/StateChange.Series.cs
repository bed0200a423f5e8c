using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

// What InfluxDB has to be told of this change: what was touched is compared with what it was, once, when the change is
// committed. Passages are many, so their earlier state is kept in a table of this connection, not in memory; alerts,
// findings and recoveries are few, so what was last told of each is kept for good.
public sealed partial class StateChange
{
    private const int Slice = 2000;

    private static readonly string CreateBefore =
        $"""
        CREATE TEMP TABLE IF NOT EXISTS series_before AS SELECT '' AS "Key", {PassageColumns.NamesOf("p")}, {AssessmentColumns.NamesOf("a")}
        FROM passages p LEFT JOIN assessments a ON 0 WHERE 0
        """;

    private static readonly string KeepBefore =
        $"""
        INSERT OR IGNORE INTO temp.series_before SELECT @0, {PassageColumns.NamesOf("p")}, {AssessmentColumns.NamesOf("a")}
        FROM (SELECT 1) LEFT JOIN passages p ON p."Id" = @0 LEFT JOIN assessments a ON a."PassageId" = @0
        """;

    private static readonly string KeepAssessedFrom =
        $"""
        INSERT OR IGNORE INTO temp.series_before SELECT p."Id", {PassageColumns.NamesOf("p")}, {AssessmentColumns.NamesOf("a")}
        FROM assessments a JOIN passages p ON p."Id" = a."PassageId" WHERE a."At" >= @0
        """;

    private static readonly string Compare =
        $"""
        SELECT b.rowid, b.*, {PassageColumns.NamesOf("p")}, {AssessmentColumns.NamesOf("a")} FROM temp.series_before b
        LEFT JOIN passages p ON p."Id" = b."Key" LEFT JOIN assessments a ON a."PassageId" = b."Key" WHERE b.rowid > @0 ORDER BY b.rowid LIMIT {Slice}
        """;

    private readonly SeriesOutbox _series;
    private readonly OutboxWriter? _outbox;
    private readonly HashSet<string> _touchedAlerts = new(StringComparer.Ordinal);
    private readonly HashSet<string> _touchedRecoveries = new(StringComparer.Ordinal);
    private bool _keepsPassages;

    /// <summary>Forgets what was told of everything that is few, so that it is told again.</summary>
    internal void ForgetImages() => _writer.Execute("""DELETE FROM series_images""");

    /// <summary>Tells every alert, finding and recovery as they stand.</summary>
    internal async Task WriteAllEntitiesAsync()
    {
        var register = new RegisterAsOf(this, Mark("folded") ?? 0);
        foreach (var id in _writer.Query("""SELECT "Id" FROM alerts ORDER BY "RaisedAt" """, row => row.GetString(0)))
            SettleAlert(id, register);
        var findings = FindingLog.Of(await WritesUntilAsync(Mark("folded") ?? 0));
        foreach (var finding in findings.Findings)
            SettleFinding(finding.Id, findings, register);
        foreach (var id in _writer.Query("""SELECT "FindingId" FROM recoveries ORDER BY "TreatedAt" """, row => row.GetString(0)))
            SettleRecovery(id);
    }

    /// <summary>Tells the passages that began after an instant, a slice of them.</summary>
    /// <returns>The last one's beginning, and how many; null when there are no more.</returns>
    internal (long Until, int Passages)? WritePassagesAfter(long startedAt)
    {
        var rows = _writer.Query(
            $"""
            SELECT {PassageColumns.NamesOf("p")}, {AssessmentColumns.NamesOf("a")} FROM passages p LEFT JOIN assessments a ON a."PassageId" = p."Id"
            WHERE p."StartedAt" > @0 AND p."StartedAt" <= COALESCE(
                (SELECT "StartedAt" FROM passages WHERE "StartedAt" > @0 ORDER BY "StartedAt" LIMIT 1 OFFSET {Slice - 1}), 9223372036854775807)
            ORDER BY p."StartedAt"
            """,
            row => (At: row.GetInt64(5), Points: PointsAt(row, 0)), startedAt);
        foreach (var row in rows)
            _outbox!.Add(row.Points);
        return rows.Count == 0 ? null : (rows[^1].At, rows.Count);
    }

    /// <summary>Tells what cells read when empty in (after, until].</summary>
    internal void WriteZerosBetween(long after, long until)
    {
        var rows = _writer.Query(
            """SELECT "Platform", "At", "Kg" FROM zeros WHERE "At" > @0 AND "At" <= @1 ORDER BY "At" """,
            row => PlatformPoints.OfZero(_series.Options, row.GetString(0), row.GetInt64(1), StoreJson.Read<double[]>(row.GetString(2))), after, until);
        foreach (var points in rows)
            _outbox!.Add(points);
    }

    internal void WriteDeletion(SeriesDeletion deletion) => _outbox!.Add(deletion);

    internal long? ReadMark(string name) => Mark(name);

    internal void WriteMark(string name, long value) => SetMark(name, value);

    private void TouchPassage(string id)
    {
        if (_outbox is null)
            return;
        KeepPassages();
        _writer.Execute(KeepBefore, id);
    }

    private void TouchAssessedFrom(long at)
    {
        if (_outbox is null)
            return;
        KeepPassages();
        _writer.Execute(KeepAssessedFrom, at);
    }

    private void TouchAlert(string id)
    {
        if (_outbox is not null)
            _touchedAlerts.Add(id);
    }

    private void TouchRecovery(string findingId)
    {
        if (_outbox is not null)
            _touchedRecoveries.Add(findingId);
    }

    private void KeepPassages()
    {
        if (_keepsPassages)
            return;
        _writer.Execute(CreateBefore);
        _writer.Execute("""CREATE UNIQUE INDEX IF NOT EXISTS temp.series_before_key ON series_before("Key")""");
        _keepsPassages = true;
    }

    private void SettleSeries(long folded)
    {
        if (_keepsPassages)
            SettlePassages();
        var before = Mark("folded") ?? 0;
        var register = new RegisterAsOf(this, folded);
        if (folded > before)
            SettleWrites(before, folded, register);
        foreach (var id in _touchedAlerts)
            SettleAlert(id, register);
        foreach (var id in _touchedRecoveries)
            SettleRecovery(id);
        _touchedAlerts.Clear();
        _touchedRecoveries.Clear();
    }

    private void SettlePassages()
    {
        for (long after = 0; ;)
        {
            var rows = _writer.Query(
                Compare,
                row => (RowId: row.GetInt64(0), Before: PointsAt(row, 2), Now: PointsAt(row, 2 + PassageColumns.Count + AssessmentColumns.Count)), after);
            if (rows.Count == 0)
                break;
            after = rows[^1].RowId;
            foreach (var row in rows)
                _outbox!.Add(PointDiff.Of(row.Before, row.Now));
        }

        _writer.Execute("DELETE FROM temp.series_before");
    }

    // The passage and what it told, from their columns in a row; nothing when there was none.
    private IReadOnlyList<SeriesPoint> PointsAt(System.Data.Common.DbDataReader row, int first)
    {
        if (row.IsDBNull(first))
            return [];
        var told = first + PassageColumns.Count;
        return PassagePoints.Of(
            _series.Farm, PassageColumns.ReadFrom(row, first), PassageColumns.Cow(row, first), row.IsDBNull(told) ? null : AssessmentColumns.ReadFrom(row, told));
    }

    private List<SeriesPoint> ZeroPoints(string platform, long bucket) => _outbox is null
        ? []
        :
        [
            .. _writer.Query(
                """SELECT "At", "Kg" FROM zeros WHERE "Platform" = @0 AND "Bucket" = @1""",
                row => PlatformPoints.OfZero(_series.Options, platform, row.GetInt64(0), StoreJson.Read<double[]>(row.GetString(1))), platform, bucket).SelectMany(points => points),
        ];

    // What people entered shows in findings and, as the pen of a cow, in everything told of her.
    private void SettleWrites(long after, long until, RegisterAsOf register)
    {
        var writes = _writer.Query(
            """SELECT "Body" FROM writes WHERE "Seq" > @0 AND "Seq" <= @1""", row => StoreJson.Read<FarmWrite>(row.GetString(0)), after, until);
        var entered = writes.Select(write => write switch
        {
            FindingWrite first => first.Finding.Id,
            FindingCorrectionWrite correction => correction.Finding.Id,
            FindingWithdrawalWrite withdrawal => withdrawal.Finding.Id,
            _ => null,
        }).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var registered = writes.OfType<RegisterWrite>().Select(write => write.Registration.Cow).ToHashSet(StringComparer.Ordinal);
        if (entered.Count == 0 && registered.Count == 0)
            return;

        var findings = FindingLog.Of(register.Writes);
        foreach (var finding in findings.Findings.Where(finding => entered.Contains(finding.Id) || registered.Contains(finding.Cow)))
            SettleFinding(finding.Id, findings, register);
        foreach (var cow in registered)
        {
            foreach (var id in _writer.Query("""SELECT "Id" FROM alerts WHERE "Cow" = @0""", row => row.GetString(0), cow))
                _touchedAlerts.Add(id);
        }
    }

    private void SettleAlert(string id, RegisterAsOf register)
    {
        var steps = _writer.Query(
            """SELECT "At", "Kind", "Body" FROM alert_steps WHERE "AlertId" = @0 ORDER BY "Number" """,
            row => new AlertChange(row.GetInt64(0).FromMs(), (AlertChangeKind)row.GetInt32(1), StoreJson.Read<Alert>(row.GetString(2))), id);
        SettleEntity($"alert/{id}", steps is [var first, ..] ? AlertPoints.Of(_series.Farm, steps, register.Pen(first.Alert.Cow, first.Alert.RaisedAt)) : []);
    }

    private void SettleFinding(string id, FindingLog findings, RegisterAsOf register) => SettleEntity(
        $"finding/{id}", findings.Find(id)?.Current is { } finding ? FindingPoints.Of(_series.Farm, finding, register.Pen(finding.Cow, finding.At)) : []);

    private void SettleRecovery(string findingId)
    {
        var rows = _writer.Query(
            """SELECT "Body", "Days" FROM recoveries WHERE "FindingId" = @0""", row => RecoveryColumns.Read(row.GetString(0), row.GetString(1)), findingId);
        SettleEntity($"recovery/{findingId}", rows is [var recovery] ? RecoveryPoints.Of(_series.Farm, recovery, _series.Options.Calendar) : []);
    }

    private void SettleEntity(string entity, IReadOnlyList<SeriesPoint> points)
    {
        var image = _writer.Query("""SELECT "Points" FROM series_images WHERE "Entity" = @0""", row => row.GetString(0), entity);
        var diff = PointDiff.Of(image is [var kept] ? StoreJson.Read<SeriesPoint[]>(kept) : [], points);
        if (diff.Deletions.Count == 0 && diff.Points.Count == 0)
            return;
        _outbox!.Add(diff);
        if (points.Count == 0)
            _writer.Execute("""DELETE FROM series_images WHERE "Entity" = @0""", entity);
        else
            _writer.Execute("""INSERT OR REPLACE INTO series_images("Entity", "Points") VALUES (@0, @1)""", entity, StoreJson.Write(points));
    }

    /// <summary>What people entered up to a sequence number, read when it is first asked for.</summary>
    private sealed class RegisterAsOf(StateChange change, long folded)
    {
        private HerdRegister? _register;

        public IReadOnlyList<FarmWrite> Writes => field ??= [.. change._writer.Query(
            """SELECT "Body" FROM writes WHERE "Seq" <= @0 ORDER BY "Seq" """, row => StoreJson.Read<FarmWrite>(row.GetString(0)), folded)];

        public string? Pen(string cow, DateTimeOffset at)
        {
            _register ??= new HerdRegister(Writes.OfType<RegisterWrite>().Select(write => write.Registration));
            return _register.At(cow, at)?.Pen;
        }
    }
}
