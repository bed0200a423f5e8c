using System.CommandLine;
using System.Globalization;

namespace GaitWatch;

/// <summary><c>trim-list</c>: the cows for the trimmer, in the order through the chute.</summary>
internal static class TrimListCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var visit = CommonOptions.Day("--visit", "The visit's day. Default: the next one.");
        var csv = new Option<bool>("--csv") { Description = "Print comma-separated values, for a spreadsheet." };
        var json = CommonOptions.Json();
        var url = CommonOptions.Url();
        var verb = new VerbCommand("trim-list", "The trimmer's list for a visit: which cow, which foot first, why, in the order through the chute.")
        {
            Examples =
            [
                ("gaitwatch trim-list", "for the next visit"),
                ("gaitwatch trim-list --visit 2026-03-04", "for that visit"),
                ("gaitwatch trim-list --csv > list.csv", "for a spreadsheet"),
            ],
        };
        verb.Add(visit);
        verb.Add(csv);
        verb.Add(json);
        verb.Add(url);
        verb.Validators.Add(result =>
        {
            if (result.GetValue(csv) && result.GetValue(json))
                result.AddError("--csv and --json exclude each other: choose one.");
        });
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: false, cancellation);
            var route = parsed.GetValue(visit) is { } day
                ? $"api/trim-list?visit={day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}"
                : "api/trim-list";
            if (parsed.GetValue(csv))
                await context.Out.WriteAsync(await service.Api.GetAsync(route, "text/csv", cancellation));
            else if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(await service.Api.GetJsonAsync(route, cancellation));
            else
                await context.Out.WriteAsync(await service.Api.GetAsync(route, "text/plain", cancellation));
            return ExitCode.Done;
        });
        return verb;
    }
}
