using System.Globalization;
using CsvHelper;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>
/// Findings and alerts as comma-separated values (RFC 4180: header line, CRLF, quotes where needed). Several values in one field are
/// joined by a space; a value not known is empty.
/// </summary>
internal static class ExportCsv
{
    // A note may begin with a character that a spreadsheet takes for a formula: it is escaped.
    private static readonly CsvWriterOptions s_options = new() { Injection = CsvInjection.Escape };

    private static readonly (string Name, Func<DiagnosisEvent, object?> Of)[] s_findings =
    [
        ("id", row => row.Id),
        ("cow", row => row.Finding.Cow),
        ("eid", row => Eid(row.Animal)),
        ("at", row => Instant(row.EventDateTime)),
        ("foot", row => row.Finding.Foot),
        ("claw", row => row.Finding.Claw),
        ("zone", row => row.Finding.Zone),
        ("lesion", row => row.Finding.Lesion),
        ("lesionInWords", row => row.Diagnoses is [var diagnosis] ? diagnosis.Name : Lesion.None.InWords()),
        ("severity", row => row.Finding.Severity),
        ("mStage", row => row.Finding.MStage),
        ("signs", row => Several(row.Finding.Signs)),
        ("actions", row => Several(row.Finding.Actions)),
        ("blockClaw", row => row.Finding.BlockClaw),
        ("blockMaterial", row => row.Finding.BlockMaterial),
        ("foreignBody", row => row.Finding.ForeignBody?.Kind),
        ("foreignBodySizeMillimetres", row => row.Finding.ForeignBody?.SizeMillimetres),
        ("withdrawalUntil", row => Day(row.Finding.WithdrawalUntil)),
        ("locomotionScore", row => row.Finding.LocomotionScore),
        ("by", row => row.Finding.By),
        ("note", row => row.Finding.Note),
        ("enteredAt", row => Instant(row.Meta.Created)),
        ("correctedAt", row => Instant(row.Finding.Correctable?.CorrectedAt)),
    ];

    private static readonly (string Name, Func<AttentionEvent, object?> Of)[] s_alerts =
    [
        ("id", row => row.Id),
        ("cow", row => row.Alert.Cow),
        ("eid", row => Eid(row.Animal)),
        ("pen", row => row.Alert.Pen),
        ("pattern", row => row.Alert.Pattern),
        ("leg", row => row.Alert.Leg),
        ("raisedAt", row => Instant(row.Alert.RaisedAt)),
        ("onsetAt", row => Instant(row.Alert.OnsetAt)),
        ("loadDropPercent", row => Figure(row.Alert.LoadDropPercent)),
        ("loadDropLowerPercent", row => Figure(row.Alert.LoadDropInterval[0])),
        ("loadDropUpperPercent", row => Figure(row.Alert.LoadDropInterval[1])),
        ("urgency", row => row.Alert.Urgency),
        ("state", row => row.Alert.State),
        ("closedAt", row => Instant(row.Alert.ClosedAt)),
        ("closeReason", row => row.Alert.CloseReason),
        ("liftedAt", row => Instant(row.Alert.LiftedAt)),
        ("label", row => row.Alert.Label),
        ("explanation", row => row.Alert.Explanation),
    ];

    public static string Findings(IEnumerable<DiagnosisEvent> rows) => Render(rows, s_findings);

    public static string Alerts(IEnumerable<AttentionEvent> rows) => Render(rows, s_alerts);

    private static string Render<T>(IEnumerable<T> rows, (string Name, Func<T, object?> Of)[] columns)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, s_options, leaveOpen: true))
        {
            foreach (var column in columns)
                csv.WriteField(column.Name);
            csv.EndRecord();
            foreach (var row in rows)
            {
                foreach (var column in columns)
                    csv.WriteField(column.Of(row));
                csv.EndRecord();
            }
        }

        return text.ToString();
    }

    private static string? Eid(IcarAnimal animal) => animal.Scheme == "std.iso.11785" ? animal.Id : null;

    private static string Several(IReadOnlyList<string>? values) => string.Join(' ', values ?? []);

    private static string? Day(DateOnly? day) => day is { } value ? Days.Write(value) : null;

    private static string? Instant(DateTimeOffset? at) => at?.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    private static double Figure(double value) => Math.Round(value, 1);
}
