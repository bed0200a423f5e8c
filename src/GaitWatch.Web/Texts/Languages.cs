using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Localization;

namespace GaitWatch.Web;

/// <summary>
/// The languages of the pages. A language is a file of texts beside this one; which one a reader gets is told by the cookie that
/// the switch at the foot of every page sets, else by what the browser asks for, else it is English. The API speaks English.
/// </summary>
internal static class Languages
{
    public const string Default = "en";

    /// <summary>Each language by its code with its own name for itself, in the order of the switch.</summary>
    public static IReadOnlyList<(string Code, string Name)> All { get; } = [(Default, "English"), ("de", "Deutsch")];

    /// <summary>The code of the language that this request is answered in.</summary>
    public static string Current => CultureInfo.CurrentUICulture.TwoLetterISOLanguageName is var code && Has(code) ? code : Default;

    public static bool Has(string? code) => All.Any(language => language.Code == code);

    /// <summary>Reads the language of each request for a page; words and figures follow <see cref="CultureInfo.CurrentUICulture"/>.</summary>
    public static void UseLanguages(this IApplicationBuilder app)
    {
        var codes = All.Select(language => language.Code).ToArray();
        var options = new RequestLocalizationOptions().SetDefaultCulture(Default).AddSupportedCultures(codes).AddSupportedUICultures(codes);
        options.ApplyCurrentCultureToResponseHeaders = true;
        // The address of a page is the same in every language: nothing is read from the query.
        options.RequestCultureProviders = [new CookieRequestCultureProvider(), new AcceptLanguageHeaderRequestCultureProvider()];
        app.UseWhen(http => !IsForPrograms(http.Request.Path), pages => pages.UseRequestLocalization(options));
    }

    private static bool IsForPrograms(PathString path) =>
        path.StartsWithSegments("/api", StringComparison.Ordinal) || path.StartsWithSegments("/openapi", StringComparison.Ordinal);
}
