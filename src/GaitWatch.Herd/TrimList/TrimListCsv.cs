using System.Globalization;
using CsvHelper;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>A visit's list as comma-separated values (RFC 4180: header line, CRLF, quotes where needed).</summary>
public static class TrimListCsv
{
    private static readonly (string Name, Func<TrimListRow, object?> Of)[] Columns =
    [
        ("position", row => row.Position),
        ("cow", row => row.Cow),
        ("eid", row => row.Eid?.ToString()),
        ("pen", row => row.Pen),
        ("reason", row => row.Reason.WireName()),
        ("leg", row => row.Leg?.WireName()),
        ("loadDropPercent", row => row.LoadDropPercent is { } drop ? Math.Round(drop, 1) : null),
        ("since", row => Day(row.Since)),
        ("urgency", row => row.Urgency?.WireName()),
        ("daysInMilk", row => row.DaysInMilk),
        ("dueOn", row => Day(row.DueOn)),
        ("lastSeenAt", row => row.LastSeenAt?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture)),
        ("lastFinding", row => row.LastFinding),
        ("blockOn", row => Day(row.BlockOn)),
        ("withdrawalUntil", row => Day(row.WithdrawalUntil)),
        ("note", row => row.Note),
        ("hasPlace", row => row.HasPlace ? "true" : "false"),
    ];

    // A note may begin with a character that a spreadsheet takes for a formula: it is escaped.
    private static readonly CsvWriterOptions Options = new() { Injection = CsvInjection.Escape };

    /// <summary>The list, one cow a line in the order through the chute; a value not known is empty.</summary>
    public static string Render(TrimList list)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, Options, leaveOpen: true))
        {
            foreach (var column in Columns)
                csv.WriteField(column.Name);
            csv.EndRecord();
            foreach (var row in list.Rows)
            {
                foreach (var column in Columns)
                    csv.WriteField(column.Of(row));
                csv.EndRecord();
            }
        }

        return text.ToString();
    }

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
