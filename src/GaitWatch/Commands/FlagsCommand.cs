using System.CommandLine;
using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>flags</c>: which cows need looking at.</summary>
internal static class FlagsCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var date = CommonOptions.Day("--date", "Alerts open at the end of that farm day. Default: now.");
        var json = CommonOptions.Json();
        var url = CommonOptions.Url();
        var verb = new VerbCommand("flags", "Which cows need looking at, which leg, since when: the open alerts, worst first.")
        {
            Examples =
            [
                ("gaitwatch flags", "this morning"),
                ("gaitwatch flags --date 2026-03-02", "as it stood at the end of that day"),
                ("gaitwatch flags --json", "as GET /api/flags gives it"),
            ],
        };
        verb.Add(date);
        verb.Add(json);
        verb.Add(url);
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: false, cancellation);
            var day = parsed.GetValue(date) is { } wanted ? wanted.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : null;
            var route = day is null ? "api/flags" : $"api/flags?date={day}";
            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(await service.Api.GetJsonAsync(route, cancellation));
            else
            {
                // Who should cross and does not may be the lamest of all: she is told first.
                if (day is null)
                    Tell(context, await service.Api.GetAsync<IReadOnlyList<NotSeenView>>("api/not-seen", cancellation));
                Write(context, await service.Api.GetAsync<IReadOnlyList<AlertView>>(route, cancellation), service.Zone, day);
            }

            return ExitCode.Done;
        });
        return verb;
    }

    private static void Tell(CommandContext context, IReadOnlyList<NotSeenView> missing)
    {
        foreach (var cow in missing)
            context.Out.WriteLine($"Cow {cow.Cow}{(cow.Pen is null ? "" : $", pen {cow.Pen}")}: {cow.Sentence}");
        if (missing.Count > 0)
            context.Out.WriteLine();
    }

    private static void Write(CommandContext context, IReadOnlyList<AlertView> flags, TimeZoneInfo zone, string? day)
    {
        if (flags.Count == 0)
        {
            context.Out.WriteLine(day is null ? "No cow is flagged." : $"No cow was flagged at the end of {day}.");
            return;
        }

        var listing = new Listing(">Cow", ">Pen", "Leg", ">Carries less", "Since", "Look at her", "State", "Last seen");
        foreach (var flag in flags)
        {
            listing.Add(
                flag.Cow, flag.Pen ?? "", Words.Where(flag.Pattern, flag.Leg), Words.Percent(flag.LoadDropPercent),
                Words.DayOf(flag.OnsetAt, zone), Words.Urgency(flag.Urgency), flag.State, Words.Minute(flag.LastSeenAt, zone));
        }

        listing.WriteTo(context);
        context.Out.WriteLine();
        context.Out.WriteLine(Words.CallTheVeterinarian);
    }
}
