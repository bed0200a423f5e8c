using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

// Alerts, their steps, and what becomes of them when late data fold the past again.
public sealed partial class StateChange
{
    private static readonly TimeSpan SuccessorWithin = TimeSpan.FromDays(14);

    // Alerts as they stood before the past was folded again: what SettleRevisionAsync compares with.
    private readonly Dictionary<string, Forgotten> _before = new(StringComparer.Ordinal);

    /// <summary>Removes every checkpoint, assessment and alert step at or after an instant: what follows is folded again.</summary>
    /// <returns>The cows of whom something was removed.</returns>
    public Task<IReadOnlyList<string>> ForgetFromAsync(DateTimeOffset from)
    {
        var at = from.ToMs();
        TouchAssessedFrom(at);
        var cows = _writer.Query("""SELECT DISTINCT "Cow" FROM assessments WHERE "At" >= @0""", row => row.GetString(0), at);
        _writer.Execute("""DELETE FROM checkpoints WHERE "Head" >= @0""", at);
        _writer.Execute("""DELETE FROM assessments WHERE "At" >= @0""", at);
        var touched = _writer.Query(
            """SELECT "Id", "Body", "RevisedAt" FROM alerts WHERE "Id" IN (SELECT "AlertId" FROM alert_steps WHERE "At" >= @0)""",
            row => (Id: row.GetString(0), Body: row.GetString(1), RevisedAt: row.IsDBNull(2) ? (long?)null : row.GetInt64(2)), at);
        var steps = touched.ToDictionary(alert => alert.Id, alert => StepsFrom(alert.Id, at), StringComparer.Ordinal);
        _writer.Execute("""DELETE FROM alert_steps WHERE "At" >= @0""", at);
        foreach (var (id, body, revised) in touched)
        {
            TouchAlert(id);
            _before.TryAdd(id, new Forgotten(body, revised, at, steps[id]));
            cows.Add(StoreJson.Read<Alert>(body).Cow);
            var left = _writer.Query(
                """SELECT "Body" FROM alert_steps WHERE "AlertId" = @0 ORDER BY "Number" DESC LIMIT 1""", row => row.GetString(0), id);
            if (left is [var earlier])
                WriteAlert(StoreJson.Read<Alert>(earlier), earlier);
            else
                _writer.Execute("""DELETE FROM alerts WHERE "Id" = @0""", id);
        }

        return Task.FromResult<IReadOnlyList<string>>([.. cows.Distinct(StringComparer.Ordinal)]);
    }

    /// <summary>Appends steps of alerts' lives, in order.</summary>
    public Task WriteAlertStepsAsync(IReadOnlyCollection<AlertChange> changes)
    {
        foreach (var change in changes)
        {
            var body = StoreJson.Write(change.Alert);
            _writer.Execute(
                """
                INSERT INTO alert_steps("AlertId", "Number", "At", "Kind", "Body")
                VALUES (@0, (SELECT COALESCE(MAX("Number"), 0) + 1 FROM alert_steps WHERE "AlertId" = @0), @1, @2, @3)
                """,
                change.Alert.Id, change.At.ToMs(), (int)change.Kind, body);
            WriteAlert(change.Alert, body);
        }

        return Task.CompletedTask;
    }

    /// <summary>
    /// Ends a fold of the past: alerts that were there before <see cref="ForgetFromAsync"/> and are no more redirect to their
    /// successor (same cow, pattern and leg, raised within 14 days) or are known as withdrawn; those that changed are marked revised.
    /// </summary>
    /// <returns>Ids of alerts that are no more.</returns>
    public Task<ImmutableArray<string>> SettleRevisionAsync(DateTimeOffset revisedAt)
    {
        var gone = ImmutableArray.CreateBuilder<string>();
        foreach (var (id, was) in _before)
        {
            var now = _writer.Query("""SELECT "Id" FROM alerts WHERE "Id" = @0""", row => row.GetString(0), id);
            if (now.Count > 0)
            {
                // A step that is new says what came since, not that what was said before was wrong.
                var isRevised = !StepsFrom(id, was.From).Take(was.Steps.Count).SequenceEqual(was.Steps);
                _writer.Execute("""UPDATE alerts SET "RevisedAt" = @1 WHERE "Id" = @0""", id, isRevised ? revisedAt.ToMs() : was.RevisedAt);
                continue;
            }

            gone.Add(id);
            var old = StoreJson.Read<Alert>(was.Body);
            var successor = _writer.Query(
                """
                SELECT "Id" FROM alerts WHERE "Cow" = @0 AND "Pattern" = @1 AND "Leg" = @2 AND ABS("RaisedAt" - @3) <= @4
                ORDER BY ABS("RaisedAt" - @3), "RaisedAt" LIMIT 1
                """,
                row => row.GetString(0), old.Cow, old.Pattern.WireName(), old.Leg.WireName(), old.RaisedAt.ToMs(), (long)SuccessorWithin.TotalMilliseconds);
            var next = successor is [var found] ? found : null;
            _writer.Execute(
                """
                INSERT INTO alert_redirects("OldId", "NewId", "At") VALUES (@0, @1, @2)
                ON CONFLICT("OldId") DO UPDATE SET "NewId" = excluded."NewId", "At" = excluded."At"
                """,
                id, next, revisedAt.ToMs());
            if (next is not null)
                _writer.Execute("""UPDATE alerts SET "RevisedAt" = @1 WHERE "Id" = @0""", next, revisedAt.ToMs());
        }

        _before.Clear();
        return Task.FromResult(gone.ToImmutable());
    }

    private List<string> StepsFrom(string alertId, long at) => _writer.Query(
        """SELECT "Body" FROM alert_steps WHERE "AlertId" = @0 AND "At" >= @1 ORDER BY "Number" """, row => row.GetString(0), alertId, at);

    /// <summary>What was known of an alert before the past was folded again.</summary>
    /// <param name="Body">The alert as of its newest step.</param>
    /// <param name="RevisedAt">When it was last revised.</param>
    /// <param name="From">From when on its steps were forgotten.</param>
    /// <param name="Steps">The steps forgotten, in order.</param>
    private sealed record Forgotten(string Body, long? RevisedAt, long From, List<string> Steps);

    private void WriteAlert(Alert alert, string body)
    {
        TouchAlert(alert.Id);
        _writer.Execute(
            """
            INSERT INTO alerts("Id", "Cow", "Pattern", "Leg", "RaisedAt", "ClosedAt", "State", "RevisedAt", "Body", "CloseReason") VALUES (@0, @1, @2, @3, @4, @5, @6, NULL, @7, @8)
            ON CONFLICT("Id") DO UPDATE SET "ClosedAt" = excluded."ClosedAt", "CloseReason" = excluded."CloseReason", "State" = excluded."State", "Body" = excluded."Body"
            """,
            alert.Id, alert.Cow, alert.Pattern.WireName(), alert.Leg.WireName(), alert.RaisedAt.ToMs(), alert.ClosedAt?.ToMs(), (int)alert.State, body, (int?)alert.CloseReason);
        // An id that was withdrawn once may come true again.
        _writer.Execute("""DELETE FROM alert_redirects WHERE "OldId" = @0""", alert.Id);
    }
}
