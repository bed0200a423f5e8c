using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace GaitWatch.Acceptance;

/// <summary>A certificate authority of a test's own, and a server's certificate from it for <see cref="Host"/>, as PEM files.</summary>
internal sealed class TestAuthority
{
    /// <summary>A name under "test", which is nobody's (RFC 6761).</summary>
    public const string Host = "barn.test";

    private readonly string _folder;

    public TestAuthority(string folder)
    {
        _folder = folder;
        using var rootKey = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=Test authority", rootKey, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        var now = DateTimeOffset.UtcNow;
        using var root = request.CreateSelfSigned(now.AddDays(-2), now.AddDays(30));
        File.WriteAllText(RootFile, root.ExportCertificatePem());

        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var server = new CertificateRequest($"CN={Host}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName(Host);
        server.CertificateExtensions.Add(names.Build());
        server.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        server.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        server.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid("1.3.6.1.5.5.7.3.1")], false));
        server.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(root, true, false));
        using var certificate = server.Create(root, now.AddDays(-1), now.AddDays(20), RandomNumberGenerator.GetBytes(12));
        File.WriteAllText(CertificateFile, certificate.ExportCertificatePem());
        File.WriteAllText(KeyFile, key.ExportPkcs8PrivateKeyPem());
    }

    public string RootFile => Path.Combine(_folder, "root.pem");

    public string CertificateFile => Path.Combine(_folder, "barn.pem");

    public string KeyFile => Path.Combine(_folder, "barn.key");

    /// <summary>Has a browser whose home this is trust the authority: Chromium on Linux reads the NSS database there.</summary>
    public async Task TrustInAsync(string home)
    {
        var database = Directory.CreateDirectory(Path.Combine(home, ".pki", "nssdb")).FullName;
        await RunAsync("-N", "-d", $"sql:{database}", "--empty-password");
        await RunAsync("-A", "-d", $"sql:{database}", "-t", "C,,", "-n", "test authority", "-i", RootFile);
    }

    /// <summary>A client that trusts the authority and finds its host on this machine.</summary>
    public HttpClient Client(int port)
    {
        var handler = new SocketsHttpHandler
        {
            ConnectCallback = async (context, cancellation) =>
            {
                var socket = new System.Net.Sockets.Socket(System.Net.Sockets.SocketType.Stream, System.Net.Sockets.ProtocolType.Tcp);
                await socket.ConnectAsync(System.Net.IPAddress.Loopback, context.DnsEndPoint.Port, cancellation);
                return new System.Net.Sockets.NetworkStream(socket, ownsSocket: true);
            },
        };
        handler.SslOptions.CertificateChainPolicy = new X509ChainPolicy
        {
            TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck,
            CustomTrustStore = { X509CertificateLoader.LoadCertificateFromFile(RootFile) },
        };
        return new HttpClient(handler) { BaseAddress = new Uri($"https://{Host}:{port}/"), Timeout = TimeSpan.FromMinutes(2) };
    }

    private static async Task RunAsync(params string[] arguments)
    {
        await using var process = ChildProcess.Start("certutil", arguments);
        var code = await process.ExitAsync(TimeSpan.FromMinutes(1));
        if (code != 0)
            throw new InvalidOperationException($"certutil {string.Join(' ', arguments)} ended with {code}: {process.Said}");
    }
}
