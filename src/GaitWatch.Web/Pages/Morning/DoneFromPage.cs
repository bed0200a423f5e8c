using System.Text.Json.Nodes;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>Ticks one of the farm's own tasks, judged as over the API, and goes back to the page. Who did it, the device keeps for the next.</summary>
internal static class DoneFromPage
{
    private const string Cookie = "gaitwatch.by";
    private static readonly TimeSpan s_keptFor = TimeSpan.FromDays(365);

    /// <summary>Who did the last task on this device; empty when nobody said.</summary>
    public static string Who(HttpContext http) => http.Request.Cookies[Cookie] is { Length: <= CloseAlert.LongestBy } name ? name : "";

    public static async Task<IResult> TakeAsync(HttpContext http, string id, BarnStore store, DoFollowUp route, WriteDesk desk)
    {
        id = RouteNames.Read(id);
        var by = http.Request.HasFormContentType ? (await http.Request.ReadFormAsync(http.RequestAborted))["by"].ToString().Trim() : "";
        var refused = await desk.EnterAsync(route, new RouteValueDictionary { ["id"] = id }, new JsonObject { ["by"] = by }, http.RequestAborted);
        if (refused is not null)
            return await PageRoutes.TroubleAsync(store, refused.Status, MorningTexts.TaskNotTaken, [refused.Faults.ToString()], "/", http.RequestAborted);
        if (by.Length > 0)
            http.Response.Cookies.Append(Cookie, by, new CookieOptions { MaxAge = s_keptFor, SameSite = SameSiteMode.Lax, HttpOnly = true, Path = "/", IsEssential = true });
        return new SeeOther($"/?done={Uri.EscapeDataString(id)}");
    }
}
