using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>The unit of weights on the pages: kilograms, or pounds for whoever chose them at the foot of a page. The API speaks kilograms.</summary>
internal static class Units
{
    public const string Cookie = "gaitwatch.weights";
    public const string Kilograms = "kg";
    public const string Pounds = "lb";

    /// <summary>Kilograms in a pound, exact (international avoirdupois pound, yard and pound agreement of 1959).</summary>
    public const double KilogramsPerPound = 0.45359237;

    private static readonly AsyncLocal<bool> s_pounds = new();

    public static bool ArePounds => s_pounds.Value;

    public static string Current => ArePounds ? Pounds : Kilograms;

    /// <summary>Reads the choice of each request.</summary>
    public static void UseUnits(this IApplicationBuilder app) => app.Use(async (HttpContext http, RequestDelegate next) =>
    {
        s_pounds.Value = http.Request.Cookies[Cookie] == Pounds;
        await next(http);
    });
}
