using System.CommandLine;
using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>recovery</c>: whether a cow's treated feet take her weight again.</summary>
internal static class RecoveryCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var cow = new Argument<string>("COW") { Description = "The cow's number, or the 15 digits of her tag." };
        var json = CommonOptions.Json();
        var url = CommonOptions.Url();
        var verb = new VerbCommand("recovery", "Whether a cow's treated feet take her weight again: one line for each treatment, and why.")
        {
            Examples =
            [
                ("gaitwatch recovery 417", "every treated foot of cow 417"),
                ("gaitwatch recovery 417 --json", "as GET /api/cows/417/recovery gives it"),
            ],
        };
        verb.Add(cow);
        verb.Add(json);
        verb.Add(url);
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: false, cancellation);
            var number = parsed.GetRequiredValue(cow);
            var route = $"api/cows/{Uri.EscapeDataString(number)}/recovery";
            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(await service.Api.GetJsonAsync(route, cancellation));
            else
                Write(context, number, await service.Api.GetAsync<IReadOnlyList<RecoveryView>>(route, cancellation), service.Zone);
            return ExitCode.Done;
        });
        return verb;
    }

    private static void Write(CommandContext context, string cow, IReadOnlyList<RecoveryView> recoveries, TimeZoneInfo zone)
    {
        if (recoveries.Count == 0)
        {
            context.Out.WriteLine($"No treated foot of cow {cow} is known.");
            return;
        }

        var listing = new Listing("Foot", "Treated", "Status", ">Carried less then", ">Carries less now", "Between", ">Half way in", "Normal about");
        foreach (var recovery in recoveries)
        {
            listing.Add(
                Words.Leg(recovery.Foot), Words.DayOf(recovery.TreatedAt, zone), recovery.Status, Words.Percent(recovery.DropPercentAtTreatment),
                Words.Percent(recovery.DropPercentNow), Interval(recovery.DropInterval), Days(recovery.HalfLifeDays), Words.Day(recovery.RecoveredOn ?? recovery.ExpectedNormalOn));
        }

        listing.WriteTo(context);
        context.Out.WriteLine();
        foreach (var recovery in recoveries)
            context.Out.WriteLine($"{Words.DayOf(recovery.TreatedAt, zone)} {Words.Leg(recovery.Foot)}: {recovery.Explanation}");
        context.Out.WriteLine();
        context.Out.WriteLine(Words.CallTheVeterinarian);
    }

    private static string Interval(double[]? interval) =>
        interval is [var low, var high] ? string.Create(CultureInfo.InvariantCulture, $"{low:0} to {high:0} %") : "";

    private static string Days(double? days) => days is { } value ? string.Create(CultureInfo.InvariantCulture, $"{value:0} days") : "";
}
