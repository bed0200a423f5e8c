using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Closes a flag from a page's form, judged as over the API, and goes back to the page.</summary>
internal static class CloseFromPage
{
    private const int MostHops = 5;

    public static async Task<IResult> TakeAsync(HttpContext http, string id, BarnStore store, CloseAlert route, WriteDesk desk, TimeProvider time)
    {
        if (!http.Request.HasFormContentType)
            return BodyReader.WrongMediaType(http.Request, "application/x-www-form-urlencoded")!.ToResult();
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var back = Local(form["back"].ToString());
        id = await NewestIdAsync(store, RouteNames.Read(id), http.RequestAborted);
        var note = form["note"].ToString();
        var decision = await route.DecideAsync(
            id, null, form["reason"].ToString(), note.Length > CloseAlert.LongestNote ? note[..CloseAlert.LongestNote] : note, "", time.GetUtcNow(), http.RequestAborted);
        if (decision.Refused is { } refused)
        {
            return await PageRoutes.TroubleAsync(
                store, refused.Status, MorningTexts.NotClosed, [refused.Faults.ToString()], back, http.RequestAborted);
        }

        await desk.TakeAsync(decision.Writes, http.RequestAborted);
        return new SeeOther($"{back}?closed={Uri.EscapeDataString(id)}");
    }

    // Late data may have given the flag another id between showing and closing; the person meant that one.
    private static async Task<string> NewestIdAsync(BarnStore store, string id, CancellationToken cancellation)
    {
        for (var hop = 0; hop < MostHops && (await store.Reader.AlertAsync(id, cancellation))?.MovedTo is { } next; hop++)
            id = next;
        return id;
    }

    // Only ever back to a page of our own.
    private static string Local(string back) =>
        back.StartsWith("/cows/", StringComparison.Ordinal) && !back.AsSpan().ContainsAny("?#\\\r\n") ? back : "/";
}
