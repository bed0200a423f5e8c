using System.Globalization;
using System.Text;
using System.Text.Json;

namespace GaitWatch.Simulator;

/// <summary>The barn's writes over HTTP: register, visits, findings.</summary>
public static class RegisterWrites
{
    /// <summary>The whole register of a day as one import.</summary>
    /// <param name="from">The instant that it holds from.</param>
    /// <param name="entries">The cows.</param>
    public static BarnWrite Import(DateTimeOffset from, IEnumerable<RegisterEntry> entries)
    {
        var csv = new StringBuilder("cow,eid,pen,parity,calvedOn,driedOffOn,dueOn,leftOn,from\n");
        foreach (var entry in entries)
        {
            csv.AppendJoin(',', entry.Cow, entry.Eid, entry.Pen, entry.Parity.ToString(CultureInfo.InvariantCulture), Date(entry.CalvedOn),
                Date(entry.DriedOffOn), Date(entry.DueOn), Date(entry.LeftOn), Payloads.Time(from)).Append('\n');
        }

        return new(from, "POST", "/api/herd", "text/csv", csv.ToString());
    }

    /// <summary>One cow's entry.</summary>
    public static BarnWrite Entry(RegisterEvent told) => Json(told.ArrivesAt, "PUT", $"/api/cows/{Uri.EscapeDataString(told.Entry.Cow)}", json =>
    {
        var entry = told.Entry;
        json.WriteString("cow", entry.Cow);
        json.WriteString("eid", entry.Eid);
        json.WriteString("pen", entry.Pen);
        json.WriteNumber("parity", entry.Parity);
        json.WriteString("calvedOn", Date(entry.CalvedOn));
        json.WriteString("driedOffOn", Date(entry.DriedOffOn));
        json.WriteString("dueOn", Date(entry.DueOn));
        json.WriteString("leftOn", Date(entry.LeftOn));
        json.WriteString("from", Payloads.Time(told.At));
        json.WriteString("at", Payloads.Time(told.At));
    });

    /// <summary>A visit of the trimmer.</summary>
    public static BarnWrite Visit(VisitEvent told) => Json(told.ArrivesAt, "PUT", $"/api/visits/{Date(told.Date)}", json =>
    {
        json.WriteString("date", Date(told.Date));
        json.WriteString("half", "am");
        json.WriteString("trimmer", "the trimmer");
        json.WriteNumber("places", told.Places);
        json.WriteString("at", Payloads.Time(told.At));
    });

    /// <summary>A finding at the chute.</summary>
    public static BarnWrite Finding(FindingEvent told) => Json(told.ArrivesAt, "POST", $"/api/cows/{Uri.EscapeDataString(told.Cow)}/findings", json =>
    {
        var finding = told.Finding;
        json.WriteString("id", finding.Id);
        json.WriteString("at", Payloads.Time(told.At));
        json.WriteString("foot", finding.Foot.Word());
        json.WriteString("claw", finding.Claw);
        Number(json, "zone", finding.Zone);
        json.WriteString("lesion", finding.Lesion);
        Number(json, "severity", finding.Severity);
        json.WriteString("mStage", finding.MStage);
        json.WriteStartArray("signs");
        json.WriteEndArray();
        json.WriteStartArray("actions");
        foreach (var action in finding.Actions)
            json.WriteStringValue(action);
        json.WriteEndArray();
        json.WriteString("blockClaw", finding.BlockClaw);
        json.WriteString("blockMaterial", finding.BlockClaw is null ? null : "wood");
        if (finding.ForeignBodyMillimetres is { } size)
        {
            json.WriteStartObject("foreignBody");
            json.WriteString("kind", "stone");
            json.WriteNumber("sizeMillimetres", size);
            json.WriteEndObject();
        }
        else
        {
            json.WriteNull("foreignBody");
        }

        json.WriteNull("withdrawalUntil");
        json.WriteNull("locomotionScore");
        json.WriteString("by", finding.By);
        json.WriteString("note", string.Empty);
    });

    private static BarnWrite Json(DateTimeOffset at, string method, string route, Action<Utf8JsonWriter> members) =>
        new(at, method, route, "application/json", Encoding.UTF8.GetString(Payloads.Write(members).Span));

    private static string? Date(DateOnly? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static void Number(Utf8JsonWriter json, string name, int? value)
    {
        if (value is { } number)
            json.WriteNumber(name, number);
        else
            json.WriteNull(name);
    }
}
