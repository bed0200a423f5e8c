using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>Reads a finding from a body; every fault of it is told at once.</summary>
internal static class FindingFields
{
    // What is longer is no name or word of the contract; the rules of a finding say what would be right.
    private const int LongestWord = 1000;

    /// <summary>Reads it.</summary>
    /// <param name="fields">The body's members; faults are added to theirs.</param>
    /// <param name="id">Its id where the route or an earlier wording names it; null to take the body's.</param>
    /// <param name="cow">Her number where the route or an earlier wording names it.</param>
    /// <param name="arrivedAt">When it arrived: no finding lies more than a day ahead of it.</param>
    /// <returns>The finding, null when there is a fault; and when it was entered.</returns>
    public static (Finding? Finding, DateTimeOffset EnteredAt) Read(JsonFields fields, string? id, string? cow, DateTimeOffset arrivedAt)
    {
        var form = Form(fields);
        var faults = fields.Faults;
        if (id is not null && form.Id is { } other && other != id)
            faults.Add("id", $"id is '{Shorten(other)}' in the body and '{Shorten(id)}' in the route: leave it out of the body, or make them the same.");
        var entered = fields.Instant("enteredAt");
        if (entered > arrivedAt.AddDays(1))
            faults.Add("enteredAt", $"enteredAt is {entered.Value.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}, more than a day ahead of now: the time at which it was entered is needed.");
        if (form.At is not null)
            ArrivalTime.Of(form.At, arrivedAt, faults);
        if (id is null && string.IsNullOrWhiteSpace(form.Id))
            faults.AddNew([("id", "id is missing: a name of your own for this finding, 1 to 100 characters; sent twice it counts once.")]);
        var reading = FindingReader.Read(form with { Id = id ?? form.Id ?? "-" }, cow);
        faults.AddNew(reading.Faults);
        return (faults.Any ? null : reading.Finding, entered ?? arrivedAt);
    }

    private static FindingForm Form(JsonFields fields)
    {
        var body = fields.Object("foreignBody");
        return new FindingForm
        {
            Id = fields.Text("id", LongestWord),
            Cow = fields.Text("cow", LongestWord),
            At = ToMilliseconds(fields.Instant("at")),
            Foot = fields.Text("foot", LongestWord),
            Claw = fields.Text("claw", LongestWord),
            Zone = fields.Whole("zone"),
            Lesion = fields.Text("lesion", LongestWord),
            Severity = fields.Whole("severity"),
            MStage = fields.Text("mStage", LongestWord),
            Signs = fields.Texts("signs", LongestWord) ?? [],
            Actions = fields.Texts("actions", LongestWord) ?? [],
            BlockClaw = fields.Text("blockClaw", LongestWord),
            BlockMaterial = fields.Text("blockMaterial", LongestWord),
            ForeignBody = body is null ? null : new ForeignBodyForm(body.Text("kind", LongestWord), body.Figure("sizeMillimetres")),
            WithdrawalUntil = fields.Day("withdrawalUntil"),
            LocomotionScore = fields.Whole("locomotionScore"),
            By = fields.Text("by", LongestWord) ?? "",
            Note = fields.Text("note", 100_000) ?? "",
        };
    }

    // The wire tells milliseconds: who sends back what was answered means the same finding.
    private static DateTimeOffset? ToMilliseconds(DateTimeOffset? at) => at?.AddTicks(-(at.Value.UtcTicks % TimeSpan.TicksPerMillisecond));

    private static string Shorten(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
