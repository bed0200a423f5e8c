using System.Data.Common;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>A cow's passages with what was expected of them, as readers and the fold ask for them.</summary>
internal static class AssessedPassages
{
    /// <summary>Of cow @0 from @1 to @2, both included, in order of time.</summary>
    public static string Sql { get; } =
        $"""
        SELECT {AssessmentColumns.NamesOf("a")}, p."Lf_Share", p."Rf_Share", p."Lh_Share", p."Rh_Share"
        FROM assessments a JOIN passages p ON p."Id" = a."PassageId" WHERE a."Cow" = @0 AND a."At" >= @1 AND a."At" <= @2 ORDER BY a."At", a."PassageId"
        """;

    public static AssessedPassage Read(DbDataReader row)
    {
        var at = AssessmentColumns.Count;
        return new AssessedPassage(
            new PerLeg<double>(row.GetDouble(at), row.GetDouble(at + 1), row.GetDouble(at + 2), row.GetDouble(at + 3)), AssessmentColumns.Read(row));
    }
}
