using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch.Barn.Tests;

/// <summary>Inputs of a simulated barn, as the service gets them.</summary>
internal static class Scenario
{
    /// <summary>Device-summed passages, registrations, visits and findings of a small herd with everything that happens in a barn.</summary>
    /// <param name="seed">Everything is drawn from it.</param>
    /// <param name="cows">How many.</param>
    /// <param name="days">How long.</param>
    /// <param name="cases">Cases of lameness per 100 cows and year.</param>
    public static List<Input> History(long seed, int cows, int days, double cases = 40)
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(seed, cows, days) with { CasesPer100CowsAndYear = cases });
        return [.. Inputs(herd, BarnFeed.History(herd, new BarnFeedOptions()))];
    }

    /// <summary>Crossings with raw frames and tags, one after another, some of them bad.</summary>
    public static List<Input> Crossings(long seed, int cows, int crossings, DateTimeOffset from)
    {
        var barn = new DemoBarn(HerdSpec.Barn(seed, cows, 40) with { Start = DateOnly.FromDateTime(from.UtcDateTime).AddDays(-39) }, new BarnFeedOptions { BadCrossings = 0.2 });
        var inputs = new List<Input>();
        var seen = 0;
        foreach (var input in Inputs(barn.Herd, barn.Live(from)))
        {
            if (input is TagInput && ++seen > crossings)
                break;
            inputs.Add(input);
        }

        return inputs;
    }

    /// <summary>What a feed sends, read as the service reads it; registrations from the herd itself.</summary>
    public static IEnumerable<Input> Inputs(SimulatedHerd herd, IEnumerable<BarnInput> feed)
    {
        var reader = new MessageReader(Some.Options);
        foreach (var told in herd.Events())
        {
            if (Write(told) is { } write)
                yield return write;
        }

        foreach (var message in feed.OfType<BarnMessage>())
        {
            var input = reader.Read(message.Topic, message.Payload.Span, message.ArrivesAt, live: false);
            if (input is RejectedInput rejected)
                throw new InvalidOperationException($"{rejected.Topic}: {rejected.Detail}");
            yield return input;
        }
    }

    // What people enter: the register, visits, and what was found and done at the chute.
    private static WriteInput? Write(HerdEvent told) => told switch
    {
        RegisterEvent register => Register(register),
        VisitEvent visit => new WriteInput(new VisitWrite(visit.At, new Visit(visit.Date) { Places = visit.Places })),
        FindingEvent found => new WriteInput(new FindingWrite(Read(found), found.At)),
        _ => null,
    };

    private static Finding Read(FindingEvent found)
    {
        var told = found.Finding;
        var reading = FindingReader.Read(new FindingForm
        {
            Id = told.Id, Cow = found.Cow, At = found.At, Foot = told.Foot.Word(), Claw = told.Claw, Zone = told.Zone, Lesion = told.Lesion, Severity = told.Severity,
            MStage = told.MStage, Actions = told.Actions, BlockClaw = told.BlockClaw, By = told.By,
        });
        return reading.Finding ?? throw new InvalidOperationException(string.Join(' ', reading.Faults));
    }

    private static WriteInput Register(RegisterEvent told) => new(new RegisterWrite(told.At, new CowRegistration(told.Entry.Cow, told.At)
    {
        Eid = Eid.Parse(told.Entry.Eid),
        Pen = told.Entry.Pen,
        Parity = told.Entry.Parity,
        CalvedOn = told.Entry.CalvedOn,
        DriedOffOn = told.Entry.DriedOffOn,
        DueOn = told.Entry.DueOn,
        LeftOn = told.Entry.LeftOn,
        EnteredAt = told.At,
    }));

    /// <summary>An alert closed by hand.</summary>
    public static WriteInput Close(AlertView alert, DateTimeOffset at) => new(new CloseAlertWrite(at, new AlertClosedByHand(
        alert.Cow, at,
        AlertNames.TryParse<AlertPattern>(alert.Pattern, AlertNames.WireName, out var pattern) ? pattern : throw new InvalidOperationException(alert.Pattern),
        Legs.TryParseWireName(alert.Leg, out var leg) ? leg : throw new InvalidOperationException(alert.Leg),
        AlertCloseReason.SeenWalkingSound, "", "")));
}
