using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Localization;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What a reader chooses for himself: language and unit of weights. Kept in cookies of that browser, nowhere else.</summary>
internal static class ChoiceRoutes
{
    private static readonly TimeSpan s_keptFor = TimeSpan.FromDays(365);

    public static void MapChoices(this IEndpointRouteBuilder pages) => pages.MapPost("/choices", (Delegate)TakeAsync).ExcludeFromDescription();

    private static async Task<IResult> TakeAsync(HttpContext http)
    {
        if (!http.Request.HasFormContentType)
            return BodyReader.WrongMediaType(http.Request, "application/x-www-form-urlencoded")!.ToResult();
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        // Anything else than the switch offers is no choice: what holds goes on holding.
        if (form["language"].ToString() is var language && Languages.Has(language))
            Keep(http, CookieRequestCultureProvider.DefaultCookieName, CookieRequestCultureProvider.MakeCookieValue(new RequestCulture(language)));
        if (form["weights"].ToString() is Units.Kilograms or Units.Pounds)
            Keep(http, Units.Cookie, form["weights"].ToString());
        return new SeeOther(OwnAddress.Or(form["back"].ToString(), "/"));
    }

    private static void Keep(HttpContext http, string name, string value) => http.Response.Cookies.Append(
        name, value, new CookieOptions { MaxAge = s_keptFor, SameSite = SameSiteMode.Lax, HttpOnly = true, Path = "/", IsEssential = true });
}
