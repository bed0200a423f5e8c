using System.Text.Json;
using System.Text.Json.Serialization;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

/// <summary>Things a test needs and does not care about.</summary>
internal static class Some
{
    public static FarmCalendar Berlin { get; } = new(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));

    /// <summary>The day most tests begin on; a Tuesday.</summary>
    public static DateOnly Day0 { get; } = new(2026, 3, 3);

    public static FollowUpOptions Clocks { get; } = new();

    // As a store keeps writes: enums by name.
    public static JsonSerializerOptions Json { get; } = new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase, Converters = { new JsonStringEnumConverter() } };

    /// <summary>An hour of a farm day, in the farm's zone.</summary>
    public static DateTimeOffset At(int day, double hour = 10) => Berlin.StartOf(Day0.AddDays(day)).AddHours(hour);

    public static Finding Finding(string id, int day = 0, Lesion lesion = Lesion.SoleUlcer, Leg foot = Leg.Rh, params FindingAction[] actions) =>
        new() { Id = id, Cow = "417", At = At(day), Foot = foot, Lesion = lesion, Actions = [.. actions] };

    public static FindingWrite Written(this Finding finding, double hoursLater = 0) => new(finding, finding.At.AddHours(hoursLater));

    public static FindingForm Form(string lesion = "SU") => new() { Id = "f1", Cow = "417", At = At(0), Foot = "rh", Lesion = lesion };

    public static string[] Faults(FindingForm form) => [.. FindingReader.Read(form).Faults.Select(fault => $"{fault.Field}: {fault.Fault}")];

    public static Alert Alert(string cow = "417", Leg leg = Leg.Rh, Urgency urgency = Urgency.Today, int raised = 0, double drop = 14) => new()
    {
        Id = $"{cow}-{leg}-{raised}",
        Cow = cow,
        Pattern = AlertPattern.OneLeg,
        Leg = leg,
        LegProbability = PerLeg.From(other => other == leg ? 1.0 : 0.0),
        RaisedAt = At(raised, 6),
        OnsetAt = At(raised - 3, 6),
        LoadDropPercent = drop,
        LoadDropLowerPercent = drop - 4,
        LoadDropUpperPercent = drop + 4,
        Urgency = urgency,
        State = AlertState.Open,
        Explanation = "",
    };

    public static RecoveryAssessment Recovery(string findingId, RecoveryStatus status, string cow = "417", Leg foot = Leg.Rh, int day = 0) => new()
    {
        FindingId = findingId, Cow = cow, Foot = foot, TreatedAt = At(day), Status = status, DropPercentNow = 11, Explanation = "",
    };
}
