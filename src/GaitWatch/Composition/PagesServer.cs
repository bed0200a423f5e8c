using System.Security.Cryptography.X509Certificates;

namespace GaitWatch;

/// <summary>Where the web server listens, and with which certificate.</summary>
internal static class PagesServer
{
    /// <summary>Sets it up.</summary>
    public static void UsePagesServer(this IWebHostBuilder host, HttpSettings settings)
    {
        host.UseUrls([.. settings.Urls, .. settings.ShareUrls]);
        host.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            if (settings.Certificate is { } file)
                server.ConfigureHttpsDefaults(https => https.ServerCertificate = Load(file, settings.CertificateKey));
        });
    }

    // Windows serves TLS only with a key that it keeps itself, so the pair goes through PKCS #12 once.
    private static X509Certificate2 Load(string file, string? key)
    {
        using var pair = X509Certificate2.CreateFromPemFile(file, key);
        return X509CertificateLoader.LoadPkcs12(pair.Export(X509ContentType.Pkcs12), null);
    }
}
