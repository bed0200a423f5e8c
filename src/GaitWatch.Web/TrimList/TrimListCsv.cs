using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>The trim list as CSV (RFC 4180) with the names of the JSON as columns.</summary>
internal static class TrimListCsv
{
    public static byte[] Write(IReadOnlyList<TrimListRowView> rows)
    {
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            NewLine = "\r\n",
            // A name that a spreadsheet would run as a formula is shown as text.
            InjectionOptions = InjectionOptions.Escape,
            InjectionCharacters = ['=', '@', '+', '\t', '\r'],
        };
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = new CsvWriter(text, configuration, leaveOpen: true))
        {
            foreach (var column in (string[])["position", "cow", "eid", "pen", "reason", "leg", "loadDropPercent", "since", "urgency", "daysInMilk", "dueOn", "lastSeenAt", "lastFinding", "blockOn", "withdrawalUntil", "note"])
                csv.WriteField(column);
            csv.NextRecord();
            foreach (var row in rows)
            {
                csv.WriteField(row.Position);
                csv.WriteField(row.Cow);
                csv.WriteField(row.Eid);
                csv.WriteField(row.Pen);
                csv.WriteField(row.Reason);
                csv.WriteField(row.Leg);
                csv.WriteField(row.LoadDropPercent?.ToString("0.0", CultureInfo.InvariantCulture));
                csv.WriteField(Day(row.Since));
                csv.WriteField(row.Urgency);
                csv.WriteField(row.DaysInMilk);
                csv.WriteField(Day(row.DueOn));
                csv.WriteField(row.LastSeenAt?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture));
                csv.WriteField(row.LastFinding);
                csv.WriteField(Day(row.BlockOn));
                csv.WriteField(Day(row.WithdrawalUntil));
                csv.WriteField(row.Note);
                csv.NextRecord();
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string? Day(DateOnly? day) => day is { } value ? Days.Write(value) : null;
}
