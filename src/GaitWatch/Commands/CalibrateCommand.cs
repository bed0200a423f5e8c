using System.CommandLine;
using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>calibrate</c>: a check of a platform with a test weight that ends in a kept record.</summary>
internal static class CalibrateCommand
{
    // Common practice, no source.
    private const string Caution =
        "Keep cattle away from the platform and hands and feet from under the weight. Lift no more than you can carry safely; lift heavy weights by two or with a trolley.";

    private const double UsualWaitSeconds = 120;

    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var platform = new Argument<string>("PLATFORM") { Description = "The platform's id, such as parlour-exit." };
        var weight = new Option<double>("--weight") { Description = "The test weight, kg.", HelpName = "KG", Required = true };
        var by = new Option<string>("--by") { Description = "Who does it.", HelpName = "NAME", Required = true };
        var note = new Option<string?>("--note") { Description = "What else is to be said." };
        var places = new Option<string[]>("--places") { Description = "Cells over which to put the weight, in order. Default: every cell.", HelpName = "CELL", AllowMultipleArgumentsPerToken = true };
        var yes = new Option<bool>("--yes") { Description = "Ask nothing: each step is taken when the platform itself shows that it was done." };
        var wait = new Option<double?>("--wait") { Description = "How long to wait for each step, seconds. Default: 120.", HelpName = "SECONDS" };
        var json = new Option<bool>("--json") { Description = "Print the kept record as the API's JSON; what is asked and said goes to standard error." };
        var url = CommonOptions.Url();
        var verb = new VerbCommand(
            "calibrate", "Checks a platform with a test weight, step by step, and keeps the record. Exit code 1 when it reads beyond tolerance. No reading is changed by it.")
        {
            Examples =
            [
                ("gaitwatch calibrate parlour-exit --weight 100 --by Jan", "asks for each step, and Enter when it is done"),
                ("gaitwatch calibrate parlour-exit --weight 100 --by Jan --yes", "sees by itself when the weight stands in its place"),
                ("gaitwatch calibrate parlour-exit --weight 100 --by Jan --places r0 r1 --json", "two places, the record as JSON"),
            ],
        };
        verb.Add(platform);
        foreach (var option in (Option[])[weight, by, note, places, yes, wait, json, url])
            verb.Add(option);
        verb.Validators.Add(result =>
        {
            if (result.GetResult(weight)?.Errors.Any() == false && !(result.GetValue(weight) is > 0 and <= 5000))
                result.AddError("--weight is the test weight in kilograms: more than 0, at most 5000.");
            if (result.GetValue(wait) is not (null or (>= 1 and <= 3600)))
                result.AddError("--wait is a number of seconds from 1 to 3600.");
        });
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: false, cancellation);
            if (!service.IsRunning)
                throw new CommandFailedException("No service runs, so no reading comes in: start it with 'gaitwatch run', then calibrate.");
            var talk = parsed.GetValue(json) ? context.Error : context.Out;
            await talk.WriteLineAsync(Caution);
            var id = parsed.GetRequiredValue(platform);
            var kg = parsed.GetValue(weight);
            using var input = new StreamReader(parsed.GetValue(yes) ? Stream.Null : context.In());
            var walk = new CalibrationWalk(
                new LiveReadings(service.Api, id, context.Time, TimeSpan.FromSeconds(parsed.GetValue(wait) ?? UsualWaitSeconds)),
                (step, stop) => AskAsync(talk, parsed.GetValue(yes) ? null : input, step, stop),
                talk.WriteLine);
            var read = await walk.RunAsync(kg, [.. parsed.GetValue(places) ?? []], cancellation);
            var route = $"api/platforms/{Uri.EscapeDataString(id)}/calibrations";
            var answer = await service.Api.WriteAsync(
                HttpMethod.Post, route,
                new { at = read.At, by = parsed.GetRequiredValue(by), weightKg = kg, note = parsed.GetValue(note), read.EmptyBefore, read.Places, read.EmptyAfter },
                cancellation);
            if (WriteAnswer.TellStored(context, answer))
                return ExitCode.Done;
            var kept = ApiClient.Read<CalibrationView>(answer, route);
            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(answer);
            else
                Write(context, kept);
            return kept.Verdict == "within" ? ExitCode.Done : ExitCode.Failed;
        });
        return verb;
    }

    private static async Task AskAsync(TextWriter talk, StreamReader? input, string step, CancellationToken cancellation)
    {
        await talk.WriteLineAsync();
        await talk.WriteLineAsync(step);
        if (input is null)
            return;
        await talk.WriteAsync("Enter when it is done: ");
        await talk.FlushAsync(cancellation);
        if (await input.ReadLineAsync(cancellation) is null)
            throw new CommandFailedException("Standard input ended before the check did: nothing is kept. --yes asks nothing.");
    }

    private static void Write(CommandContext context, CalibrationView kept)
    {
        context.Out.WriteLine();
        var listing = new Listing("Plate", "Cell", ">At, m", ">Reads, kg", ">Error, kg", ">Error, %", ">Allowed, kg", "Verdict");
        foreach (var place in kept.Places)
        {
            listing.Add(
                place.Plate, place.Cell, Figure(place.X, "0.00"), Figure(place.ReadingKg, "0.00"), Figure(place.ErrorKg, "+0.00;-0.00;0.00"),
                Figure(place.ErrorPercent, "+0.0;-0.0;0.0"), Figure(place.ToleranceKg, "0.00"), place.Verdict);
        }

        listing.WriteTo(context);
        context.Out.WriteLine();
        foreach (var cell in kept.Cells.Where(cell => cell.Percent is { } percent && Math.Abs(percent) >= 0.05))
            context.Out.WriteLine($"Cell {cell.Id} reads {Figure(Math.Abs(cell.Percent!.Value), "0.0")} % {(cell.Percent < 0 ? "low" : "high")}.");
        context.Out.WriteLine(
            $"The empty plates came back to {Figure(kept.LeftZeroReturnKg, "+0.00;-0.00;0.00")} kg (left) and {Figure(kept.RightZeroReturnKg, "+0.00;-0.00;0.00")} kg (right); {Figure(kept.ZeroToleranceKg, "0.00")} is allowed.");
        context.Out.WriteLine(
            kept.Verdict == "within"
                ? $"Within what class {kept.AccuracyClass} (OIML R 76-1, e = {Figure(kept.VerificationIntervalKg, "0.###")} kg) allows in service."
                : $"Beyond what class {kept.AccuracyClass} (OIML R 76-1, e = {Figure(kept.VerificationIntervalKg, "0.###")} kg) allows in service. Have it set right at the device, clean it, then check again. Readings are not rescaled.");
        context.Out.WriteLine("Kept. This is no legal verification.");
    }

    private static string Figure(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";
}
