using System.Data.Common;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>An assessment as the columns of its row, in one order for reading and writing.</summary>
internal static class AssessmentColumns
{
    private static readonly string[] All =
    [
        "PassageId", "Cow", "At", "Reasons", "Baseline",
        "ExpectedLf", "ExpectedRf", "ExpectedLh", "ExpectedRh", "SpreadLf", "SpreadRf", "SpreadLh", "SpreadRh",
        "ResidualForeHind", "ResidualFore", "ResidualHind", "CommonForeHind", "CommonFore", "CommonHind",
        "EvidenceLf", "EvidenceRf", "EvidenceLh", "EvidenceRh", "EvidenceBothHind", "EvidenceBothFore",
    ];

    /// <summary>The columns, in the order of <see cref="Values"/> and <see cref="Read"/>.</summary>
    public static string Names { get; } = string.Join(", ", All.Select(name => $"\"{name}\""));

    /// <summary>The columns of a table by its name in a query.</summary>
    public static string NamesOf(string table) => string.Join(", ", All.Select(name => $"{table}.\"{name}\""));

    /// <summary>How many there are.</summary>
    public static int Count => All.Length;

    /// <summary>The values of a row.</summary>
    public static object?[] Values(PassageAssessment a) =>
    [
        a.PassageId, a.Cow, a.At.ToMs(), PassageColumns.WriteReasons(a.Reasons), (int)a.Baseline,
        a.ExpectedShare?.Lf, a.ExpectedShare?.Rf, a.ExpectedShare?.Lh, a.ExpectedShare?.Rh,
        a.ShareSpread?.Lf, a.ShareSpread?.Rf, a.ShareSpread?.Lh, a.ShareSpread?.Rh,
        a.Residual?.ForeHind, a.Residual?.Fore, a.Residual?.Hind,
        a.CommonMovement?.ForeHind, a.CommonMovement?.Fore, a.CommonMovement?.Hind,
        a.OneLegEvidence.Lf, a.OneLegEvidence.Rf, a.OneLegEvidence.Lh, a.OneLegEvidence.Rh, a.BothHindEvidence, a.BothForeEvidence,
    ];

    /// <summary>The assessment of a row.</summary>
    public static PassageAssessment Read(DbDataReader row) => ReadFrom(row, 0);

    /// <summary>The assessment whose columns begin at a place of the row.</summary>
    public static PassageAssessment ReadFrom(DbDataReader row, int first) => new()
    {
        PassageId = row.GetString(first),
        Cow = row.GetString(first + 1),
        At = row.GetInt64(first + 2).FromMs(),
        Reasons = PassageColumns.ReadReasons(row.GetString(first + 3)),
        Baseline = (BaselineState)row.GetInt32(first + 4),
        ExpectedShare = Four(row, first + 5),
        ShareSpread = Four(row, first + 9),
        Residual = Three(row, first + 13),
        CommonMovement = Three(row, first + 16),
        OneLegEvidence = new PerLeg<double>(row.GetDouble(first + 19), row.GetDouble(first + 20), row.GetDouble(first + 21), row.GetDouble(first + 22)),
        BothHindEvidence = row.GetDouble(first + 23),
        BothForeEvidence = row.GetDouble(first + 24),
    };

    private static PerLeg<double>? Four(DbDataReader row, int at) => row.IsDBNull(at)
        ? null
        : new PerLeg<double>(row.GetDouble(at), row.GetDouble(at + 1), row.GetDouble(at + 2), row.GetDouble(at + 3));

    private static Balances? Three(DbDataReader row, int at) => row.IsDBNull(at)
        ? null
        : new Balances(row.GetDouble(at), row.GetDouble(at + 1), row.GetDouble(at + 2));
}
