using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace GaitWatch;

/// <summary>Reads where the pages and the API listen, and whether the certificate's files can be used.</summary>
internal static class HttpSettingsReader
{
    private const string Example = "addresses such as 'http://127.0.0.1:8080', several with ';' between them";

    /// <summary>Reads the keys under <c>Http</c>.</summary>
    public static HttpSettings Read(SettingValues values, ImmutableArray<string>.Builder notices, string folder)
    {
        var urls = Urls(values, "Http:Urls", "http://127.0.0.1:8080");
        var shareUrls = Urls(values, "Http:ShareUrls", "");
        var certificate = Pem(values, "Http:Certificate", folder);
        var key = Pem(values, "Http:CertificateKey", folder);
        foreach (var url in shareUrls.Where(url => urls.Any(own => BindingAddress.Parse(own).Port == BindingAddress.Parse(url).Port)))
            values.Fault("Http:ShareUrls", url, "a port that GaitWatch:Http:Urls does not use: the port tells what answers there.");
        var https = urls.Concat(shareUrls).Any(url => url.StartsWith("https:", StringComparison.OrdinalIgnoreCase));
        if (key is not null && certificate is null && values.Text("Http:Certificate") is null)
            values.Fault("Http:Certificate", null, "the PEM file of the certificate to which GaitWatch:Http:CertificateKey belongs.");
        if (https && values.Text("Http:Certificate") is null)
            values.Fault("Http:Certificate", null, "an https address in GaitWatch:Http:Urls or ShareUrls needs the PEM file of a certificate.");
        if (!https && certificate is not null)
            notices.Add("GaitWatch:Http:Certificate is not used: neither GaitWatch:Http:Urls nor ShareUrls has an https address.");
        if (certificate is not null && (key is not null || values.Text("Http:CertificateKey") is null))
            Check(values, certificate, key);
        foreach (var url in urls.Where(url => !SettingsReader.IsLoopback(BindingAddress.Parse(url).Host)))
            notices.Add($"GaitWatch:Http:Urls has '{url}': anyone on that network can read the herd and write findings; keep it inside the farm.");
        return new HttpSettings { Urls = urls, ShareUrls = shareUrls, ShareAddress = ShareAddress(values), Certificate = certificate, CertificateKey = key };
    }

    private static Uri? ShareAddress(SettingValues values)
    {
        if (values.Text("Http:ShareAddress") is not { } text)
            return null;
        if (Uri.TryCreate(text, UriKind.Absolute, out var address) && address.Scheme is "http" or "https" && address is { AbsolutePath: "/", Query: "", Fragment: "", UserInfo: "" })
            return address;
        values.Fault("Http:ShareAddress", text, "what share links begin with, such as 'https://barn.example:8444/'; no path.");
        return null;
    }

    private static ImmutableArray<string> Urls(SettingValues values, string key, string otherwise)
    {
        var text = values.Text(key) ?? otherwise;
        if (text.Length == 0)
            return [];
        var urls = text.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).ToImmutableArray();
        if (urls.IsEmpty || !urls.All(Usable))
        {
            values.Fault(key, text, $"{Example}; http or https, no path, a port from 1 to 65535.");
            return [];
        }

        return urls;
    }

    private static bool Usable(string url)
    {
        try
        {
            var address = BindingAddress.Parse(url);
            return address.Scheme.ToUpperInvariant() is "HTTP" or "HTTPS" && address.Port is >= 1 and <= 65535
                && address.PathBase.Length == 0 && address.Host.Length > 0 && !address.IsUnixPipe;
        }
        catch (FormatException)
        {
            return false;
        }
    }

    private static string? Pem(SettingValues values, string key, string folder)
    {
        if (values.Text(key) is not { } path)
            return null;
        var full = Path.GetFullPath(path, folder);
        try
        {
            using var opened = File.OpenRead(full);
            return full;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            values.Fault(key, path, $"a PEM file that this program may read ({(File.Exists(full) ? "it may not" : "there is none")}).");
            return null;
        }
    }

    private static void Check(SettingValues values, string certificate, string? key)
    {
        try
        {
            using var read = X509Certificate2.CreateFromPemFile(certificate, key);
        }
        catch (CryptographicException e)
        {
            values.Fault(
                key is null ? "Http:Certificate" : "Http:CertificateKey", key ?? certificate,
                $"the certificate and its private key in PEM form, the key without a password ({e.Message.TrimEnd('.')}).");
        }
    }
}
