using GaitWatch.Lameness;

namespace GaitWatch.Store;

// Recoveries of treated feet: kept, for judging one anew takes a hundred days of passages.
public sealed partial class StateChange
{
    internal const string RecoveriesMark = "recoveries-version";

    /// <summary>By which version of the method the kept recoveries were judged; 0 when none were.</summary>
    public int RecoveriesVersion
    {
        get => (int)(Mark(RecoveriesMark) ?? 0);
        set => SetMark(RecoveriesMark, value);
    }

    /// <summary>A cow's alerts as they stand within this change, closed ones too.</summary>
    public IReadOnlyList<Alert> AlertsOf(string cow) =>
        [.. _writer.Query("""SELECT "Body" FROM alerts WHERE "Cow" = @0 ORDER BY "RaisedAt", "Id" """, row => StoreJson.Read<Alert>(row.GetString(0)), cow)];

    /// <summary>A cow's accepted passages with what was expected of them, from an instant to another, both included.</summary>
    public IReadOnlyList<AssessedPassage> Assessed(string cow, DateTimeOffset from, DateTimeOffset until) =>
        _writer.Query(AssessedPassages.Sql, AssessedPassages.Read, cow, from.ToMs(), until.ToMs());

    /// <summary>Writes recoveries of a cow and removes those of feet that are hers no longer.</summary>
    /// <param name="cow">Her number.</param>
    /// <param name="feet">The findings that treated her feet: every one.</param>
    /// <param name="changed">Recoveries that are new or not what they were.</param>
    public void WriteRecoveries(string cow, IReadOnlySet<string> feet, IEnumerable<RecoveryAssessment> changed)
    {
        foreach (var kept in _writer.Query("""SELECT "FindingId" FROM recoveries WHERE "Cow" = @0""", row => row.GetString(0), cow))
        {
            if (feet.Contains(kept))
                continue;
            TouchRecovery(kept);
            _writer.Execute("""DELETE FROM recoveries WHERE "FindingId" = @0""", kept);
        }

        foreach (var recovery in changed)
        {
            TouchRecovery(recovery.FindingId);
            _writer.Execute(
                """INSERT OR REPLACE INTO recoveries("FindingId", "Cow", "TreatedAt", "Body", "Days") VALUES (@0, @1, @2, @3, @4)""",
                recovery.FindingId, cow, recovery.TreatedAt.ToMs(), RecoveryColumns.Body(recovery), RecoveryColumns.Days(recovery));
        }
    }

    /// <summary>Every cow of whom recoveries are kept.</summary>
    public IReadOnlyList<string> CowsWithRecoveries() => _writer.Query("""SELECT DISTINCT "Cow" FROM recoveries""", row => row.GetString(0));
}
