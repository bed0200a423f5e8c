using System.Collections.Immutable;
using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>
/// Everything that people entered, read once. Writes are only ever added, so what was read stays true and only what is newer
/// need be fetched; the register and the findings are made again when something of them came.
/// </summary>
/// <remarks>Safe to use from several threads.</remarks>
internal sealed class WriteBook
{
    /// <summary>The query for what is newer than @0.</summary>
    public const string NewerSql = """SELECT "Seq", "Body" FROM writes WHERE "Seq" > @0 ORDER BY "Seq" """;

    private readonly Lock _gate = new();
    private ImmutableList<FarmWrite> _writes = [];
    private HerdRegister _register = HerdRegister.Empty;
    private FindingLog _findings = FindingLog.Empty;
    private long _last;

    /// <summary>The newest sequence number that has been read.</summary>
    public long Last
    {
        get
        {
            lock (_gate)
                return _last;
        }
    }

    /// <summary>Adds what was found to be newer, and gives everything.</summary>
    /// <param name="newer">Rows after some <see cref="Last"/> read before, in order; those known already are skipped.</param>
    public (ImmutableList<FarmWrite> Writes, HerdRegister Register, FindingLog Findings) Add(IReadOnlyCollection<(long Seq, string Body)> newer)
    {
        lock (_gate)
        {
            var fresh = newer.Where(row => row.Seq > _last).Select(row => StoreJson.Read<FarmWrite>(row.Body)).ToArray();
            if (fresh.Length > 0)
            {
                _writes = _writes.AddRange(fresh);
                _last = newer.Max(row => row.Seq);
                if (fresh.OfType<RegisterWrite>().Any())
                    _register = new HerdRegister(_writes.OfType<RegisterWrite>().Select(write => write.Registration));
                if (fresh.Any(write => write is FindingWrite or FindingCorrectionWrite or RegisterWrite))
                    _findings = FindingLog.Of(_writes);
            }

            return (_writes, _register, _findings);
        }
    }
}
