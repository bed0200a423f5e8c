using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Reads a finding from the wire; every fault of a form is told at once.</summary>
public static class FindingReader
{
    /// <summary>Reads a form.</summary>
    /// <param name="form">What was sent.</param>
    /// <param name="cow">Her number, where the route names her; null to take the form's.</param>
    public static FindingReading Read(FindingForm form, string? cow = null)
    {
        var faults = ImmutableArray.CreateBuilder<(string Field, string Fault)>();
        if (form.At is null)
            faults.Add(("at", "at is missing: the time the foot was in hand, RFC 3339, such as 2026-03-03T10:20:00.000Z."));
        if (!Legs.TryParseWireName(form.Foot, out var foot))
            faults.Add(("foot", $"foot is {Quoted(form.Foot)}: one of lf rf lh rh."));
        if (!Lesions.TryParse(form.Lesion, out var lesion))
            faults.Add(("lesion", $"lesion is {Quoted(form.Lesion)}: one of {Words<Lesion>(Lesions.WireName)}."));

        var finding = new Finding
        {
            Id = form.Id ?? "",
            Cow = cow ?? form.Cow ?? "",
            At = form.At?.ToUniversalTime() ?? DateTimeOffset.UnixEpoch,
            Foot = foot,
            Lesion = lesion,
            Claw = Value<Claw>(form.Claw, FindingNames.WireName, "claw", faults),
            Zone = form.Zone,
            Severity = form.Severity,
            MStage = Value<MStage>(form.MStage, FindingNames.WireName, "mStage", faults),
            Signs = Values<VetSign>(form.Signs, VetSigns.WireName, "signs", faults),
            Actions = Values<FindingAction>(form.Actions, FindingNames.WireName, "actions", faults),
            BlockClaw = Value<Claw>(form.BlockClaw, FindingNames.WireName, "blockClaw", faults),
            BlockMaterial = form.BlockMaterial,
            ForeignBody = form.ForeignBody is { } body ? new ForeignBody(body.Kind ?? "", body.SizeMillimetres) : null,
            WithdrawalUntil = form.WithdrawalUntil,
            LocomotionScore = form.LocomotionScore,
            By = form.By ?? "",
            Note = form.Note ?? "",
        };

        // A field that could not be read is named once: what follows from its stand-in value is not told.
        var unread = faults.Select(fault => fault.Field).ToHashSet(StringComparer.Ordinal);
        if (!unread.Contains("lesion") && !unread.Contains("at"))
            faults.AddRange(FindingFaults.Of(finding).Where(fault => !unread.Contains(fault.Field)));
        else
            faults.AddRange(FindingFaults.OfPlainFields(finding).Where(fault => !unread.Contains(fault.Field)));
        return new FindingReading(faults.Count == 0 ? finding : null, faults.ToImmutable());
    }

    private static T? Value<T>(string? text, Func<T, string> nameOf, string field, ImmutableArray<(string, string)>.Builder faults)
        where T : struct, Enum
    {
        if (text is null)
            return null;
        if (AlertNames.TryParse(text, nameOf, out T value))
            return value;
        faults.Add((field, $"{field} is {Quoted(text)}: one of {Words(nameOf)}, or null."));
        return null;
    }

    private static ImmutableArray<T> Values<T>(
        IReadOnlyList<string>? texts, Func<T, string> nameOf, string field, ImmutableArray<(string, string)>.Builder faults)
        where T : struct, Enum
    {
        var values = ImmutableArray.CreateBuilder<T>();
        var unknown = new List<string>();
        foreach (var text in texts ?? [])
        {
            if (AlertNames.TryParse(text, nameOf, out T value))
                values.Add(value);
            else
                unknown.Add(Quoted(text));
        }

        if (unknown.Count > 0)
            faults.Add((field, $"{field} holds {string.Join(", ", unknown)}: each one of {Words(nameOf)}."));
        return values.ToImmutable();
    }

    private static string Words<T>(Func<T, string> nameOf) where T : struct, Enum => string.Join(' ', Enum.GetValues<T>().Select(nameOf));

    private static string Quoted(string? text) => text is null ? "missing" : $"'{FindingFaults.Shorten(text)}'";
}
