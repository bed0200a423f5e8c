using System.Globalization;
using CsvHelper;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>The trim list as CSV (RFC 4180) with the names of the JSON as columns.</summary>
internal static class TrimListCsv
{
    private static readonly string[] Columns =
    [
        "position", "cow", "eid", "pen", "reason", "leg", "loadDropPercent", "since", "urgency", "daysInMilk", "dueOn", "lastSeenAt",
        "lastFinding", "blockOn", "withdrawalUntil", "note",
    ];

    // A name that a spreadsheet would run as a formula is shown as text; a minus sign belongs to numbers.
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with { Injection = CsvInjection.Escape, InjectionCharacters = "=@+\t\r" };

    public static byte[] Write(IReadOnlyList<TrimListRowView> rows)
    {
        using var bytes = new MemoryStream();
        using (var csv = CsvWriter.Create(bytes, Options, true))
        {
            csv.WriteHeader(Columns);
            foreach (var row in rows)
            {
                csv.WriteRecord(
                    row.Position.ToString(CultureInfo.InvariantCulture), row.Cow, row.Eid, row.Pen, row.Reason, row.Leg,
                    row.LoadDropPercent?.ToString("0.0", CultureInfo.InvariantCulture), Day(row.Since), row.Urgency,
                    row.DaysInMilk?.ToString(CultureInfo.InvariantCulture), Day(row.DueOn),
                    row.LastSeenAt?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture), row.LastFinding,
                    Day(row.BlockOn), Day(row.WithdrawalUntil), row.Note);
            }
        }

        return bytes.ToArray();
    }

    private static string? Day(DateOnly? day) => day is { } value ? Days.Write(value) : null;
}
