using System.Globalization;

namespace GaitWatch.Web.Tests;

/// <summary>Speaks a language until it is disposed of.</summary>
internal sealed class InLanguage : IDisposable
{
    private readonly CultureInfo _words = CultureInfo.CurrentUICulture;
    private readonly CultureInfo _figures = CultureInfo.CurrentCulture;

    public InLanguage(string language) => CultureInfo.CurrentUICulture = CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(language);

    public void Dispose() => (CultureInfo.CurrentUICulture, CultureInfo.CurrentCulture) = (_words, _figures);
}
