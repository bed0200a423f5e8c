using System.Text.Json.Nodes;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>Ticks one of the farm's own tasks, judged as over the API, and goes back to the page.</summary>
internal static class DoneFromPage
{
    public static async Task<IResult> TakeAsync(HttpContext http, string id, BarnStore store, DoFollowUp route, WriteDesk desk)
    {
        id = RouteNames.Read(id);
        var refused = await desk.EnterAsync(route, new RouteValueDictionary { ["id"] = id }, new JsonObject(), http.RequestAborted);
        return refused is null
            ? new SeeOther($"/?done={Uri.EscapeDataString(id)}")
            : await PageRoutes.TroubleAsync(store, refused.Status, MorningTexts.TaskNotTaken, [refused.Faults.ToString()], "/", http.RequestAborted);
    }
}
