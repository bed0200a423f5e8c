using System.Data.Common;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>A passage as a chart of the legs needs it: what each leg carried, what was expected of it, how strong the evidence was.</summary>
/// <param name="EndedAt">The last lift.</param>
/// <param name="Share">The share of her weight on each leg, 0 to 1; null where it could not be measured.</param>
/// <param name="Expected">Her own normal share; null while it is being learnt.</param>
/// <param name="Spread">Standard deviation of one passage's share around it; null while it is being learnt.</param>
/// <param name="Evidence">Evidence that a leg, alone or with its pair, carries less, as a fraction of the limit.</param>
public readonly record struct LegEvidence(DateTimeOffset EndedAt, PerLeg<double?> Share, PerLeg<double>? Expected, PerLeg<double>? Spread, PerLeg<double> Evidence)
{
    /// <summary>Of cow @0, started from @1 and before @2, accepted and no reason against them in her own history.</summary>
    internal const string Sql =
        """
        SELECT p."EndedAt", p."Lf_Share", p."Rf_Share", p."Lh_Share", p."Rh_Share",
            a."ExpectedLf", a."ExpectedRf", a."ExpectedLh", a."ExpectedRh", a."SpreadLf", a."SpreadRf", a."SpreadLh", a."SpreadRh",
            MAX(a."EvidenceLf", a."EvidenceBothFore"), MAX(a."EvidenceRf", a."EvidenceBothFore"),
            MAX(a."EvidenceLh", a."EvidenceBothHind"), MAX(a."EvidenceRh", a."EvidenceBothHind")
        FROM passages p JOIN assessments a ON a."PassageId" = p."Id"
        WHERE p."Cow" = @0 AND p."StartedAt" >= @1 AND p."StartedAt" < @2 AND p."Accepted" = 1 AND a."Reasons" = ''
        ORDER BY p."StartedAt", p."Id"
        """;

    internal static LegEvidence Read(DbDataReader row)
    {
        double? Maybe(int at) => row.IsDBNull(at) ? null : row.GetDouble(at);
        PerLeg<double> Four(int at) => new(row.GetDouble(at), row.GetDouble(at + 1), row.GetDouble(at + 2), row.GetDouble(at + 3));
        return new(
            row.GetInt64(0).FromMs(), new PerLeg<double?>(Maybe(1), Maybe(2), Maybe(3), Maybe(4)),
            row.IsDBNull(5) ? null : Four(5), row.IsDBNull(9) ? null : Four(9), Four(13));
    }
}
