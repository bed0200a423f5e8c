using System.CommandLine;
using System.Globalization;

namespace GaitWatch;

/// <summary><c>export</c>: what the farm has gathered, for the veterinarian and other programs. One subcommand for each kind of thing.</summary>
internal static class ExportCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context) => new VerbCommand("export", "Findings and alerts for the veterinarian or another program; every series for InfluxDB.")
    {
        Examples =
        [
            ("gaitwatch export findings --from 2026-01-01 > findings.csv", "for a spreadsheet"),
            ("gaitwatch export alerts --json", "as events of the ICAR Animal Data Exchange standard"),
            ("gaitwatch export series --since 2026-01-01", "to InfluxDB, what was kept before it was set up"),
        ],
        Subcommands =
        {
            Table(context, "findings", "What was found and done at the chute."),
            Table(context, "alerts", "Alerts, with what lifting the foot said of them."),
            ExportSeriesCommand.Make(context),
        },
    };

    private static VerbCommand Table(CommandContext context, string what, string description)
    {
        var from = CommonOptions.Day("--from", "The first day. Default: all.");
        var to = CommonOptions.Day("--to", "The day after the last. Default: all.");
        var csv = new Option<bool>("--csv") { Description = "Print comma-separated values. This is the default." };
        var json = new Option<bool>("--json") { Description = "Print JSON: events of the ICAR Animal Data Exchange standard." };
        var url = CommonOptions.Url();
        var verb = new VerbCommand(what, description)
        {
            Examples =
            [
                ($"gaitwatch export {what} > {what}.csv", "all of them, for a spreadsheet"),
                ($"gaitwatch export {what} --from 2026-01-01 --to 2026-04-01 --json", "those of a quarter, for another program"),
            ],
        };
        verb.Add(from);
        verb.Add(to);
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
            var route = Route(what, parsed.GetValue(from), parsed.GetValue(to));
            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(await service.Api.GetJsonAsync(route, cancellation));
            else
                await context.Out.WriteAsync(await service.Api.GetAsync(route, "text/csv", cancellation));
            return ExitCode.Done;
        });
        return verb;
    }

    private static string Route(string what, DateOnly? from, DateOnly? to)
    {
        string?[] parts = [Part("from", from), Part("to", to)];
        var query = string.Join('&', parts.OfType<string>());
        return $"api/export/{what}{(query.Length == 0 ? "" : "?")}{query}";

        static string? Part(string name, DateOnly? day) => day is { } value ? $"{name}={value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}" : null;
    }
}
