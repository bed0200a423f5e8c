using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

// Passages and whose they are.
public sealed partial class StateChange
{
    private static readonly string UpsertPassage =
        $"INSERT OR REPLACE INTO passages({PassageColumns.Names}) VALUES ({string.Join(", ", Enumerable.Range(0, PassageColumns.Count).Select(i => "@" + i))})";

    private static readonly string SelectPassage = $"SELECT {PassageColumns.Names} FROM passages";

    /// <summary>A platform's passages analysed here from frames whose first contact is in [from, to), in order of it.</summary>
    public Task<IReadOnlyList<Passage>> CrossingsAsync(string platform, DateTimeOffset from, DateTimeOffset to) =>
        Task.FromResult<IReadOnlyList<Passage>>(_writer.Query(
            $"""{SelectPassage} WHERE "Platform" = @0 AND "StartedAt" >= @1 AND "StartedAt" < @2 AND "FromFrames" = 1 ORDER BY "StartedAt" """,
            PassageColumns.Read, platform, from.ToMs(), to.ToMs()));

    /// <summary>
    /// Removes passages and writes others, new or changed; whose each is, is told by the register. A passage written again
    /// under its id replaces the earlier one.
    /// </summary>
    /// <param name="removedIds">Ids of passages that are no more.</param>
    /// <param name="written">Passages new or changed.</param>
    /// <param name="fromFrames">Whether they were analysed here from frames.</param>
    /// <param name="register">The register.</param>
    /// <returns>End of the earliest accepted passage that is no more or was replaced; null when all are new.</returns>
    public Task<DateTimeOffset?> ReplacePassagesAsync(
        IReadOnlyCollection<string> removedIds, IReadOnlyCollection<Passage> written, bool fromFrames, HerdRegister register)
    {
        long? earliest = null;
        var recount = new HashSet<string>(StringComparer.Ordinal);
        var seen = new Dictionary<string, (long First, long Last)>(StringComparer.Ordinal);
        foreach (var id in removedIds)
        {
            NoteReplaced(id, recount, ref earliest);
            TouchPassage(id);
            _writer.Execute("""DELETE FROM passages WHERE "Id" = @0""", id);
            _writer.Execute("""DELETE FROM assessments WHERE "PassageId" = @0""", id);
        }

        foreach (var passage in written)
        {
            NoteReplaced(passage.Id, recount, ref earliest);
            TouchPassage(passage.Id);
            var cow = passage.Eid is { } eid ? register.CowOf(eid, passage.StartedAt) : null;
            _writer.Execute(UpsertPassage, PassageColumns.Values(passage, cow, fromFrames));
            if (!passage.IsAccepted)
                _writer.Execute("""DELETE FROM assessments WHERE "PassageId" = @0""", passage.Id);
            if (cow is null)
                continue;
            var at = passage.StartedAt.ToMs();
            seen[cow] = seen.TryGetValue(cow, out var span) ? (Math.Min(span.First, at), Math.Max(span.Last, at)) : (at, at);
        }

        foreach (var (cow, span) in seen)
        {
            _writer.Execute(
                """
                INSERT INTO cows_seen("Cow", "FirstSeenAt", "LastSeenAt") VALUES (@0, @1, @2) ON CONFLICT("Cow") DO UPDATE SET
                "FirstSeenAt" = MIN(cows_seen."FirstSeenAt", excluded."FirstSeenAt"), "LastSeenAt" = MAX(cows_seen."LastSeenAt", excluded."LastSeenAt")
                """,
                cow, span.First, span.Last);
        }

        RecountSeen(recount);
        return Task.FromResult(earliest.FromMs());
    }

    /// <summary>Gives the passages that carried any of these tags to the cow that the register now names.</summary>
    /// <returns>End of the earliest passage that changed hands; null when none did.</returns>
    public Task<DateTimeOffset?> ReassignAsync(IReadOnlyCollection<Eid> tags, HerdRegister register)
    {
        long? earliest = null;
        var recount = new HashSet<string>(StringComparer.Ordinal);
        foreach (var tag in tags)
        {
            var passages = _writer.Query(
                """SELECT "Id", "Cow", "StartedAt", "EndedAt" FROM passages WHERE "Eid" = @0""",
                row => (Id: row.GetString(0), Cow: row.IsDBNull(1) ? null : row.GetString(1), StartedAt: row.GetInt64(2), EndedAt: row.GetInt64(3)), tag.Value);
            foreach (var passage in passages)
            {
                var cow = register.CowOf(tag, passage.StartedAt.FromMs());
                if (cow == passage.Cow)
                    continue;
                TouchPassage(passage.Id);
                _writer.Execute("""UPDATE passages SET "Cow" = @1 WHERE "Id" = @0""", passage.Id, cow);
                recount.Add(cow);
                if (passage.Cow is not null)
                    recount.Add(passage.Cow);
                earliest = Math.Min(earliest ?? long.MaxValue, passage.EndedAt);
            }
        }

        RecountSeen(recount);
        return Task.FromResult(earliest.FromMs());
    }

    /// <summary>Accepted passages of known cows that ended at or after an instant, in the order of a history.</summary>
    public async IAsyncEnumerable<PassageInput> HistoryAsync(DateTimeOffset from)
    {
        // Read in slices, so that memory stays bounded and what is written meanwhile is no concern of an open reader.
        const int slice = 5000;
        var after = from.ToMs() - 1;
        while (true)
        {
            var rows = _writer.Query(
                $"""
                {SelectPassage} WHERE "EndedAt" > @0 AND "EndedAt" <= COALESCE(
                    (SELECT "EndedAt" FROM passages WHERE "EndedAt" > @0 ORDER BY "EndedAt" LIMIT 1 OFFSET {slice - 1}), 9223372036854775807)
                ORDER BY "EndedAt"
                """,
                row => (Cow: PassageColumns.Cow(row), Passage: PassageColumns.Read(row)), after);
            if (rows.Count == 0)
                yield break;
            after = rows[^1].Passage.EndedAt.ToMs();
            foreach (var input in rows
                         .Where(row => row is { Cow: not null, Passage.IsAccepted: true })
                         .Select(row => new PassageInput(row.Cow!, row.Passage))
                         .Order(HerdInput.Order))
                yield return (PassageInput)input;
            await Task.Yield();
        }
    }

    private void NoteReplaced(string passageId, HashSet<string> owners, ref long? earliest)
    {
        var replaced = _writer.Query(
            """SELECT "Cow", "EndedAt", "Accepted" FROM passages WHERE "Id" = @0 AND "Cow" IS NOT NULL""",
            row => (Cow: row.GetString(0), EndedAt: row.GetInt64(1), Accepted: row.GetInt32(2) != 0), passageId);
        if (replaced is not [var passage])
            return;
        owners.Add(passage.Cow);
        if (passage.Accepted)
            earliest = Math.Min(earliest ?? long.MaxValue, passage.EndedAt);
    }

    private void RecountSeen(IEnumerable<string> cows)
    {
        foreach (var cow in cows)
        {
            _writer.Execute("""DELETE FROM cows_seen WHERE "Cow" = @0""", cow);
            _writer.Execute(
                """
                INSERT INTO cows_seen("Cow", "FirstSeenAt", "LastSeenAt")
                SELECT "Cow", MIN("StartedAt"), MAX("StartedAt") FROM passages WHERE "Cow" = @0 GROUP BY "Cow"
                """,
                cow);
        }
    }
}
