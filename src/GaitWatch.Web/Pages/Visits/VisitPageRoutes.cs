using System.Text.Json.Nodes;
using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>The page about a visit and its forms. Every form is judged as the same write over the API.</summary>
internal static class VisitPageRoutes
{
    public static void MapVisitPages(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/visits", () => TypedResults.LocalRedirect("/visits/next")).ExcludeFromDescription();
        pages.MapGet("/visits/{date}", ShowAsync).ExcludeFromDescription();
        pages.MapGet("/visits/{date}/list.csv", CsvAsync).ExcludeFromDescription();
        pages.MapPost("/visits", (HttpContext http, BarnStore store, WriteDesk desk, PlanVisit route) => PlanAsync(http, null, store, desk, route)).ExcludeFromDescription();
        pages.MapPost("/visits/{date}", (HttpContext http, string date, BarnStore store, WriteDesk desk, PlanVisit route) => PlanAsync(http, date, store, desk, route)).ExcludeFromDescription();
        pages.MapPost("/visits/{date}/cancel", (HttpContext http, string date, BarnStore store, WriteDesk desk, CancelVisit route) =>
            EnterAsync(http, store, desk, route, date, null, "cancel", _ => [], "/visits/next")).ExcludeFromDescription();
        pages.MapPost("/visits/{date}/pinned", (HttpContext http, string date, BarnStore store, WriteDesk desk, DecideOnList route) =>
            EnterAsync(http, store, desk, route, date, null, "pin", form => new JsonObject { ["hand"] = "pinned", ["reason"] = form["reason"].ToString(), ["foot"] = OrNull(form["foot"]) })).ExcludeFromDescription();
        pages.MapPost("/visits/{date}/cows/{cow}/removed", (HttpContext http, string date, string cow, BarnStore store, WriteDesk desk, DecideOnList route) =>
            EnterAsync(http, store, desk, route, date, cow, "removed", form => new JsonObject { ["hand"] = "removed", ["reason"] = form["reason"].ToString() })).ExcludeFromDescription();
        pages.MapPost("/visits/{date}/cows/{cow}/as-rule", (HttpContext http, string date, string cow, BarnStore store, WriteDesk desk, TakeBackOnList route) =>
            EnterAsync(http, store, desk, route, date, cow, "as-rule", _ => [])).ExcludeFromDescription();
        pages.MapPost("/visits/{date}/cows/{cow}/done", (HttpContext http, string date, string cow, BarnStore store, WriteDesk desk, TickOnList route) =>
            EnterAsync(http, store, desk, route, date, cow, "done", _ => [])).ExcludeFromDescription();
        pages.MapPost("/visits/{date}/cows/{cow}/not-done", (HttpContext http, string date, string cow, BarnStore store, WriteDesk desk, UntickOnList route) =>
            EnterAsync(http, store, desk, route, date, cow, "not-done", _ => [])).ExcludeFromDescription();
        pages.MapPost("/visits/{date}/cows/{cow}/place", (HttpContext http, string date, string cow, BarnStore store, WriteDesk desk, MoveOnList route) =>
            EnterAsync(http, store, desk, route, date, cow, "place", form => new JsonObject { ["before"] = OrNull(form["before"]) })).ExcludeFromDescription();
    }

    private static async Task<IResult> ShowAsync(HttpContext http, BarnStore store, string date)
    {
        PageRoutes.NeverKeep(http);
        if (date == "next")
            return Show(await VisitModel.ReadAsync(store, null, null, http.RequestAborted));
        return Days.TryParse(date, out var day)
            ? Show(await VisitModel.ReadAsync(store, day, null, http.RequestAborted))
            : await PageRoutes.TroubleAsync(store, StatusCodes.Status404NotFound, VisitTexts.NoSuchDay(date), [VisitTexts.NoSuchDayMeaning], "/visits/next", http.RequestAborted);
    }

    private static async Task<IResult> CsvAsync(HttpContext http, BarnStore store, string date)
    {
        PageRoutes.NeverKeep(http);
        return Days.TryParse(date, out var day)
            ? TypedResults.File(System.Text.Encoding.UTF8.GetBytes(TrimListCsv.Render(await store.Reader.TrimListAsync(day, http.RequestAborted))), "text/csv; charset=utf-8", $"trim-list-{date}.csv")
            : TypedResults.NotFound();
    }

    private static RazorComponentResult<VisitPage> Show(VisitModel model, int status = StatusCodes.Status200OK) => new(new { Model = model }) { StatusCode = status };

    private static async Task<IResult> PlanAsync(HttpContext http, string? date, BarnStore store, WriteDesk desk, PlanVisit route)
    {
        if (!http.Request.HasFormContentType)
            return BodyReader.WrongMediaType(http.Request, "application/x-www-form-urlencoded")!.ToResult();
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var faults = new Faults();
        if (!Days.TryParse(form["date"].ToString(), out var day))
            faults.Add("date", "date is no day.");
        JsonNode? places = null;
        if (form["places"].ToString().Trim() is { Length: > 0 } text)
        {
            if (int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number))
                places = number;
            else
                faults.Add("places", "places is no number.");
        }

        var body = new JsonObject { ["date"] = form["date"].ToString(), ["half"] = OrNull(form["half"]), ["trimmer"] = form["trimmer"].ToString().Trim(), ["places"] = places };
        var refused = faults.Any
            ? Refusal.Invalid(faults)
            : await desk.EnterAsync(route, new RouteValueDictionary { ["date"] = date ?? FarmTimes.Machine(day) }, body, http.RequestAborted);
        if (refused is null)
            return new SeeOther($"/visits/{FarmTimes.Machine(day)}");
        var state = FormState.Of(date is null ? "plan" : "move", form, refused);
        return Show(await VisitModel.ReadAsync(store, Days.TryParse(date, out var shown) ? shown : null, state, http.RequestAborted), refused.Status);
    }

    private static async Task<IResult> EnterAsync(
        HttpContext http, BarnStore store, WriteDesk desk, WriteRoute route, string date, string? cow, string what, Func<IFormCollection, JsonObject> body, string? back = null)
    {
        // A button of a form without fields sends an empty form.
        var form = http.Request.HasFormContentType ? await http.Request.ReadFormAsync(http.RequestAborted) : FormCollection.Empty;
        if (!Days.TryParse(date, out var day))
            return await PageRoutes.TroubleAsync(store, StatusCodes.Status404NotFound, VisitTexts.NoSuchDay(date), [VisitTexts.NoSuchDayMeaning], "/visits/next", http.RequestAborted);
        var name = cow is null ? form["cow"].ToString().Trim() : RouteNames.Read(cow);
        var refused = await desk.EnterAsync(route, new RouteValueDictionary { ["date"] = date, ["cow"] = name }, body(form), http.RequestAborted);
        if (refused is null)
            return new SeeOther(back ?? $"/visits/{date}");
        var row = (await store.Reader.TrimListAsync(day, http.RequestAborted)).Rows.FirstOrDefault(row => row.Cow == name);
        var isShown = what == "pin" || (what == "removed" && row is not null);
        return isShown
            ? Show(await VisitModel.ReadAsync(store, day, FormState.Of(what == "pin" ? what : $"removed-{row!.Position}", form, refused), http.RequestAborted), refused.Status)
            : await PageRoutes.TroubleAsync(store, refused.Status, VisitTexts.NotTaken, [refused.Faults.ToString()], $"/visits/{date}", http.RequestAborted);
    }

    private static string? OrNull(Microsoft.Extensions.Primitives.StringValues value) => value.ToString() is { Length: > 0 } text ? text : null;
}
