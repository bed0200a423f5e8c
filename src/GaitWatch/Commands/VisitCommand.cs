using System.CommandLine;
using System.Globalization;
using GaitWatch.Herd;

namespace GaitWatch;

/// <summary><c>visit</c>: plans, changes, moves or cancels a visit of the trimmer.</summary>
internal static class VisitCommand
{
    private const string WholeDay = "day";

    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var date = new Argument<DateOnly>("DATE")
        {
            Description = "The visit's day.",
            HelpName = "YYYY-MM-DD",
            CustomParser = result =>
            {
                var text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
                if (!DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
                    result.AddError($"DATE is '{text}': a day such as 2026-03-02.");
                return day;
            },
        };
        var half = new Option<string?>("--half") { Description = "am or pm; day for the whole day." };
        half.AcceptOnlyFromAmong("am", "pm", WholeDay);
        var trimmer = new Option<string?>("--trimmer") { Description = "Who comes." };
        var places = new Option<int?>("--places") { Description = "How many cows there is time for." };
        var moveTo = CommonOptions.Day("--move-to", "Move the visit to this day.");
        var cancel = new Option<bool>("--cancel") { Description = "Cancel the visit." };
        var at = CommonOptions.Instant("--at", "When it was agreed. Default: now.");
        var json = CommonOptions.Json();
        var url = CommonOptions.Url();
        var verb = new VerbCommand("visit", "Plans a visit of the trimmer, or changes, moves or cancels a planned one; what is not named stays as it is.")
        {
            Examples =
            [
                ("gaitwatch visit 2026-03-04 --places 20 --trimmer Anna", "plan one"),
                ("gaitwatch visit 2026-03-04 --half am", "in the morning only"),
                ("gaitwatch visit 2026-03-04 --move-to 2026-03-05", "a day later"),
                ("gaitwatch visit 2026-03-04 --cancel", "it does not come"),
            ],
        };
        verb.Add(date);
        verb.Add(half);
        verb.Add(trimmer);
        verb.Add(places);
        verb.Add(moveTo);
        verb.Add(cancel);
        verb.Add(at);
        verb.Add(json);
        verb.Add(url);
        verb.Validators.Add(result =>
        {
            if (result.GetValue(cancel) && (result.GetResult(half) ?? result.GetResult(trimmer) ?? result.GetResult(places) ?? result.GetResult(moveTo)) is not null)
                result.AddError("--cancel stands alone: a visit that does not come has no half, trimmer, places or other day.");
        });
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: true, cancellation);
            var day = parsed.GetValue(date);
            var route = $"api/visits/{Words.Day(day)}";
            var when = parsed.GetValue(at) is { } agreed ? $"?at={Uri.EscapeDataString(agreed.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture))}" : "";
            string answer;
            if (parsed.GetValue(cancel))
            {
                answer = await service.Api.WriteAsync(HttpMethod.Delete, route + when, null, cancellation);
            }
            else
            {
                var planned = (await service.Api.GetAsync<IReadOnlyList<VisitForm>>("api/visits", cancellation)).FirstOrDefault(visit => visit.Date == day);
                var wanted = (planned ?? new VisitForm()) with { Date = parsed.GetValue(moveTo) ?? day };
                if (parsed.GetValue(half) is { } part)
                    wanted = wanted with { Half = part == WholeDay ? null : part };
                wanted = wanted with { Trimmer = parsed.GetValue(trimmer) ?? wanted.Trimmer, Places = parsed.GetValue(places) ?? wanted.Places };
                answer = await service.Api.WriteAsync(HttpMethod.Put, route + when, wanted, cancellation);
            }

            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(answer);
            else if (!WriteAnswer.TellStored(context, answer))
                Write(context, ApiClient.Read<VisitForm>(answer, route), parsed.GetValue(cancel) ? "Cancelled" : "Planned");
            return ExitCode.Done;
        });
        return verb;
    }

    private static void Write(CommandContext context, VisitForm visit, string what)
    {
        var parts = new List<string> { $"{what}: {Words.Day(visit.Date)}" };
        if (visit.Half is { } half)
            parts.Add(half == "am" ? "morning" : "afternoon");
        if (visit.Trimmer is { Length: > 0 } trimmer)
            parts.Add(trimmer);
        if (visit.Places is { } places)
            parts.Add(places == 1 ? "1 place" : string.Create(CultureInfo.InvariantCulture, $"{places} places"));
        context.Out.WriteLine(string.Join(", ", parts));
    }
}
